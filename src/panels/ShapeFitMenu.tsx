import { lazy, memo, Suspense, useId, useRef, useState } from 'react';
import type { PlanStores } from '../state/stores.ts';
import { say } from '../words/say.ts';
import './popover.css';
import './fit-menu.css';

const ShapeFit = lazy(() => import('./ShapeFit.tsx'));

/** A word that opens the table of all shapes; the search runs only while it is open. */
export const ShapeFitMenu = memo(function ShapeFitMenu({ stores }: { stores: PlanStores }) {
  const id = useId();
  const menu = useRef<HTMLDivElement>(null);
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="rail-word fit-open" popoverTarget={id}>
        {say('fit.open')}
      </button>
      <div
        className="popover fit-menu"
        id={id}
        ref={menu}
        popover="auto"
        role="dialog"
        aria-label={say('fit.open')}
        onToggle={({ newState }) => setOpen(newState === 'open')}
      >
        {open && (
          <Suspense fallback={<p>{say('fit.searching')}</p>}>
            <ShapeFit stores={stores} close={() => menu.current?.hidePopover()} />
          </Suspense>
        )}
      </div>
    </>
  );
});
