import { lazy, memo } from 'react';
import type { PlanStores } from '../state/stores.ts';
import { say } from '../words/say.ts';
import { RailDialog } from './RailDialog.tsx';
import './fit-menu.css';

const ShapeFit = lazy(() => import('./ShapeFit.tsx'));

/** A word that opens the table of all shapes; the search runs only while it is open. */
export const ShapeFitMenu = memo(function ShapeFitMenu({ stores }: { stores: PlanStores }) {
  return (
    <RailDialog name="fit" word={say('fit.open')} waiting={say('fit.searching')}>
      {(close) => <ShapeFit stores={stores} close={close} />}
    </RailDialog>
  );
});
