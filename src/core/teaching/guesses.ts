import type { ReadingId } from '../measure/reading.ts';
import { type Summary, summaryOf } from '../spread/summary.ts';

/** What can be guessed before it is shown: a reading, or how far a tool leans off the planned axis. */
export type GuessKind = ReadingId | 'lean';

/** A guess that was made, and what there was. mm or degrees, as of the reading. */
export interface Guess {
  readonly kind: GuessKind;
  readonly guessed: number;
  readonly found: number;
}

/** Guesses of one kind, as errors (guessed less found: + too much). */
export interface GuessSummary {
  readonly kind: GuessKind;
  readonly error: Summary;
  /** Size of the error on the whole, and over the first and the last few: whether it gets better. */
  readonly size: number;
  readonly first: number;
  readonly last: number;
}

/** How many guesses are kept, and how many are the first or the last few. */
export const MOST_GUESSES = 1000;
const FEW = 10;

/** The oldest are forgotten once there are too many. */
export const withGuess = (kept: readonly Guess[], guess: Guess): readonly Guess[] =>
  [...kept, guess].slice(-MOST_GUESSES);

const size = (errors: readonly number[]): number =>
  errors.reduce((sum, e) => sum + Math.abs(e), 0) / errors.length;

/** The errors of a user, a row for every kind that was guessed, in the order in which they first were (rule L11). */
export function guessSummaries(guesses: readonly Guess[]): GuessSummary[] {
  const kinds = [...new Set(guesses.map(({ kind }) => kind))];
  return kinds.flatMap((kind) => {
    const errors = guesses.filter((g) => g.kind === kind).map(({ guessed, found }) => guessed - found);
    const error = summaryOf(errors);
    if (!error) return [];
    const [first, last] = [errors.slice(0, FEW), errors.slice(-FEW)];
    return [{ kind, error, size: size(errors), first: size(first), last: size(last) }];
  });
}

/** What was kept on the machine, as guesses; whatever is none is left out. */
export function keptGuesses(value: unknown, kinds: readonly string[]): readonly Guess[] {
  if (!Array.isArray(value)) return [];
  return value
    .filter(
      (g): g is Guess =>
        typeof g === 'object' &&
        g !== null &&
        (g.kind === 'lean' || kinds.includes(g.kind)) &&
        Number.isFinite(g.guessed) &&
        Number.isFinite(g.found),
    )
    .map(({ kind, guessed, found }) => ({ kind, guessed, found }))
    .slice(-MOST_GUESSES);
}
