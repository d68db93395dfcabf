import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Plan } from '../core/plan/plan.ts';
import { type Breaks, searchBreaks } from '../core/teaching/breaks.ts';
import { type Cost, costOf } from '../core/teaching/cost.ts';
import { type Mending, mendingOf } from '../core/teaching/mending.ts';
import type { TrajectoryId } from '../core/teaching/trajectories.ts';
import { inSlices } from './inSlices.ts';
import type { PlanStores } from './stores.ts';

/** What has been worked out of the trajectory on the page; what is not of the amount shown now is stale. */
export interface Found {
  readonly cost: Cost | null;
  /** Of the same amount as the cost, or null until it is there. */
  readonly mending: Mending | null;
  readonly breaks: Breaks | null;
  /** All of it is of what the page shows. */
  readonly fresh: boolean;
}

const NOTHING: Found = { cost: null, mending: null, breaks: null, fresh: false };

/** What the answers hang on. */
interface Asked {
  readonly plan: Plan;
  readonly id: TrajectoryId;
  readonly amount: number;
}

export interface FoundStore extends Pick<StoreApi<Found>, 'getState' | 'getInitialState' | 'subscribe'> {
  /** Begins to work it out, and again at every change; what it returns ends that. */
  follow: () => () => void;
}

/** Works out in idle time what the trajectory shown costs, where each limit breaks along it and until when it could be mended. */
export function teachFound({ document, live }: PlanStores): FoundStore {
  const store = createStore<Found>(() => NOTHING);
  const known = new WeakMap<Plan, Map<TrajectoryId, Breaks>>();
  let asked: Asked | null = null;
  let stopCost: () => void = () => undefined;
  let stopBreaks: () => void = () => undefined;

  const knownOf = (plan: Plan): Map<TrajectoryId, Breaks> => {
    const found = known.get(plan) ?? new Map<TrajectoryId, Breaks>();
    known.set(plan, found);
    return found;
  };

  const put = (change: Partial<Found>) =>
    store.setState((state) => {
      const next = { ...state, ...change };
      return { ...next, fresh: next.cost !== null && next.mending !== null && next.breaks !== null };
    });

  const lookForBreaks = ({ plan, id }: Asked) => {
    stopBreaks();
    const breaks = knownOf(plan).get(id) ?? null;
    put({ breaks });
    if (breaks) return;
    const done = (found: Breaks) => {
      knownOf(plan).set(id, found);
      put({ breaks: found });
    };
    stopBreaks = inSlices(searchBreaks(plan, id), { done });
  };

  function* costAndMending({ plan, id, amount }: Asked): Generator<void, Mending> {
    yield;
    put({ cost: costOf(plan, id, amount), mending: null });
    yield;
    return mendingOf(plan, id, amount);
  }

  const look = () => {
    const { plan } = document.getState();
    const { trajectory: id, amount } = live.getState();
    const before = asked;
    if (before?.plan === plan && before.id === id && before.amount === amount) return;
    asked = { plan, id, amount };
    stopCost();
    const other = before?.plan !== plan || before.id !== id;
    store.setState(other ? NOTHING : { fresh: false });
    if (other) lookForBreaks(asked);
    stopCost = inSlices(costAndMending(asked), { done: (mending) => put({ mending }) });
  };

  const follow = () => {
    look();
    const ends = [document.subscribe(look), live.subscribe(look)];
    return () => {
      for (const end of ends) end();
      stopCost();
      stopBreaks();
      asked = null;
    };
  };

  return {
    getState: store.getState,
    getInitialState: store.getInitialState,
    subscribe: store.subscribe,
    follow,
  };
}
