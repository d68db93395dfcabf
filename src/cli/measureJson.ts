import type { Reading } from '../core/measure/reading.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { presentReading } from '../words/presentReading.ts';

export interface Measured {
  readonly file: string;
  readonly evaluation: Evaluation;
}

/** One reading: the record's own numbers, and `shown`, the digits that the page shows. */
const readingJson = (reading: Reading) => {
  const { limit, ...rest } = reading;
  return { ...rest, shown: presentReading(reading).number, limit };
};

/** An array, per file its title and an array of readings; the wall profiles are readings with samples. Points in the jaw frame, mm. */
export function measureJson(all: readonly Measured[]): string {
  const out = all.map(({ file, evaluation }) => ({
    file,
    title: evaluation.plan.title,
    readings: [
      ...evaluation.profiles.map(({ side, samples }) => ({
        id: `${side}-wall-profile`,
        unit: 'mm',
        samples: samples.map(({ level, wall, gap, counts }) => ({ level, wall, gap, counts })),
      })),
      ...evaluation.readings.map(readingJson),
    ],
  }));
  return `${JSON.stringify(out, null, 2)}\n`;
}
