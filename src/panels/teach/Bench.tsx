import type { TeachStores } from '../../state/teach.ts';
import { useSelected } from '../../state/useSelected.ts';
import { LessonStart } from './LessonStart.tsx';
import { LessonSteps } from './LessonSteps.tsx';
import { PresenterRing } from './PresenterRing.tsx';
import { TrajectoryRail } from './TrajectoryRail.tsx';
import { useStepKeys } from './useStepKeys.ts';
import './teach.css';

/** What goes on beside the rail: the step keys, and the ring that points. */
function Presenting({ stores }: { stores: TeachStores }) {
  const pointer = useSelected(stores.live, (state) => state.pointer);
  useStepKeys(stores);
  return pointer && <PresenterRing />;
}

/** The rail of the trajectories. */
export function TeachRail({ stores }: { stores: TeachStores }) {
  return (
    <div className="rail teach-rail">
      <TrajectoryRail stores={stores} />
      <Presenting stores={stores} />
    </div>
  );
}

/** The rail of a lesson. */
export function LessonRail({ stores }: { stores: TeachStores }) {
  const lesson = useSelected(stores.live, (state) => state.lesson);
  return (
    <div className="rail lesson-rail">
      {lesson ? <LessonSteps stores={stores} lesson={lesson} /> : <LessonStart stores={stores} />}
      <Presenting stores={stores} />
    </div>
  );
}

export { AmountPanel } from './AmountPanel.tsx';
export { CostPanel } from './CostPanel.tsx';
export { TeachSentence } from './TeachSentence.tsx';
