import { createStore, type StoreApi } from 'zustand/vanilla';
import { READING_IDS } from '../core/measure/reading.ts';
import { keptAttempts, type OwnAttempt, type Way, withAttempt, withoutNewest } from '../core/spread/hand.ts';
import { type Guess, keptGuesses, withGuess } from '../core/teaching/guesses.ts';
import type { Keep } from './session.ts';

/** What this machine keeps of its user's own tries. Never part of a plan file, never sent anywhere. */
export interface OwnState {
  readonly guesses: readonly Guess[];
  readonly attempts: readonly OwnAttempt[];
}

const NOTHING: OwnState = { guesses: [], attempts: [] };

export interface OwnStore extends Pick<StoreApi<OwnState>, 'getState' | 'subscribe'> {
  getInitialState: () => OwnState;
  addGuesses: (guesses: readonly Guess[]) => void;
  addAttempt: (attempt: OwnAttempt) => void;
  /** Takes the newest attempt of one way back. */
  dropNewest: (way: Way) => void;
  forgetGuesses: () => void;
  forgetAll: () => void;
}

const KEY = 'ridgewright.own.1';

function recall(keep: Keep | undefined): OwnState {
  try {
    const kept: unknown = JSON.parse(keep?.getItem(KEY) ?? '{}');
    if (typeof kept !== 'object' || kept === null) return NOTHING;
    const { guesses, attempts } = kept as Readonly<Record<string, unknown>>;
    return { guesses: keptGuesses(guesses, READING_IDS), attempts: keptAttempts(attempts) };
  } catch {
    return NOTHING;
  }
}

/** The own tries of this machine's user; where nothing can be kept they last as long as the page. */
export function createOwnStore(keep?: Keep): OwnStore {
  const store = createStore<OwnState>(() => recall(keep));
  const put = (change: Partial<OwnState>) => {
    store.setState(change);
    try {
      keep?.setItem(KEY, JSON.stringify(store.getState()));
    } catch {
      // Storage is full or forbidden: the numbers stay for this visit.
    }
  };
  return {
    getState: store.getState,
    subscribe: store.subscribe,
    getInitialState: store.getInitialState,
    addGuesses: (more) => put({ guesses: more.reduce(withGuess, store.getState().guesses) }),
    addAttempt: (attempt) => put({ attempts: withAttempt(store.getState().attempts, attempt) }),
    dropNewest: (way) => put({ attempts: withoutNewest(store.getState().attempts, way) }),
    forgetGuesses: () => put({ guesses: [] }),
    forgetAll: () => put(NOTHING),
  };
}
