import { useSyncExternalStore } from 'react';
import type { StoreApi } from 'zustand/vanilla';

/**
 * A piece of a store's state in a component, redrawn when that piece changes. `select` returns something that
 * is already there, never a fresh object or array: a fresh one differs every time and redraws without end.
 * What changes at the pointer's rate (a drag's picture) subscribes to the store itself instead.
 */
export function useSelected<S, T>(
  store: Pick<StoreApi<S>, 'getState' | 'getInitialState' | 'subscribe'>,
  select: (state: S) => T,
): T {
  return useSyncExternalStore(
    store.subscribe,
    () => select(store.getState()),
    () => select(store.getInitialState()),
  );
}
