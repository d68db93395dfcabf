import type { ReadingId } from '../measure/reading.ts';
import type { Mark } from './mark.ts';
import { MEASURE_IDS, type MeasureId } from './measures.ts';

/** Mean and spread of a list of numbers; `sd` with n − 1, null for fewer than two. */
export interface Summary {
  readonly n: number;
  readonly mean: number;
  readonly sd: number | null;
  readonly least: number;
  readonly most: number;
}

/** Null for an empty list. The sums run over differences from the first, so that nothing is lost where all lie together. */
export function summaryOf(values: readonly number[]): Summary | null {
  const n = values.length;
  if (n === 0) return null;
  const [first] = values;
  const mean = first + values.reduce((sum, v) => sum + (v - first), 0) / n;
  const squares = values.reduce((sum, v) => sum + (v - mean) ** 2, 0);
  return {
    n,
    mean,
    sd: n > 1 ? Math.sqrt(squares / (n - 1)) : null,
    least: Math.min(...values),
    most: Math.max(...values),
  };
}

/** A class: each measure over all attempts, and how often each limit was broken (rule L10). */
export interface ClassReport {
  readonly attempts: number;
  readonly done: number;
  readonly measures: Readonly<Record<MeasureId, Summary | null>>;
  /** How many attempts lie beyond the teacher's tolerance, by measure; those that are marked. */
  readonly over: readonly { readonly measure: MeasureId; readonly count: number }[];
  /** The commonest first. */
  readonly broken: readonly { readonly reading: ReadingId; readonly count: number }[];
}

function counted<T extends string>(lists: readonly (readonly T[])[]): { id: T; count: number }[] {
  const counts = new Map<T, number>();
  for (const id of lists.flat()) counts.set(id, (counts.get(id) ?? 0) + 1);
  return [...counts].map(([id, count]) => ({ id, count })).sort((p, q) => q.count - p.count);
}

export function classReport(marks: readonly Mark[]): ClassReport {
  const summaries = MEASURE_IDS.map((id) => {
    const values = marks.flatMap(({ measures }) => measures[id] ?? []);
    return [id, summaryOf(values)] as const;
  });
  return {
    attempts: marks.length,
    done: marks.filter(({ done }) => done).length,
    measures: Object.fromEntries(summaries) as ClassReport['measures'],
    over: counted(marks.map(({ over }) => over)).map(({ id, count }) => ({ measure: id, count })),
    broken: counted(marks.map(({ broken }) => broken)).map(({ id, count }) => ({ reading: id, count })),
  };
}
