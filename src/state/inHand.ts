import { planInHand, withHandMoved } from '../core/plan/inHand.ts';
import type { Plan } from '../core/plan/plan.ts';
import { planInSeat, withSeatSteered } from '../core/plan/seat.ts';
import type { DocumentState, DocumentStore } from './document.ts';
import type { PlanStores } from './stores.ts';

/** How a plan is seen with something else in the implant's place, and how a change of what is seen becomes a change of the plan. */
interface Lens {
  readonly see: (plan: Plan) => Plan;
  readonly put: (plan: Plan, changed: Plan) => Plan;
}

/** The same document seen through a lens: what reads, draws or moves an implant does so with what the lens shows. History and revision are the document's own. */
function throughLens(document: DocumentStore<Plan>, { see, put }: Lens): DocumentStore<Plan> {
  let last: { from: DocumentState<Plan>; seen: DocumentState<Plan> } | null = null;
  const seenState = (from: DocumentState<Plan>): DocumentState<Plan> => {
    if (last?.from === from) return last.seen;
    const { gesture } = from;
    const seen = {
      ...from,
      plan: see(from.plan),
      gesture: gesture && { ...gesture, start: see(gesture.start) },
    };
    last = { from, seen };
    return seen;
  };
  const through = (change: (plan: Plan) => Plan) => (plan: Plan) => {
    const seen = see(plan);
    const changed = change(seen);
    return changed === seen ? plan : put(plan, changed);
  };
  return {
    ...document,
    getState: () => seenState(document.getState()),
    getInitialState: () => seenState(document.getInitialState()),
    subscribe: (listener) =>
      document.subscribe((state, before) => listener(seenState(state), seenState(before))),
    edit: (label, change) => document.edit(label, through(change)),
    updateGesture: (change) => document.updateGesture(through(change)),
  };
}

/** What stands in the planned implant's place: a drill or neck cutter, the implant while it is seated, or an implant gone wrong, which no hand moves. */
export type Held = 'tool' | 'implant' | 'wrong';

/** The stores with what the hand holds in the implant's place; the plan itself is at `planned`. */
export interface HandStores extends PlanStores {
  readonly planned: PlanStores;
  readonly held: Held;
}

export const handStores = (stores: PlanStores): HandStores => ({
  ...stores,
  document: throughLens(stores.document, { see: planInHand, put: withHandMoved }),
  planned: stores,
  held: 'tool',
});

export const seatStores = (stores: PlanStores): HandStores => ({
  ...stores,
  document: throughLens(stores.document, { see: planInSeat, put: withSeatSteered }),
  planned: stores,
  held: 'implant',
});

/** What is held in the planned implant's place; null: it stands there itself. */
export const heldIn = (stores: PlanStores): Held | null =>
  'held' in stores ? (stores as HandStores).held : null;

/** The stores of the plan itself, where something else is in the implant's place; else null. */
export const plannedOf = (stores: PlanStores): PlanStores | null =>
  'planned' in stores ? (stores as HandStores).planned : null;
