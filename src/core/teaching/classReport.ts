import type { ReadingId } from '../measure/reading.ts';
import { type Summary, summaryOf } from '../spread/summary.ts';
import type { Mark } from './mark.ts';
import { MEASURE_IDS, type MeasureId } from './measures.ts';

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

/** Mean, SD and range of each measure over those that have it. */
export const measureSummaries = (marks: readonly Pick<Mark, 'measures'>[]): ClassReport['measures'] =>
  Object.fromEntries(
    MEASURE_IDS.map((id) => [id, summaryOf(marks.flatMap(({ measures }) => measures[id] ?? []))]),
  ) as ClassReport['measures'];

export function classReport(marks: readonly Mark[]): ClassReport {
  return {
    attempts: marks.length,
    done: marks.filter(({ done }) => done).length,
    measures: measureSummaries(marks),
    over: counted(marks.map(({ over }) => over)).map(({ id, count }) => ({ measure: id, count })),
    broken: counted(marks.map(({ broken }) => broken)).map(({ id, count }) => ({ reading: id, count })),
  };
}
