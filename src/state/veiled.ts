import type { Hidden } from '../core/teaching/exercise.ts';
import type { SessionState, SessionStore } from './session.ts';

/** The session with those layers off that would show what an exercise hides: dimension lines with their tags, the incisal line, the planned crown. */
export function veiled(session: SessionStore, hidden: Hidden): SessionStore {
  if (!hidden.readings && !hidden.target) return session;
  let last: { from: SessionState; seen: SessionState } | null = null;
  const see = (from: SessionState): SessionState => {
    if (last?.from !== from) {
      const crown = from.layers.crown && !hidden.target;
      last = { from, seen: { ...from, layers: { ...from.layers, lines: false, crown } } };
    }
    return last.seen;
  };
  return {
    ...session,
    getState: () => see(session.getState()),
    getInitialState: () => see(session.getInitialState()),
    subscribe: (listener) => session.subscribe((state, before) => listener(see(state), see(before))),
  };
}
