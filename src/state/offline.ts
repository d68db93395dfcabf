import { createStore, type StoreApi } from 'zustand/vanilla';

export interface OfflineState {
  /** Everything the page needs lies on this machine. */
  readonly ready: boolean;
  /** A new version of the page has been loaded and waits. */
  readonly newer: boolean;
}

/** How the page stands to the network. */
export interface Offline extends Pick<StoreApi<OfflineState>, 'getState' | 'getInitialState' | 'subscribe'> {
  set: (change: Partial<OfflineState>) => void;
  /** Loads the page anew in its new version. */
  takeNewer: () => void;
}

export function createOffline(takeNewer: () => void = () => undefined): Offline {
  const store = createStore<OfflineState>(() => ({ ready: false, newer: false }));
  return { ...store, set: (change) => store.setState(change), takeNewer };
}
