import { createStore } from 'zustand/vanilla';
import type { Plan } from '../core/plan/plan.ts';
import { unbegun } from '../core/teaching/cost.ts';
import { goneWrong, type TrajectoryId } from '../core/teaching/trajectories.ts';
import { type AmountPlayer, amountPlayer } from './amountPlayer.ts';
import type { DocumentState, DocumentStore } from './document.ts';
import type { HandStores } from './held.ts';
import type { LiveStore } from './live.ts';
import { oncePer } from './once.ts';
import type { SessionState, SessionStore } from './session.ts';
import type { PlanStores } from './stores.ts';
import { type FoundStore, teachFound } from './teachFound.ts';

type Listener<S> = (state: S, before: S) => void;

/** Tells of what is made from several stores when it is another than it was. `now` returns the same object while nothing has changed. */
function watch<S>(now: () => S, sources: readonly { subscribe: (tell: () => void) => () => void }[]) {
  return (listener: Listener<S>): (() => void) => {
    let before = now();
    const tell = () => {
      const state = now();
      if (state === before) return;
      const was = before;
      before = state;
      listener(state, was);
    };
    const ends = sources.map((source) => source.subscribe(tell));
    return () => {
      for (const end of ends) end();
    };
  };
}

const nothing = () => undefined;

/** The document on the table, or the plan that a lesson's step is about, in a document that no hand changes. */
function taughtDocument({ document, session, live }: PlanStores): DocumentStore<Plan> {
  let last: { from: DocumentState<Plan>; plan: Plan; state: DocumentState<Plan> } | null = null;
  const now = (): DocumentState<Plan> => {
    const from = document.getState();
    const { lesson, lessonStep } = live.getState();
    const plan = session.getState().teaching === 'lesson' && lesson?.plans[lesson.steps[lessonStep].plan];
    if (!plan) return from;
    if (last?.from !== from || last.plan !== plan)
      last = { from, plan, state: { ...from, plan, gesture: null } };
    return last.state;
  };
  return {
    ...document,
    getState: now,
    getInitialState: now,
    subscribe: watch(now, [document, session, live]),
    edit: nothing,
    beginGesture: nothing,
    updateGesture: nothing,
  };
}

/** The document seen with its plan gone wrong, as the live state says which way and how far. No hand changes it: what is taught is never carried into the plan. */
function goneWrongDocument(document: DocumentStore<Plan>, live: LiveStore): DocumentStore<Plan> {
  interface Seen {
    readonly from: Plan;
    readonly trajectory: TrajectoryId;
    readonly amount: number;
    readonly state: DocumentState<Plan>;
  }
  let last: Seen | null = null;
  const now = (): DocumentState<Plan> => {
    const whole = document.getState();
    const { trajectory, amount } = live.getState();
    const from = whole.plan;
    if (last?.from === from && last.trajectory === trajectory && last.amount === amount) return last.state;
    const plan = goneWrong(unbegun(from), trajectory, amount);
    last = { from, trajectory, amount, state: { ...whole, plan, gesture: null } };
    return last.state;
  };
  return {
    ...document,
    getState: now,
    getInitialState: now,
    subscribe: watch(now, [document, live]),
    edit: nothing,
    beginGesture: nothing,
    updateGesture: nothing,
    endGesture: nothing,
    cancelGesture: nothing,
  };
}

const LOOK = [
  'view',
  'asInMouth',
  'bone',
  'layers',
  'section',
  'sectionLevel',
  'selectedReading',
  'kept',
] as const;

/** What the model is shown to a class by; elsewhere the page keeps its own. */
type Look = Pick<SessionState, (typeof LOOK)[number]>;

const isLook = (key: string): key is keyof Look => LOOK.some((one) => one === key);

/** The session with a look of its own at the model: a view chosen for a class is not found in the other places afterwards. */
function ownLook(session: SessionStore, live: LiveStore): SessionStore {
  const { view, asInMouth, bone, layers, section, sectionLevel } = session.getState();
  const look = createStore<Look>(() => ({
    view,
    asInMouth,
    bone,
    layers,
    section,
    sectionLevel,
    selectedReading: null,
    kept: null,
  }));
  let last: { from: SessionState; own: Look; state: SessionState } | null = null;
  const now = (): SessionState => {
    const from = session.getState();
    const own = look.getState();
    if (last?.from !== from || last.own !== own) last = { from, own, state: { ...from, ...own } };
    return last.state;
  };
  look.subscribe(live.touch);
  return {
    getState: now,
    getInitialState: now,
    subscribe: watch(now, [session, look]),
    set: (change) => {
      const entries = Object.entries(change);
      const own = entries.filter(([key]) => isLook(key));
      const rest = entries.filter(([key]) => !isLook(key));
      if (own.length > 0) look.setState(Object.fromEntries(own));
      if (rest.length > 0) session.set(Object.fromEntries(rest));
    },
    toggleLayer: (layer) =>
      look.setState((state) => ({ layers: { ...state.layers, [layer]: !state.layers[layer] } })),
  };
}

/** The stores with the plan gone wrong in the plan's place, and the model looked at for a class; the plan itself, the document's or a lesson's, is at `planned`. */
export interface TeachStores extends HandStores {
  /** What it costs, worked out in idle time. */
  readonly found: FoundStore;
  readonly player: AmountPlayer;
}

export const teachStores = oncePer((stores: PlanStores): TeachStores => {
  const { session, own, live } = stores;
  const planned: PlanStores = { document: taughtDocument(stores), session, own, live };
  return {
    document: goneWrongDocument(planned.document, live),
    session: ownLook(session, live),
    own,
    live,
    planned,
    held: 'wrong',
    found: teachFound(planned),
    player: amountPlayer(live),
  };
});
