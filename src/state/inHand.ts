import { planInHand, withHandMoved } from '../core/plan/inHand.ts';
import type { Plan } from '../core/plan/plan.ts';
import { planInSeat, withSeatSteered } from '../core/plan/seat.ts';
import type { DocumentState, DocumentStore } from './document.ts';
import type { HandStores } from './held.ts';
import { oncePer } from './once.ts';
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

/** The stores with the tool in the hand in the implant's place. */
export const handStores = oncePer(
  (stores: PlanStores): HandStores => ({
    ...stores,
    document: throughLens(stores.document, { see: planInHand, put: withHandMoved }),
    planned: stores,
    held: 'tool',
  }),
);

/** The stores with the implant as its acts have left it. */
export const seatStores = oncePer(
  (stores: PlanStores): HandStores => ({
    ...stores,
    document: throughLens(stores.document, { see: planInSeat, put: withSeatSteered }),
    planned: stores,
    held: 'implant',
  }),
);
