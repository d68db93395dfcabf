import type { PlanStores } from './stores.ts';

/** What stands in the planned implant's place: a drill or neck cutter, the implant while it is seated, or an implant gone wrong, which no hand moves. */
export type Held = 'tool' | 'implant' | 'wrong';

/** The stores with what the hand holds in the implant's place; the plan itself is at `planned`. */
export interface HandStores extends PlanStores {
  readonly planned: PlanStores;
  readonly held: Held;
}

/** What is held in the planned implant's place; null: it stands there itself. */
export const heldIn = (stores: PlanStores): Held | null =>
  'held' in stores ? (stores as HandStores).held : null;

/** The stores of the plan itself, where something else is in the implant's place; else null. */
export const plannedOf = (stores: PlanStores): PlanStores | null =>
  'planned' in stores ? (stores as HandStores).planned : null;
