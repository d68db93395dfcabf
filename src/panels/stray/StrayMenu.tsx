import { lazy, memo } from 'react';
import type { PlanStores } from '../../state/stores.ts';
import { say } from '../../words/say.ts';
import { RailDialog } from '../RailDialog.tsx';

const Stray = lazy(() => import('./Stray.tsx'));

/** A word that opens what a hand would make of the plan; it is worked out only while it is open. */
export const StrayMenu = memo(function StrayMenu({ stores }: { stores: PlanStores }) {
  return (
    <RailDialog name="stray" word={say('stray.open')} waiting={say('stray.opening')}>
      {(close) => <Stray stores={stores} close={close} />}
    </RailDialog>
  );
});
