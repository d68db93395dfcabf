import type { Mark } from '../../core/teaching/mark.ts';
import type { MeasureId } from '../../core/teaching/measures.ts';
import { PUBLISHED_SPREADS } from '../../core/teaching/published.ts';

/** The values of a measure over all marked attempts that have it. */
export const valuesOf = (marks: readonly Pick<Mark, 'measures'>[], id: MeasureId): number[] =>
  marks.flatMap(({ measures }) => measures[id] ?? []);

/** How far a scale reaches so that all values lie on it: whole steps, and at least two of them. */
export const reachOf = (values: readonly number[], step: number): number =>
  step * Math.max(2, Math.ceil(Math.max(0, ...values.map(Math.abs)) / step));

/** Marks of a scale up to its reach, at most `most` of them, in whole steps. */
export function stepsUpTo(reach: number, step: number, most = 5): number[] {
  const wide = step * Math.ceil(reach / step / most);
  return Array.from({ length: Math.floor(reach / wide + 1e-9) }, (_, i) => (i + 1) * wide);
}

/** The published mean of beginners' freehand groups, low to high, or null where the study does not give the measure. */
export function beginnersOf(id: MeasureId): readonly [low: number, high: number] | null {
  const found = PUBLISHED_SPREADS.find(({ who, guide }) => who === 'beginners' && guide === 'freehand');
  const mean = found?.values[id]?.mean;
  if (mean === undefined) return null;
  return typeof mean === 'number' ? [mean, mean] : mean;
}
