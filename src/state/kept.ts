import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Plan } from '../core/plan/plan.ts';
import type { Recent, Shelf } from '../io/keep/shelf.ts';
import { parsePlanFile, printPlanFile } from '../io/planFile.ts';
import type { DocumentState, DocumentStore } from './document.ts';

/**
 * How the plan on the table stands to what lies on this machine: nothing to keep yet, being kept, kept; not kept because the storage is full or closed to the page;
 * only shown, as another tab has it, or free to be taken over from it; never kept, in an edition that leaves nothing behind.
 */
export type KeptStatus = 'fresh' | 'keeping' | 'kept' | 'full' | 'refused' | 'shown' | 'free' | 'never';

export interface KeptState {
  readonly status: KeptStatus;
  /** Revision of the newest state on this machine that this tab knows of. */
  readonly revision: number;
  /** What was newest on this machine was not whole: the document began with the state before it. */
  readonly damaged: boolean;
}

export interface Keeping extends Pick<StoreApi<KeptState>, 'getState' | 'getInitialState' | 'subscribe'> {
  /** Another tab had the plan and has let it go: this one goes on with what that one kept last, by one undo step named `label`. */
  takeOver: (label: string) => Promise<void>;
  /** Plans that lay on the table before, the newest first. */
  recent: () => Promise<readonly Recent[]>;
}

export interface KeepOptions {
  readonly shelf: Shelf;
  /** The revision on the shelf that the document began with; 0: none. */
  readonly revision: number;
  /** A newer one lay there and was not whole. */
  readonly damaged: boolean;
  /** No other tab has the plan. */
  readonly held: boolean;
  /** Settles when the other tab has let it go. */
  readonly later: Promise<void>;
  /** ms since 1970. */
  readonly now: () => number;
  /** Whether a plan comes with the program: such a one need not be remembered. */
  readonly isOwn: (plan: Plan) => boolean;
}

/** The plan as the last finished gesture or edit left it. */
const finished = ({ plan, gesture }: DocumentState<Plan>): Plan => gesture?.start ?? plan;

/** Keeps every finished state of the document on the shelf, one at a time, the latest first; and what another plan has taken the place of among those of before. */
export function keepDocument(document: DocumentStore<Plan>, options: KeepOptions): Keeping {
  const { shelf, now, isOwn } = options;
  const store = createStore<KeptState>(() => ({
    status: options.held ? (options.revision > 0 ? 'kept' : 'fresh') : 'shown',
    revision: options.revision,
    damaged: options.damaged,
  }));
  let keptPlan = finished(document.getState());
  let writing = false;
  const holding = () => !['shown', 'free'].includes(store.getState().status);

  const showOnly = (status: 'shown' | 'free') => {
    store.setState({ status });
    document.setReadOnly(true);
  };

  const keep = async () => {
    const plan = finished(document.getState());
    if (writing || !holding() || plan === keptPlan) return;
    const text = printPlanFile(plan);
    const { revision } = store.getState();
    writing = true;
    store.setState({ status: 'keeping' });
    const outcome = await shelf.put(text, revision);
    writing = false;
    if (outcome === 'overtaken') return showOnly('free');
    if (outcome === 'kept') keptPlan = plan;
    const latest = finished(document.getState()) === plan;
    if (outcome === 'kept') store.setState({ revision: revision + 1, status: latest ? 'kept' : 'keeping' });
    else store.setState({ status: outcome });
    if (!latest) void keep();
  };

  const remember = (plan: Plan) => {
    if (holding() && !isOwn(plan)) void shelf.remember(printPlanFile(plan), now());
  };

  if (!options.held) {
    showOnly('shown');
    void options.later.then(() => store.setState({ status: 'free' }));
  }
  document.subscribe((state, before) => {
    if (state.savedPlan !== before.savedPlan) remember(before.plan);
    void keep();
  });

  return {
    getState: store.getState,
    getInitialState: store.getInitialState,
    subscribe: store.subscribe,
    recent: shelf.recent,
    takeOver: async (label) => {
      if (store.getState().status !== 'free') return;
      const { slot } = await shelf.read();
      const read = slot && parsePlanFile(slot.text);
      const shown = finished(document.getState());
      const same = !read?.ok || printPlanFile(shown) === slot?.text;
      const next = same ? shown : read.plan;
      if (read?.ok) keptPlan = next;
      store.setState({ status: 'kept', revision: slot?.revision ?? 0 });
      if (!same) document.open(label, next);
      document.setReadOnly(false);
    },
  };
}

/** Where nothing is kept. */
export function keepNothing(): Keeping {
  const store = createStore<KeptState>(() => ({ status: 'never', revision: 0, damaged: false }));
  return { ...store, takeOver: () => Promise.resolve(), recent: () => Promise.resolve([]) };
}
