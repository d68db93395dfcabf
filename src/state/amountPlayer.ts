import type { LiveStore } from './live.ts';

/** Time from nothing of a trajectory to all of it, ms. */
const WHOLE = 4000;

const calm = () => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

/** What `dragging` says while the amount moves by itself. */
export const PLAYING = 'play';

export interface AmountPlayer {
  /** Carries the amount to `target` at an even pace; at once for those who asked for less motion. */
  readonly playTo: (target: number) => void;
  readonly stop: () => void;
}

/** Moves the amount of a trajectory by itself, from the plan to its full size or back, in whole per cents. */
export function amountPlayer(live: LiveStore): AmountPlayer {
  let frame = 0;
  const stop = () => {
    cancelAnimationFrame(frame);
    if (live.getState().dragging === PLAYING) live.set({ dragging: null });
  };
  const playTo = (target: number) => {
    stop();
    if (calm()) return live.set({ amount: target });
    const from = live.getState().amount;
    const way = Math.sign(target - from);
    const start = performance.now();
    const step = (now: number) => {
      const gone = Math.min(Math.abs(target - from), Math.max(0, now - start) / WHOLE);
      const amount = Math.round(100 * (from + way * gone)) / 100;
      const there = amount === target;
      live.set({ amount, dragging: there ? null : PLAYING });
      if (!there) frame = requestAnimationFrame(step);
    };
    live.set({ dragging: PLAYING });
    frame = requestAnimationFrame(step);
  };
  return { playTo, stop };
}
