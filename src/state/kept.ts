import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Plan } from '../core/plan/plan.ts';
import type { Hold } from '../io/keep/holdAlone.ts';
import type { Recent, Shelf } from '../io/keep/shelf.ts';
import { printPlanFile } from '../io/printPlanFile.ts';
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
  /** The other tab was asked for the plan and keeps it back, as it cannot keep what was done there. */
  readonly keptBack: boolean;
}

export interface Keeping extends Pick<StoreApi<KeptState>, 'getState' | 'getInitialState' | 'subscribe'> {
  /** Another tab has the plan and is asked to let it go, or has done so: this one goes on with what that one kept last, by one undo step named `label`. */
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
  /** The right to keep, which one tab has at a time. */
  readonly hold: Hold;
  /** ms since 1970. */
  readonly now: () => number;
  /** Whether a plan comes with the program: such a one need not be remembered. */
  readonly isOwn: (plan: Plan) => Promise<boolean>;
}

/** The plan as the last finished gesture or edit left it. */
const finished = ({ plan, gesture }: DocumentState<Plan>): Plan => gesture?.start ?? plan;

/** Keeps every finished state of the document on the shelf, one at a time, the latest first; and what another plan has taken the place of among those of before. */
export function keepDocument(document: DocumentStore<Plan>, options: KeepOptions): Keeping {
  const { shelf, hold, now, isOwn } = options;
  const store = createStore<KeptState>(() => ({
    status: hold.held ? (options.revision > 0 ? 'kept' : 'fresh') : 'shown',
    revision: options.revision,
    damaged: options.damaged,
    keptBack: false,
  }));
  let keptPlan = finished(document.getState());
  let writing: Promise<void> | null = null;
  const holding = () => !['shown', 'free'].includes(store.getState().status);

  const showOnly = (status: 'shown' | 'free') => {
    store.setState({ status, keptBack: false });
    document.setReadOnly(true);
  };

  /** Writes one state after the other, until the latest is kept or will not be. */
  const keepLatest = async () => {
    for (let plan = finished(document.getState()); plan !== keptPlan; plan = finished(document.getState())) {
      const { revision } = store.getState();
      store.setState({ status: 'keeping' });
      const outcome = await shelf.put(printPlanFile(plan), revision);
      if (outcome === 'kept') {
        keptPlan = plan;
        store.setState({ revision: revision + 1 });
      }
      if (!holding()) return;
      if (outcome === 'overtaken') return showOnly('free');
      const latest = finished(document.getState()) === plan;
      if (latest) return store.setState({ status: outcome });
    }
    store.setState({ status: 'kept' });
  };

  const keep = () => {
    if (writing || !holding() || finished(document.getState()) === keptPlan) return;
    writing = keepLatest().finally(() => {
      writing = null;
    });
  };

  /** Another tab asks for the plan: it gets it once the last finished gesture is kept; at once where this one only shows it. */
  const giveWay = async (): Promise<boolean> => {
    if (!holding()) return true;
    document.setReadOnly(true);
    keep();
    await writing;
    if (!holding()) return true;
    const kept = finished(document.getState()) === keptPlan;
    if (kept) showOnly('shown');
    else document.setReadOnly(false);
    return kept;
  };

  const remember = async (plan: Plan) => {
    if (!holding()) return;
    const at = now();
    if (!(await isOwn(plan))) await shelf.remember(printPlanFile(plan), at);
  };

  if (!hold.held) showOnly('shown');
  hold.follow({
    giveWay,
    lost: () => showOnly('shown'),
    got: () => store.setState({ status: 'free' }),
  });
  document.subscribe((state, before) => {
    if (state.savedPlan !== before.savedPlan) void remember(before.plan);
    keep();
  });

  return {
    getState: store.getState,
    getInitialState: store.getInitialState,
    subscribe: store.subscribe,
    recent: shelf.recent,
    takeOver: async (label) => {
      if (holding()) return;
      const { parsePlanFile } = await import('../io/planFile.ts');
      if (!(await hold.ask())) return store.setState({ keptBack: true });
      const { slot } = await shelf.read();
      const read = slot && parsePlanFile(slot.text);
      const shown = finished(document.getState());
      const same = !read?.ok || printPlanFile(shown) === slot?.text;
      const next = same ? shown : read.plan;
      if (read?.ok) keptPlan = next;
      store.setState({ status: 'kept', revision: slot?.revision ?? 0, keptBack: false });
      if (!same) document.open(label, next);
      document.setReadOnly(false);
    },
  };
}

/** Where nothing is kept. */
export function keepNothing(): Keeping {
  const store = createStore<KeptState>(() => ({
    status: 'never',
    revision: 0,
    damaged: false,
    keptBack: false,
  }));
  return { ...store, takeOver: () => Promise.resolve(), recent: () => Promise.resolve([]) };
}
