import { memo, type ReactNode, useId } from 'react';
import type { PlanStores } from '../state/stores.ts';
import { say } from '../words/say.ts';
import { PictureOffers } from './PictureOffers.tsx';
import { TableOffers } from './TableOffers.tsx';
import './hand-over.css';

export interface HandOverProps {
  stores: PlanStores;
  /** Further groups of offers under the tables: the solid models. */
  children?: ReactNode;
}

/** Everything that can be taken from the page as a file, but the plan itself: what it is, and the kinds of file it comes as. */
export const HandOver = memo(function HandOver({ stores, children }: HandOverProps) {
  const menuId = useId();
  return (
    <div className="hand-over">
      <button type="button" className="hand-over-open" popoverTarget={menuId}>
        {say('handOver.open')}
      </button>
      <div
        className="hand-over-menu"
        id={menuId}
        popover="auto"
        role="dialog"
        aria-label={say('handOver.heading')}
      >
        <PictureOffers stores={stores} />
        <TableOffers stores={stores} />
        {children}
        <p className="caption">{say('handOver.note')}</p>
      </div>
    </div>
  );
});
