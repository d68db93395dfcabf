import { lazy, memo, type RefObject, Suspense, useState } from 'react';
import type { PlanStores } from '../state/stores.ts';
import { say } from '../words/say.ts';
import './popover.css';
import './share.css';

const SharePlan = lazy(() => import('./SharePlan.tsx'));

interface ShareMenuProps {
  stores: PlanStores;
  place: RefObject<HTMLDivElement | null>;
}

/** Where the plan's link and code are shown; both are made only while it is open. */
export const ShareMenu = memo(function ShareMenu({ stores, place }: ShareMenuProps) {
  const [open, setOpen] = useState(false);
  return (
    <div
      className="popover share-menu"
      ref={place}
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
  );
});
