import { lazy, memo, Suspense, useId, useState } from 'react';
import type { PlanStores } from '../state/stores.ts';
import { say } from '../words/say.ts';
import type { ModelMaker } from '../worker/modelMaker.ts';
import './popover.css';
import './hand-over.css';

const Offers = lazy(() => import('./Offers.tsx'));

export interface HandOverProps {
  stores: PlanStores;
  /** Null in a copy of the program that has no worker. */
  maker: ModelMaker | null;
}

/** Everything that can be taken from the page as a file, but the plan itself: what it is, and the kinds of file it comes as. */
export const HandOver = memo(function HandOver({ stores, maker }: HandOverProps) {
  const menuId = useId();
  const [opened, setOpened] = useState(false);
  return (
    <div className="hand-over">
      <button type="button" className="popover-open hand-over-open" popoverTarget={menuId}>
        {say('handOver.open')}
      </button>
      <div
        className="popover hand-over-menu"
        id={menuId}
        popover="auto"
        role="dialog"
        aria-label={say('handOver.heading')}
        onToggle={({ newState }) => newState === 'open' && setOpened(true)}
      >
        {opened && (
          <Suspense fallback={null}>
            <Offers stores={stores} maker={maker} />
          </Suspense>
        )}
      </div>
    </div>
  );
});
