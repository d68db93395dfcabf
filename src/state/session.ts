import { createStore, type StoreApi } from 'zustand/vanilla';

export const VIEWS = ['mesial', 'facial', 'incisal', 'axis'] as const;
export const LAYERS = ['bone', 'gum', 'teeth', 'lines', 'crown'] as const;
export const PIVOTS = ['entry', 'shoulder', 'apex'] as const;

export type View = (typeof VIEWS)[number];
export type Layer = (typeof LAYERS)[number];
export type Pivot = (typeof PIVOTS)[number];

/** How this browser looks at any plan. Never part of a plan file and never undone. */
export interface SessionState {
  view: View;
  /** Crowns down, as in the mouth; else crowns up, as on the bench. */
  asInMouth: boolean;
  layers: Readonly<Record<Layer, boolean>>;
  /** The point a tilt leaves where it is. */
  pivot: Pivot;
  /** Id of the reading that is picked out, or null. */
  reading: string | null;
}

export interface SessionStore extends Pick<StoreApi<SessionState>, 'getState' | 'subscribe'> {
  getInitialState: () => SessionState;
  set: (change: Partial<SessionState>) => void;
  toggleLayer: (layer: Layer) => void;
}

/** The part of the browser's storage that is used; it may throw, and then nothing is kept. */
export type Keep = Pick<Storage, 'getItem' | 'setItem'>;

const KEY = 'ridgewright.session.1';

const FRESH: SessionState = {
  view: 'mesial',
  asInMouth: false,
  layers: { bone: true, gum: true, teeth: true, lines: true, crown: false },
  pivot: 'entry',
  reading: null,
};

const oneOf = <T extends string>(allowed: readonly T[], value: unknown, fallback: T): T =>
  allowed.find((one) => one === value) ?? fallback;

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

/** What was kept, field by field: anything unknown or of the wrong kind falls back to the fresh state. */
function recall(keep: Keep | undefined): SessionState {
  try {
    const kept: unknown = JSON.parse(keep?.getItem(KEY) ?? '{}');
    if (!isRecord(kept)) return FRESH;
    const on = isRecord(kept.layers) ? kept.layers : {};
    const layers = { ...FRESH.layers };
    for (const layer of LAYERS) {
      const value = on[layer];
      if (typeof value === 'boolean') layers[layer] = value;
    }
    return {
      view: oneOf(VIEWS, kept.view, FRESH.view),
      asInMouth: kept.asInMouth === true,
      layers,
      pivot: oneOf(PIVOTS, kept.pivot, FRESH.pivot),
      reading: null,
    };
  } catch {
    return FRESH;
  }
}

/** The session; `keep` is where it outlives a reload, and may be missing. */
export function createSessionStore(keep?: Keep): SessionStore {
  const store = createStore<SessionState>(() => recall(keep));
  store.subscribe((state) => {
    try {
      keep?.setItem(KEY, JSON.stringify(state));
    } catch {
      // Storage is full or forbidden: the view is then simply not remembered.
    }
  });
  return {
    getState: store.getState,
    subscribe: store.subscribe,
    getInitialState: store.getInitialState,
    set: (change) => store.setState(change),
    toggleLayer: (layer) =>
      store.setState(({ layers }) => ({ layers: { ...layers, [layer]: !layers[layer] } })),
  };
}
