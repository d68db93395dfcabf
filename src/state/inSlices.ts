/** Longest stretch of searching between two looks at the hand, ms. */
const SLICE = 8;

interface Listener<Y, T> {
  /** What the search yields on its way. */
  readonly each?: (found: Y) => void;
  readonly done: (result: T) => void;
}

/** Runs a search in slices while nothing else is to be done; what it returns stops it. */
export function inSlices<Y, T>(search: Generator<Y, T>, { each, done }: Listener<Y, T>): () => void {
  let stopped = false;
  const later: (work: () => void) => void =
    'requestIdleCallback' in window
      ? (work) => void window.requestIdleCallback(work, { timeout: 200 })
      : (work) => void setTimeout(work);
  const slice = () => {
    if (stopped) return;
    const until = performance.now() + SLICE;
    for (let step = search.next(); ; step = search.next()) {
      if (step.done) return done(step.value);
      each?.(step.value);
      if (performance.now() > until) return later(slice);
    }
  };
  later(slice);
  return () => {
    stopped = true;
  };
}
