import { createStore, type StoreApi } from 'zustand/vanilla';

/** A finished change: the plan as it was on the far side of it, and what the change was called. */
interface Step<P> {
  label: string;
  plan: P;
}

interface Gesture<P> {
  label: string;
  /** The plan when the gesture began. */
  start: P;
}

export interface DocumentState<P> {
  plan: P;
  /** Grows by one with every change of the plan, undo and redo included; never goes back. */
  revision: number;
  /** The plan that was last opened or saved: the document is saved while `plan === savedPlan`. */
  savedPlan: P;
  past: readonly Step<P>[];
  future: readonly Step<P>[];
  gesture: Gesture<P> | null;
  /** The plan is only shown: no edit and no gesture changes it. Another may still be opened, and undone. */
  readOnly: boolean;
  /** How many edits and gestures were not taken because of that. */
  refused: number;
}

export interface DocumentStore<P> extends Pick<StoreApi<DocumentState<P>>, 'getState' | 'subscribe'> {
  getInitialState: () => DocumentState<P>;
  /** The one door: a named change, one undo step. A gesture in progress is finished first. No change, no step. */
  edit: (label: string, change: (plan: P) => P) => void;
  /** Starts a drag or a held key. All of it will be one undo step. A gesture in progress is finished first. */
  beginGesture: (label: string) => void;
  /** Moves the plan. `change` gets the plan as the gesture found it, so that rounding cannot creep in. */
  updateGesture: (change: (start: P) => P) => void;
  /** Ends the gesture as one undo step, or as none when it came back to where it began. `label` names the step anew. */
  endGesture: (label?: string) => void;
  /** Ends the gesture and puts the plan back as it was. */
  cancelGesture: () => void;
  /** Takes the last step back; in the middle of a gesture it cancels that instead. */
  undo: () => void;
  redo: () => void;
  /** Another plan altogether, which counts as saved: one undo step that brings the plan before it back. */
  open: (label: string, plan: P) => void;
  markSaved: () => void;
  /** From now on the plan is only shown, or may be changed again. A gesture in progress is put back. */
  setReadOnly: (readOnly: boolean) => void;
}

/** Steps kept; a plan is a few kilobytes, so this is at most a megabyte or two. */
const MOST_STEPS = 200;

const same = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

/**
 * The document: one plan, its saved state and its undo steps. Plans are values: `change` returns a new one
 * and leaves the old alone. A `change` that throws leaves everything as it was.
 */
export function createDocumentStore<P>(initial: P): DocumentStore<P> {
  const store = createStore<DocumentState<P>>(() => ({
    plan: initial,
    revision: 0,
    savedPlan: initial,
    past: [],
    future: [],
    gesture: null,
    readOnly: false,
    refused: 0,
  }));
  const { getState, setState } = store;

  const mayChange = (): boolean => {
    const { readOnly, refused } = getState();
    if (readOnly) setState({ refused: refused + 1 });
    return !readOnly;
  };

  const advanceTo = (plan: P) => ({ plan, revision: getState().revision + 1 });

  const remember = (label: string, plan: P) => ({
    past: [...getState().past, { label, plan }].slice(-MOST_STEPS),
    future: [],
  });

  const endGesture = (label?: string) => {
    const { gesture, plan } = getState();
    if (!gesture) return;
    if (same(gesture.start, plan)) setState({ plan: gesture.start, gesture: null });
    else setState({ ...remember(label ?? gesture.label, gesture.start), gesture: null });
  };

  const cancelGesture = () => {
    const { gesture, plan } = getState();
    if (!gesture) return;
    setState(plan === gesture.start ? { gesture: null } : { ...advanceTo(gesture.start), gesture: null });
  };

  return {
    getState,
    subscribe: store.subscribe,
    getInitialState: store.getInitialState,
    endGesture,
    cancelGesture,

    edit: (label, change) => {
      if (!mayChange()) return;
      endGesture();
      const { plan } = getState();
      const next = change(plan);
      if (!same(plan, next)) setState({ ...remember(label, plan), ...advanceTo(next) });
    },

    beginGesture: (label) => {
      if (!mayChange()) return;
      endGesture();
      setState({ gesture: { label, start: getState().plan } });
    },

    updateGesture: (change) => {
      const { gesture } = getState();
      if (gesture) setState(advanceTo(change(gesture.start)));
    },

    undo: () => {
      const { gesture, past, future, plan } = getState();
      if (gesture) return cancelGesture();
      const step = past.at(-1);
      if (!step) return;
      setState({
        ...advanceTo(step.plan),
        past: past.slice(0, -1),
        future: [{ label: step.label, plan }, ...future],
      });
    },

    redo: () => {
      const { gesture, past, future, plan } = getState();
      const [step, ...rest] = future;
      if (!step || gesture) return;
      setState({ ...advanceTo(step.plan), past: [...past, { label: step.label, plan }], future: rest });
    },

    open: (label, plan) => {
      endGesture();
      setState({ ...remember(label, getState().plan), ...advanceTo(plan), savedPlan: plan });
    },

    markSaved: () => setState({ savedPlan: getState().plan }),

    setReadOnly: (readOnly) => {
      if (readOnly) cancelGesture();
      setState({ readOnly });
    },
  };
}

export const isSaved = <P>(state: DocumentState<P>): boolean => state.plan === state.savedPlan;
/** The name of the step that undo would take back, or null when there is none. */
export const undoLabel = <P>(state: DocumentState<P>): string | null => state.past.at(-1)?.label ?? null;
/** The name of the step that redo would bring back, or null when there is none. */
export const redoLabel = <P>(state: DocumentState<P>): string | null => state.future[0]?.label ?? null;
