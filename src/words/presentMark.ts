import type { Known } from '../core/measure/limit.ts';
import type { ReadingId } from '../core/measure/reading.ts';
import type { ClassReport } from '../core/teaching/classReport.ts';
import type { Exercise } from '../core/teaching/exercise.ts';
import type { Mark } from '../core/teaching/mark.ts';
import { isSigned, MEASURE_IDS, type MeasureId, unitOfMeasure } from '../core/teaching/measures.ts';
import { PUBLISHED_SPREADS, type PublishedSpread, type PublishedValue } from '../core/teaching/published.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { sourceText } from './presentReading.ts';
import { say } from './sayTeach.ts';

export const sayMeasure = (id: MeasureId): string => say(`measure.${id}`);

/** A measure's number, with a sign where it has one; its tolerance keeps the shown digits on their side. NaN: none. */
const quantity = (id: MeasureId, value: number | null, tolerance?: number) => ({
  value: value ?? Number.NaN,
  unit: unitOfMeasure(id),
  signed: isSigned(id),
  limits: tolerance === undefined ? [] : [tolerance, -tolerance],
});

export const measureText = (id: MeasureId, value: number | null, tolerance?: number): string =>
  formatQuantity(quantity(id, value, tolerance));
export const measureNumber = (id: MeasureId, value: number | null, tolerance?: number): string =>
  formatNumber(quantity(id, value, tolerance));

export interface PresentedMark {
  readonly label: string;
  /** Numbers without units, in the order of the measures. */
  readonly measures: Readonly<Record<MeasureId, string>>;
  /** Names of measures beyond the tolerance, and of limits broken. */
  readonly over: readonly string[];
  readonly broken: readonly string[];
  readonly done: string;
}

export function presentMark(mark: Mark, { tolerances }: Pick<Exercise, 'tolerances'>): PresentedMark {
  const measures = MEASURE_IDS.map(
    (id) => [id, measureNumber(id, mark.measures[id], tolerances[id])] as const,
  );
  return {
    label: mark.label,
    measures: Object.fromEntries(measures) as PresentedMark['measures'],
    over: mark.over.map(sayMeasure),
    broken: mark.broken.map(sayReading),
    done: say(mark.done ? 'done.yes' : 'done.no'),
  };
}

const sayReading = (id: ReadingId): string => say(`reading.${id}`);

export interface PresentedStatistic {
  readonly id: MeasureId;
  readonly label: string;
  readonly mean: string;
  readonly sd: string;
  readonly range: string;
}

/** Mean, SD and range of every measure that some attempt has. */
export const presentStatistics = ({ measures }: ClassReport): PresentedStatistic[] =>
  MEASURE_IDS.flatMap((id) => {
    const found = measures[id];
    if (!found) return [];
    const sd = { value: found.sd ?? Number.NaN, unit: unitOfMeasure(id) };
    const range = { least: measureNumber(id, found.least), most: measureText(id, found.most) };
    return [
      {
        id,
        label: sayMeasure(id),
        mean: measureText(id, found.mean),
        sd: formatQuantity(sd),
        range: say('class.range', range),
      },
    ];
  });

const count = (value: number): string => formatNumber({ value, unit: 'count' });

/** How many files were marked, how many are done, how many could not be read. */
export const sayCount = ({ attempts, done }: ClassReport, files: number, exercise: Exercise): string =>
  say('class.count', {
    marked: count(attempts),
    files: count(files),
    done: count(done),
    what: say(`done.${exercise.done}`),
    broken: count(files - attempts),
  });

/** The limits that attempts break and the teacher's plan keeps, the commonest first. */
export function presentBroken({ broken, attempts }: ClassReport): string[] {
  if (broken.length === 0) return [say('class.brokenNone')];
  return broken.map(({ reading, count: n }) =>
    say('class.brokenRow', { reading: sayReading(reading), count: count(n), attempts: count(attempts) }),
  );
}

export const presentOver = ({ over, attempts }: ClassReport, { tolerances }: Exercise): string[] =>
  over.map(({ measure, count: n }) =>
    say('class.overRow', {
      measure: sayMeasure(measure),
      tolerance: formatQuantity({
        value: tolerances[measure] ?? Number.NaN,
        unit: unitOfMeasure(measure),
        exact: true,
      }),
      count: count(n),
      attempts: count(attempts),
    }),
  );

/** A published value, with its SD or range where the study gives one. */
export function publishedText(id: MeasureId, { mean, sd, range }: PublishedValue): string {
  const unit = unitOfMeasure(id);
  const bare = (value: number) => formatNumber({ value, unit, exact: true });
  const whole = (value: number) => formatQuantity({ value, unit, exact: true });
  if (typeof mean !== 'number') return say('published.band', { low: bare(mean[0]), high: whole(mean[1]) });
  if (sd !== null) return say('published.withSd', { mean: bare(mean), sd: whole(sd) });
  if (!range) return whole(mean);
  const [low, high] = range;
  return low === null
    ? say('published.withMost', { mean: bare(mean), high: whole(high) })
    : say('published.withRange', { mean: bare(mean), low: bare(low), high: whole(high) });
}

/** A published spread: whose, how far off, by whom. */
export interface PresentedSpread {
  readonly id: string;
  readonly group: string;
  readonly values: string;
  readonly by: string;
}

function presentPublished({ id: spread, who, guide, where, ...study }: PublishedSpread): PresentedSpread {
  const { values, source, known } = study;
  const parts = MEASURE_IDS.flatMap((id) => {
    const value = values[id];
    return value
      ? [say('published.value', { measure: sayMeasure(id), value: publishedText(id, value) })]
      : [];
  });
  const slots = {
    who: say(`published.who.${who}`),
    guide: say(`published.guide.${guide}`),
    where: say(`published.where.${where}`),
  };
  const by = {
    source: sourceText(source),
    known: say(`known.${known as Known}` as 'known.read'),
  };
  return {
    id: spread,
    group: say('published.group', slots),
    values: parts.join('; '),
    by: say('published.by', by),
  };
}

export const publishedSpreads = (): PresentedSpread[] => PUBLISHED_SPREADS.map(presentPublished);

/** A published spread in a line. */
export function publishedLine(spread: PublishedSpread): string {
  const { id: _, ...slots } = presentPublished(spread);
  return say('published.row', slots);
}

/** All of them, each in a line. */
export const publishedLines = (): string[] => PUBLISHED_SPREADS.map(publishedLine);
