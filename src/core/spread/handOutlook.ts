import type { Plan } from '../plan/plan.ts';
import { CLOUD, type Cloud, searchCloud } from './cloud.ts';
import { type Forgiving, searchForgiving } from './forgiving.ts';
import type { Hand } from './straying.ts';

/** What a hand makes of a plan, as far as it is worked out. */
export interface HandOutlook {
  /** Share of the work that is done, 0…1. */
  readonly done: number;
  readonly cloud: Cloud | null;
  /** The pose that forgives the hand most; undefined as long as it is looked for, null where nothing judged is moved. */
  readonly forgiving: Forgiving | null | undefined;
  /** The cloud of that pose. */
  readonly there: Cloud | null;
}

/** Shares of the work: both clouds take about as long as the search. */
const THIRD = 1 / 3;
/** Placements between two words about it. */
const EACH = 20;

function* cloudOf(plan: Plan, hand: Hand, found: HandOutlook): Generator<HandOutlook | null, Cloud> {
  const search = searchCloud(plan, hand);
  for (let step = search.next(); ; step = search.next()) {
    if (step.done) return step.value;
    yield step.value % EACH === 0 ? { ...found, done: found.done + (THIRD * step.value) / CLOUD } : null;
  }
}

/**
 * The cloud of a plan under a hand, the pose that forgives the hand most, and the cloud of that pose (rules H2, H3), each as soon as it is known. Yields null between
 * evaluations where there is nothing new to say.
 */
export function* searchOutlook(plan: Plan, hand: Hand): Generator<HandOutlook | null, HandOutlook> {
  let found: HandOutlook = { done: 0, cloud: null, forgiving: undefined, there: null };
  yield found;
  const cloud = yield* cloudOf(plan, hand, found);
  found = { ...found, done: THIRD, cloud };
  yield found;
  const search = searchForgiving(plan, hand);
  let step = search.next();
  for (; !step.done; step = search.next()) yield null;
  found = { ...found, done: 2 * THIRD, forgiving: step.value };
  yield found;
  const there = step.value ? yield* cloudOf({ ...plan, pose: step.value.pose }, hand, found) : null;
  return { ...found, done: 1, there };
}
