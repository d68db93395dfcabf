import type { TeachStores } from '../../state/teach.ts';
import { useSelected } from '../../state/useSelected.ts';
import { PresenterRing } from './PresenterRing.tsx';
import { Rooms } from './Rooms.tsx';
import { TrajectoryRail } from './TrajectoryRail.tsx';
import { useStepKeys } from './useStepKeys.ts';

/** The rail of the trajectories, with what goes on while they are shown: the step keys, and the ring that points. */
export function TeachRail({ stores }: { stores: TeachStores }) {
  const pointer = useSelected(stores.live, (state) => state.pointer);
  useStepKeys(stores);
  return (
    <div className="rail teach-rail">
      <Rooms stores={stores.planned} />
      <TrajectoryRail stores={stores} />
      {pointer && <PresenterRing />}
    </div>
  );
}

export { AmountPanel } from './AmountPanel.tsx';
export { CostPanel } from './CostPanel.tsx';
export { TeachSentence } from './TeachSentence.tsx';
