import { createStore, type StoreApi } from 'zustand/vanilla';

export interface LiveState {
  /** Id of the handle, field or reading under the pointer or in focus, or null. */
  hover: string | null;
  /** Id of the handle being dragged, or null. */
  dragging: string | null;
  /** The next press on the model places the entry. */
  placing: boolean;
  /** Shown large, before a class. */
  projector: boolean;
  /** Grows by one with every change of document, session or live state: what is on screen has a number. */
  revision: number;
}

export interface LiveStore extends Pick<StoreApi<LiveState>, 'getState' | 'subscribe'> {
  getInitialState: () => LiveState;
  set: (change: Partial<Pick<LiveState, 'hover' | 'dragging' | 'placing' | 'projector'>>) => void;
}

/** Anything that tells of its changes. */
interface Watched {
  subscribe: (listener: () => void) => unknown;
}

/** What lives only as long as the pointer is where it is. Counts the changes of the `watched` stores too. */
export function createLiveStore(...watched: readonly Watched[]): LiveStore {
  const store = createStore<LiveState>(() => ({
    hover: null,
    dragging: null,
    placing: false,
    projector: false,
    revision: 0,
  }));
  const bump = () => store.setState(({ revision }) => ({ revision: revision + 1 }));
  for (const other of watched) other.subscribe(bump);
  return {
    getState: store.getState,
    subscribe: store.subscribe,
    getInitialState: store.getInitialState,
    set: (change) => {
      const state = store.getState();
      const next = { ...state, ...change };
      const same = (['hover', 'dragging', 'placing', 'projector'] as const).every(
        (key) => next[key] === state[key],
      );
      if (same) return;
      store.setState({ ...next, revision: state.revision + 1 });
    },
  };
}
