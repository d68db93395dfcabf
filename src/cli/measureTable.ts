import { depthTurns } from '../core/plan/partTurns.ts';
import { formatQuantity } from '../words/format.ts';
import { presentCrown, presentDepthTurns } from '../words/presentCrown.ts';
import { drillingCautions } from '../words/presentDrilling.ts';
import { presentPass, presentVerdict, settingOf } from '../words/presentPasses.ts';
import { presentReading } from '../words/presentReading.ts';
import { say } from '../words/sayAll.ts';
import type { Measured } from './measureJson.ts';
import { textTable } from './textTable.ts';

type Row = readonly [string, string, string, string, string];

/** The passes beside the plan, a line each, what went wrong under it, and how it stands. */
function rehearsalLines({ evaluation: { plan }, report }: Measured): string[] {
  if (!report) return [];
  const { summary, removed } = report;
  if (!summary) return ['', say('rehearse.nothing')];
  const setting = settingOf(plan);
  const passes = summary.rows.flatMap((row) => {
    const { title, tool, rows, faults } = presentPass(row, setting);
    const numbers = rows.map(({ label, value }) => say('cli.named', { name: label, value })).join('; ');
    return [
      say('cli.named', { name: say('pass.named', { pass: title, tool }), value: numbers }),
      ...faults.map(
        ({ text, mended, note }) => `  ${[text, mended, note].filter((t) => t !== '').join(' ')}`,
      ),
    ];
  });
  const taken = formatQuantity({ value: removed, unit: 'mm3' });
  return [
    '',
    say('cli.named', { name: say('pass.printed'), value: presentVerdict(summary) }),
    ...passes,
    say('cli.removed', { taken }),
    drillingCautions().join(' '),
  ];
}

/** What the readings mean for the crown together. */
function crownLines({ evaluation }: Measured): string[] {
  const { plan, restoration } = evaluation;
  return [
    '',
    presentCrown(plan.crown.material, restoration.exit),
    ...depthTurns(evaluation).map((turns) => presentDepthTurns(turns)),
  ];
}

/** A table a person can read, one per file; the caution stands under the last. */
export function measureTable(all: readonly Measured[]): string {
  const tables = all.map((measured) => {
    const { file, evaluation } = measured;
    const rows: Row[] = evaluation.readings.map((reading) => {
      const r = presentReading(reading);
      const label = r.level ? say('finding.level', { reading: r.label, level: r.level }) : r.label;
      const why = reading.status === 'not-applicable' || r.mark === 'none' ? r.reason : r.source;
      const note = r.note === '' ? why : `${why}. ${r.note}`;
      const limit = r.limit
        ? say('limit.withStrength', { limit: r.limit, strength: r.strength })
        : say('limit.none');
      return [label, r.quantity, limit, r.status, note];
    });
    const head: Row = [
      say('cli.columns.reading'),
      say('cli.columns.value'),
      say('cli.columns.limit'),
      say('cli.columns.status'),
      say('cli.columns.note'),
    ];
    return [
      say('cli.planInFile', { title: evaluation.plan.title, file }),
      ...textTable([head, ...rows]),
      ...crownLines(measured),
      ...rehearsalLines(measured),
    ].join('\n');
  });
  return `${tables.join('\n\n')}\n\n${say('cli.caution')}\n`;
}
