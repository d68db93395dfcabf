import { totalLength } from '../../core/implant/shape.ts';
import type { Reading } from '../../core/measure/reading.ts';
import { type Evaluation, evaluate, readingOf } from '../../core/plan/evaluate.ts';
import { deviation } from '../../core/spread/deviation.ts';
import { comparisonTable, type Table, tableCsv, tableJson } from '../../io/tables.ts';
import { presentDeviation } from '../../words/presentDeviation.ts';
import { presentReading } from '../../words/presentReading.ts';
import { say } from '../../words/sayAll.ts';
import { fileNames, give, planIn } from '../files.ts';
import { type Command, DONE, taken, talk, UnusableFile, UsageError } from '../program.ts';
import { textTable } from '../textTable.ts';

const OPTIONS = {
  json: { type: 'boolean' },
  csv: { type: 'boolean' },
  out: { type: 'string' },
} as const;

/** A plan that was measured, and the file it came in. */
interface Measured {
  readonly file: string;
  readonly evaluation: Evaluation;
}

/** How far apart the implants stand, then every reading of both, as a person reads it. */
function comparisonText(first: Measured, second: Measured): string {
  const { plan, readings } = second.evaluation;
  const apart = deviation(
    first.evaluation.plan.pose,
    plan.pose,
    totalLength(plan.implant),
    plan.implant.index,
  );
  const judged = (reading: Reading): string => {
    const { quantity, status } = presentReading(reading);
    return say('cli.judged', { value: quantity, status });
  };
  const head = [say('cli.columns.reading'), first.file, second.file, say('cli.columns.limit')];
  const rows = readings.map((reading) => {
    const { label, limit } = presentReading(reading);
    return [label, judged(readingOf(first.evaluation.readings, reading.id)), judged(reading), limit];
  });
  return [
    ...[first, second].map(({ file, evaluation }) =>
      say('cli.planInFile', { title: evaluation.plan.title, file }),
    ),
    '',
    ...textTable(
      presentDeviation(apart).map(({ label, value }) => [say('table.apartBy', { what: label }), value]),
    ),
    '',
    ...textTable([head, ...rows]),
    '',
    say('cli.caution'),
    '',
  ].join('\n');
}

function printed(first: Measured, second: Measured, how: { json?: boolean; csv?: boolean }): string {
  if (how.json && how.csv) throw new UsageError(say('cli.jsonOrCsv'));
  if (!how.json && !how.csv) return comparisonText(first, second);
  const table: Table = comparisonTable(first.evaluation, second.evaluation);
  return how.json ? tableJson(table) : tableCsv(table);
}

/** Two plans of one site: the second beside the first. */
export const compare: Command = {
  name: 'compare',
  usage: (call) => say('cli.usage.compare', { call }),
  run: (args) => {
    const { values, positionals } = taken(args, OPTIONS);
    const [first, second] = fileNames(positionals, 2).map(planIn);
    const files = { first: first.file, second: second.file };
    if (first.plan.site.tooth !== second.plan.site.tooth)
      throw new UnusableFile(say('cli.otherTooth', files));
    if (JSON.stringify(first.plan.site) !== JSON.stringify(second.plan.site))
      talk(say('cli.otherSite', files));
    if (JSON.stringify(first.plan.implant) !== JSON.stringify(second.plan.implant))
      talk(say('cli.otherImplant', files));
    const [a, b] = [first, second].map(({ file, plan }) => ({ file, evaluation: evaluate(plan) }));
    give(printed(a, b, values), values.out);
    return DONE;
  },
};
