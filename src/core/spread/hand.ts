import type { Deviation, Offset } from './deviation.ts';
import { type Summary, summaryOf } from './summary.ts';

/** How an attempt was made: at the screen, or drilled in a printed ridge and measured. A hand at a mouse is not a hand at a drill. */
export const WAYS = ['screen', 'bench'] as const;
export type Way = (typeof WAYS)[number];

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

/** How many attempts are kept. */
export const MOST_ATTEMPTS = 1000;

/** The oldest are forgotten once there are too many. */
export const withAttempt = (kept: readonly OwnAttempt[], attempt: OwnAttempt): readonly OwnAttempt[] =>
  [...kept, attempt].slice(-MOST_ATTEMPTS);

/** Without the newest of one way. */
export function withoutNewest(kept: readonly OwnAttempt[], way: Way): readonly OwnAttempt[] {
  const newest = kept.findLastIndex((attempt) => attempt.way === way);
  return kept.filter((_, i) => i !== newest);
}

const sameOffset = (p: Offset, q: Offset): boolean => KEYS.every((key) => p[key] === q[key]);

/** Whether this very attempt is kept already: no two of a hand agree to the last digit. */
export const isKept = (kept: readonly OwnAttempt[], { way, deviation: d }: OwnAttempt): boolean =>
  kept.some(
    ({ way: other, deviation: k }) =>
      other === way &&
      k.angle === d.angle &&
      sameOffset(k.coronal, d.coronal) &&
      sameOffset(k.apical, d.apical),
  );

const OFFSET_KEYS = ['global', 'depth', 'lateral', 'mesiodistal', 'faciopalatal'] as const;
type Loose = Readonly<Record<string, unknown>>;

const isLoose = (value: unknown): value is Loose => typeof value === 'object' && value !== null;
const isOffset = (value: unknown): value is Offset =>
  isLoose(value) && OFFSET_KEYS.every((key) => Number.isFinite(value[key]));
const isDeviation = (value: unknown): value is Deviation =>
  isLoose(value) && Number.isFinite(value.angle) && isOffset(value.coronal) && isOffset(value.apical);

const offsetOf = (offset: Offset): Offset =>
  Object.fromEntries(OFFSET_KEYS.map((key) => [key, offset[key]])) as unknown as Offset;

/** What was kept on the machine, as attempts; whatever is none is left out. */
export function keptAttempts(value: unknown): readonly OwnAttempt[] {
  if (!Array.isArray(value)) return [];
  return value
    .filter(
      (one): one is OwnAttempt =>
        isLoose(one) && (one.way === 'screen' || one.way === 'bench') && isDeviation(one.deviation),
    )
    .map(({ way, deviation: { coronal, apical, angle, roll } }) => ({
      way,
      deviation: {
        coronal: offsetOf(coronal),
        apical: offsetOf(apical),
        angle,
        roll: Number.isFinite(roll) ? roll : null,
      },
    }))
    .slice(-MOST_ATTEMPTS);
}
