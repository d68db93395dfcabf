import { createStore, type StoreApi } from 'zustand/vanilla';
import type { LiveStore } from './live.ts';

/** Takes a picture of the model as it is shown, so many px wide, as a PNG file. */
export type TakePicture = (width: number) => Promise<Blob>;

export interface Photographer {
  /** Null where no model is in view. */
  readonly take: TakePicture | null;
}

const known = new WeakMap<LiveStore, StoreApi<Photographer>>();

/** Who takes pictures of a page's model: the stage offers itself while it stands, whoever wants a picture asks here. */
export function photographerOf(live: LiveStore): StoreApi<Photographer> {
  const one = known.get(live) ?? createStore<Photographer>(() => ({ take: null }));
  known.set(live, one);
  return one;
}
