import { createStore, type StoreApi } from 'zustand/vanilla';
import { READING_IDS } from '../core/measure/reading.ts';
import { type Guess, keptGuesses, withGuess } from '../core/teaching/guesses.ts';
import type { Keep } from './session.ts';

/** What this machine keeps of its user's own tries. Never part of a plan file, never sent anywhere. */
export interface OwnState {
  readonly guesses: readonly Guess[];
}

export interface OwnStore extends Pick<StoreApi<OwnState>, 'getState' | 'subscribe'> {
  getInitialState: () => OwnState;
  addGuesses: (guesses: readonly Guess[]) => void;
  forget: () => void;
}

const KEY = 'ridgewright.own.1';

function recall(keep: Keep | undefined): OwnState {
  try {
    const kept: unknown = JSON.parse(keep?.getItem(KEY) ?? '{}');
    const guesses = typeof kept === 'object' && kept !== null && 'guesses' in kept ? kept.guesses : [];
    return { guesses: keptGuesses(guesses, READING_IDS) };
  } catch {
    return { guesses: [] };
  }
}

/** The own tries of this machine's user; where nothing can be kept they last as long as the page. */
export function createOwnStore(keep?: Keep): OwnStore {
  const store = createStore<OwnState>(() => recall(keep));
  const put = (state: OwnState) => {
    store.setState(state);
    try {
      keep?.setItem(KEY, JSON.stringify(state));
    } catch {
      // Storage is full or forbidden: the numbers stay for this visit.
    }
  };
  return {
    getState: store.getState,
    subscribe: store.subscribe,
    getInitialState: store.getInitialState,
    addGuesses: (more) => put({ guesses: more.reduce(withGuess, store.getState().guesses) }),
    forget: () => put({ guesses: [] }),
  };
}
