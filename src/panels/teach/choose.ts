import type { TrajectoryId } from '../../core/teaching/trajectories.ts';
import type { PlanStores } from '../../state/stores.ts';
import { sightOf } from './trajectories.ts';

/** Brings a trajectory up at its full size, in the view that shows it best. */
export function chooseTrajectory({ session, live }: PlanStores, id: TrajectoryId): void {
  const { gum, ...sight } = sightOf(id);
  session.set({ ...sight, layers: { ...session.getState().layers, gum } });
  live.set({ trajectory: id, amount: 1, viewAsked: live.getState().viewAsked + 1 });
}
