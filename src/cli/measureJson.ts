import type { Reading } from '../core/measure/reading.ts';
import type { DrillReport } from '../core/plan/drillReport.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { depthTurns } from '../core/plan/partTurns.ts';
import { presentDepthTurns, presentExit } from '../words/presentCrown.ts';
import { presentPass, presentPassFault, presentVerdict, settingOf } from '../words/presentPasses.ts';
import { presentReading } from '../words/presentReading.ts';

export interface Measured {
  readonly file: string;
  readonly evaluation: Evaluation;
  /** Null where no pass was made. */
  readonly report: DrillReport | null;
}

/** One reading: the record's own numbers, and `shown`, the digits that the page shows. */
const readingJson = (reading: Reading) => {
  const { limit, ...rest } = reading;
  return { ...rest, shown: presentReading(reading).number, limit };
};

/** What the readings mean for the crown together: codes and numbers, and in `says` the sentences. */
function crownJson({ evaluation }: Measured) {
  const { plan, restoration } = evaluation;
  const turns = depthTurns(evaluation);
  return {
    ...plan.crown,
    exit: { ...restoration.exit, says: presentExit(restoration.exit) },
    depthTurns: turns.map((one) => ({ ...one, says: presentDepthTurns(one) })),
  };
}

/** The rehearsal beside the plan: the core's own numbers, and in `shown` and `says` what the page shows. */
function rehearsalJson({ evaluation: { plan }, report }: Measured) {
  if (!report) return {};
  const { summary, hole, passes, removed, collected } = report;
  const setting = settingOf(plan);
  const outlook = summary?.outlook ?? null;
  const rows = summary?.rows.map((row) => ({
    ...row,
    shown: Object.fromEntries(presentPass(row, setting).rows.map(({ key, value }) => [key, value])),
    faults: row.faults.map((fault) => ({ ...fault, says: presentPassFault(fault, setting).text })),
    readings: passes[row.index].map(readingJson),
  }));
  return {
    rehearsal: {
      verdict: summary?.verdict ?? null,
      says: summary ? presentVerdict(summary) : null,
      outlook: outlook && { answer: outlook.answer, gap: outlook.gap, void: outlook.void },
      passes: rows ?? [],
      hole: hole.map(readingJson),
      removed,
      collected,
    },
  };
}

/** An array, per file its title and an array of readings, what they mean for the crown, and where passes were made the rehearsal; the wall profiles are readings with samples. Points in the jaw frame, mm. */
export function measureJson(all: readonly Measured[]): string {
  const out = all.map((measured) => {
    const { file, evaluation } = measured;
    return {
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
      crown: crownJson(measured),
      ...rehearsalJson(measured),
    };
  });
  return `${JSON.stringify(out, null, 2)}\n`;
}
