import { lazy, memo, Suspense, useId, useState } from 'react';
import type { PlanStores } from '../state/stores.ts';
import { say } from '../words/say.ts';
import './share.css';

const SharePlan = lazy(() => import('./SharePlan.tsx'));

/** A word that opens the plan's link and code; both are made only while it is open. */
export const ShareMenu = memo(function ShareMenu({ stores }: { stores: PlanStores }) {
  const id = useId();
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="plans-file" popoverTarget={id}>
        {say('link.open')}
      </button>
      <div
        className="share-menu"
        id={id}
        popover="auto"
        role="dialog"
        aria-label={say('link.heading')}
        onToggle={({ newState }) => setOpen(newState === 'open')}
      >
        {open && (
          <Suspense fallback={null}>
            <SharePlan stores={stores} />
          </Suspense>
        )}
      </div>
    </>
  );
});
