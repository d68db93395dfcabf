import type { BenchInput } from '../core/teaching/bench.ts';
import { BENCH_PLACES, CALLIPER_SD } from '../core/teaching/benchPlaces.ts';

/** Readings at a drilled practice ridge as they are typed, mm; null: not measured. */
export interface BenchDraft {
  /** Of the last drill; null: the plan's. */
  readonly diameter: number | null;
  /** In the order of the places. */
  readonly values: readonly (number | null)[];
  readonly depth: number | null;
  readonly sd: number;
}

export const NO_BENCH: BenchDraft = {
  diameter: null,
  values: BENCH_PLACES.map(() => null),
  depth: null,
  sd: CALLIPER_SD,
};

/** What is measured, for the check. */
export const benchInput = ({ values, depth, sd }: BenchDraft, diameter: number): BenchInput => ({
  diameter,
  callipers: BENCH_PLACES.flatMap((place, i) => {
    const value = values[i];
    return value === null ? [] : [{ ...place, value }];
  }),
  depth,
  sd,
});
