import type { Deviation, Offset } from './deviation.ts';
import { type Summary, summaryOf } from './summary.ts';

/** How an attempt was made: at the screen, or drilled in a printed ridge and measured. A hand at a mouse is not a hand at a drill. */
export type Way = 'screen' | 'bench';

export interface OwnAttempt {
  readonly way: Way;
  readonly deviation: Deviation;
}

/** Spread of one end of the implant over attempts, mm: + facially, + mesially, + too deep. */
export interface EndSpread {
  readonly faciopalatal: Summary;
  readonly mesiodistal: Summary;
  readonly depth: Summary;
  readonly global: Summary;
}

/** The spread of a hand, from its own attempts. Degrees for the angle. */
export interface HandSpread {
  readonly n: number;
  readonly platform: EndSpread;
  readonly apex: EndSpread;
  readonly angle: Summary;
}

/** So few attempts say little of a hand: under this its spread is shown with that word (ours). */
export const ENOUGH_ATTEMPTS = 10;

const KEYS = ['faciopalatal', 'mesiodistal', 'depth', 'global'] as const;

function endSpread(offsets: readonly Offset[]): EndSpread {
  const parts = KEYS.map((key) => [key, summaryOf(offsets.map((offset) => offset[key]))] as const);
  return Object.fromEntries(parts) as unknown as EndSpread;
}

/** The spread of the attempts made in one way; null before the first. The ways are never pooled. */
export function handSpread(attempts: readonly OwnAttempt[], way: Way): HandSpread | null {
  const own = attempts.filter((attempt) => attempt.way === way).map(({ deviation }) => deviation);
  const angle = summaryOf(own.map((d) => d.angle));
  if (!angle) return null;
  return {
    n: own.length,
    platform: endSpread(own.map(({ coronal }) => coronal)),
    apex: endSpread(own.map(({ apical }) => apical)),
    angle,
  };
}
