import { notInPlan, type TrajectoryId } from '../../core/teaching/trajectories.ts';
import type { TeachStores } from '../../state/teach.ts';
import { usePlan } from '../../state/usePlan.ts';
import { useSelected } from '../../state/useSelected.ts';
import { sayTrajectory } from '../../words/presentTeach.ts';
import { say } from '../../words/sayTeach.ts';
import { chooseTrajectory } from './choose.ts';
import { TRAJECTORY_GROUPS } from './trajectories.ts';

interface TrajectoryProps {
  stores: TeachStores;
  id: TrajectoryId;
  chosen: boolean;
}

/** One trajectory as a word to press; where the plan has none of it, the word says why. */
function Trajectory({ stores, id, chosen }: TrajectoryProps) {
  const why = notInPlan(usePlan(stores.planned), id);
  return (
    <label className="trajectory" data-trajectory={id}>
      <input
        type="radio"
        name="trajectory"
        checked={chosen}
        disabled={why !== null}
        onChange={() => chooseTrajectory(stores, id)}
      />
      <span>{sayTrajectory(id)}</span>
      {why && <small>{say(`teach.why.${why}`)}</small>}
    </label>
  );
}

/** The bad trajectories as a list of words, by what the hand does wrong. */
export function TrajectoryRail({ stores }: { stores: TeachStores }) {
  const chosen = useSelected(stores.live, (state) => state.trajectory);
  return (
    <>
      {TRAJECTORY_GROUPS.map(({ group, ids }) => (
        <fieldset key={group} className="trajectories">
          <legend>{say(`teach.group.${group}`)}</legend>
          {ids.map((id) => (
            <Trajectory key={id} stores={stores} id={id} chosen={id === chosen} />
          ))}
        </fieldset>
      ))}
    </>
  );
}
