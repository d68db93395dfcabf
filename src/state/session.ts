import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Pose } from '../core/geometry/pose.ts';
import type { ImplantShape } from '../core/implant/shape.ts';
import { READING_IDS, type ReadingId } from '../core/measure/reading.ts';
import type { Pivot } from '../core/plan/edits.ts';
import { LANGUAGES, type Language } from '../words/language.ts';

/** What is being done with the plan: its site described, the implant placed, the drilling rehearsed, the implant seated, the crown looked at, shown to a patient, taught to a class. */
export const PLACES = ['site', 'place', 'rehearse', 'seat', 'crown', 'show', 'teach', 'sheet'] as const;
/** What is taught with the plan: one bad trajectory after the other, a lesson step by step, an exercise; a class's attempts, read together; and the user's own hand. */
export const TEACHINGS = ['trajectories', 'lesson', 'exercise', 'class', 'hand'] as const;
export const VIEWS = ['mesial', 'distal', 'facial', 'palatal', 'incisal', 'axis'] as const;
/** What the arrow keys do on the stage: one of the hand's two corrections. */
export const HANDS = ['shift', 'tilt'] as const;
export const LAYERS = ['gum', 'teeth', 'lines', 'crown', 'bite'] as const;
/** The bone is never hidden: cut along the implant's axis, whole, or whole and translucent. */
export const BONES = ['cut', 'whole', 'translucent'] as const;
/** How the planned crown stands on the stage and in the sections of its own place. */
export const CROWN_LOOKS = ['outline', 'translucent', 'solid', 'none'] as const;
export const PIVOTS = ['entry', 'apex', 'platform', 'aim'] as const satisfies readonly Pivot[];
/** How the stage is drawn: as the frame time allows, always in full, or always lightly. */
export const DRAWINGS = ['auto', 'full', 'light'] as const;

/** The paper that the sheet is laid out for. */
export const PAPERS = ['a4', 'letter'] as const;

export type Place = (typeof PLACES)[number];
export type Teaching = (typeof TEACHINGS)[number];
/** Which way the drawn section runs: through the axis faciopalatally or mesiodistally, or across it. */
export const SECTIONS = ['faciopalatal', 'mesiodistal', 'across'] as const;
export type SectionKind = (typeof SECTIONS)[number];
export type Paper = (typeof PAPERS)[number];
export type Hand = (typeof HANDS)[number];
export type View = (typeof VIEWS)[number];
export type Layer = (typeof LAYERS)[number];
export type BoneLook = (typeof BONES)[number];
export type CrownLook = (typeof CROWN_LOOKS)[number];
export type Drawing = (typeof DRAWINGS)[number];

/** A pose with its implant, put aside to compare with. */
export interface Kept {
  readonly pose: Pose;
  readonly implant: ImplantShape;
}

/** How this browser looks at any plan. Never part of a plan file and never undone. */
export interface SessionState {
  place: Place;
  teaching: Teaching;
  view: View;
  /** Crowns down, as in the mouth; else crowns up, as on the bench. */
  asInMouth: boolean;
  bone: BoneLook;
  layers: Readonly<Record<Layer, boolean>>;
  crownLook: CrownLook;
  /** The point a tilt leaves where it is. */
  pivot: Pivot;
  /** The reading that is picked out, or null. */
  selectedReading: ReadingId | null;
  drawing: Drawing;
  paper: Paper;
  hand: Hand;
  section: SectionKind;
  /** Level of the section across the axis, mm apical of the entry. */
  sectionLevel: number;
  /** What the patient's page speaks. */
  language: Language;
  /** Forgotten with the page. */
  kept: Kept | null;
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
  place: 'place',
  teaching: 'trajectories',
  view: 'mesial',
  asInMouth: false,
  bone: 'cut',
  layers: { gum: true, teeth: true, lines: true, crown: false, bite: false },
  crownLook: 'translucent',
  pivot: 'entry',
  selectedReading: null,
  drawing: 'auto',
  paper: 'a4',
  hand: 'shift',
  section: 'faciopalatal',
  sectionLevel: 3,
  language: 'en',
  kept: null,
};

const oneOf = <T extends string, F>(allowed: readonly T[], value: unknown, fallback: F): T | F =>
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
      place: oneOf(PLACES, kept.place, FRESH.place),
      teaching: oneOf(TEACHINGS, kept.teaching, FRESH.teaching),
      view: oneOf(VIEWS, kept.view, FRESH.view),
      asInMouth: kept.asInMouth === true,
      bone: oneOf(BONES, kept.bone, FRESH.bone),
      layers,
      crownLook: oneOf(CROWN_LOOKS, kept.crownLook, FRESH.crownLook),
      pivot: oneOf(PIVOTS, kept.pivot, FRESH.pivot),
      selectedReading: oneOf(READING_IDS, kept.selectedReading, null),
      drawing: oneOf(DRAWINGS, kept.drawing, FRESH.drawing),
      paper: oneOf(PAPERS, kept.paper, FRESH.paper),
      hand: oneOf(HANDS, kept.hand, FRESH.hand),
      section: oneOf(SECTIONS, kept.section, FRESH.section),
      sectionLevel: FRESH.sectionLevel,
      language: oneOf(LANGUAGES, kept.language, FRESH.language),
      kept: null,
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
