import { useSyncExternalStore } from 'react';
import { type Sitting, sittingAt } from './sitting.ts';
import type { PlanStores } from './stores.ts';

/** The exercise that is being done, or null. */
export function useSitting(stores: PlanStores): Sitting | null {
  const now = () => sittingAt(stores);
  const subscribe = (tell: () => void) => {
    const ends = [stores.document.subscribe(tell), stores.live.subscribe(tell)];
    return () => {
      for (const end of ends) end();
    };
  };
  return useSyncExternalStore(subscribe, now);
}
