import { lazy, memo, Suspense, useId, useRef, useState } from 'react';
import type { PlanStores } from '../../state/stores.ts';
import { say } from '../../words/say.ts';
import '../popover.css';

const Stray = lazy(() => import('./Stray.tsx'));

/** A word that opens what a hand would make of the plan; it is worked out only while it is open. */
export const StrayMenu = memo(function StrayMenu({ stores }: { stores: PlanStores }) {
  const id = useId();
  const menu = useRef<HTMLDivElement>(null);
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="rail-word" popoverTarget={id}>
        {say('stray.open')}
      </button>
      <div
        className="popover stray-menu"
        id={id}
        ref={menu}
        popover="auto"
        role="dialog"
        aria-label={say('stray.open')}
        onToggle={({ newState }) => setOpen(newState === 'open')}
      >
        {open && (
          <Suspense fallback={<p>{say('fit.searching')}</p>}>
            <Stray stores={stores} close={() => menu.current?.hidePopover()} />
          </Suspense>
        )}
      </div>
    </>
  );
});
