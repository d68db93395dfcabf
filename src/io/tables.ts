import type { PassRow } from '../core/drilling/rehearsalSummary.ts';
import { totalLength } from '../core/implant/shape.ts';
import type { Reading } from '../core/measure/reading.ts';
import type { DrillReport } from '../core/plan/drillReport.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { shortFingerprint } from '../core/plan/fingerprint.ts';
import type { Plan } from '../core/plan/plan.ts';
import { deviation } from '../core/spread/deviation.ts';
import { formatNumber, unitSymbol } from '../words/format.ts';
import { presentDeviation } from '../words/presentDeviation.ts';
import { type FaultSetting, presentPass, presentPassFaults, settingOf } from '../words/presentPasses.ts';
import { presentReading } from '../words/presentReading.ts';
import { say } from '../words/sayFile.ts';
import { csv } from './csv.ts';
import { PROGRAM_VERSION } from './version.ts';

/** Columns of the three tables, as a CSV file's heading and as the keys of a JSON row. */
const READING = ['id', 'reading', 'value', 'unit', 'level', 'limit', 'strength', 'status', 'source'] as const;
const REHEARSAL = ['pass', 'tool', ...READING] as const;
const COMPARISON = [
  'id',
  'reading',
  'first',
  'second',
  'apart',
  'unit',
  'limit',
  'firstStatus',
  'secondStatus',
  'source',
] as const;

type Row<C extends string> = Readonly<Record<C, string>>;

/** A table of texts as the page shows them; only a minus is the keyboard's, so that other programs read a number. */
export interface Table<C extends string = string> {
  readonly kind: 'readings' | 'rehearsal' | 'comparison';
  /** What it is of: one plan, or two compared. */
  readonly plans: readonly { readonly title: string; readonly fingerprint: string }[];
  readonly columns: readonly C[];
  readonly rows: readonly Row<C>[];
}

const MINUS = /\u2212/g;
const NO_ANSWER = '\u2013';

/** A shown number as another program reads it; no answer is an empty cell. */
const machine = (shown: string): string => (shown === NO_ANSWER ? '' : shown.replace(MINUS, '-'));

const planned = (plan: Plan) => ({ title: plan.title, fingerprint: shortFingerprint(plan) });

function readingRow(reading: Reading): Row<(typeof READING)[number]> {
  const shown = presentReading(reading);
  return {
    id: reading.id,
    reading: shown.label,
    value: machine(shown.number),
    unit: shown.number === shown.quantity ? '' : shown.unit,
    level:
      reading.level === null || shown.level === ''
        ? ''
        : machine(formatNumber({ value: reading.level, unit: 'mm' })),
    limit: shown.limit,
    strength: shown.strength,
    status: shown.status,
    source: shown.source,
  };
}

/** Every reading of a plan, in the order of the model. */
export const readingsTable = ({ plan, readings }: Evaluation): Table<(typeof READING)[number]> => ({
  kind: 'readings',
  plans: [planned(plan)],
  columns: READING,
  rows: readings.map(readingRow),
});

const BARE = { level: '', limit: '', strength: '', status: '', source: '' } as const;

/** What stands for a pass beside the plan, number by number. */
function passNumbers(row: PassRow): Row<(typeof READING)[number]>[] {
  const number = (id: PassNumber, value: number | null, unit: 'mm' | 'deg' | 'mm3') =>
    value === null
      ? []
      : [
          {
            ...BARE,
            id: `pass-${id}`,
            reading: say(`table.pass.${id}`),
            value: machine(formatNumber({ value, unit })),
            unit: unitSymbol(unit),
          },
        ];
  return [
    ...number('depth', row.depth, 'mm'),
    ...number('depth-off', row.depthOff, 'mm'),
    ...number('crest-faciopalatal', row.crest.faciopalatal, 'mm'),
    ...number('crest-mesiodistal', row.crest.mesiodistal, 'mm'),
    ...number('apex-faciopalatal', row.apex.faciopalatal, 'mm'),
    ...number('apex-mesiodistal', row.apex.mesiodistal, 'mm'),
    ...number('angle', row.angle, 'deg'),
    ...number('volume', row.volume, 'mm3'),
  ];
}

type PassNumber =
  | 'depth'
  | 'depth-off'
  | `${'crest' | 'apex'}-${'faciopalatal' | 'mesiodistal'}`
  | 'angle'
  | 'volume';

/** What a pass is told to have gone wrong with, in words; a fault has no number of its own. */
const passFaultRows = (row: PassRow, setting: FaultSetting): Row<(typeof READING)[number]>[] =>
  presentPassFaults(row, setting).map(({ key, text, mended, note, mark }) => ({
    ...BARE,
    id: `fault-${key}`,
    reading: [text, mended].filter((part) => part !== '').join(' '),
    value: '',
    unit: '',
    status: mark === 'none' ? '' : say(`status.${mark}`),
    source: note,
  }));

/** The rehearsal: of every pass its numbers beside the plan, its faults and its readings; last the worst readings of the whole hole. */
export function rehearsalTable(plan: Plan, report: DrillReport): Table<(typeof REHEARSAL)[number]> {
  const setting = settingOf(plan);
  const passes = (report.summary?.rows ?? []).flatMap((row) => {
    const { tool } = presentPass(row, setting);
    const pass = formatNumber({ value: row.index + 1, unit: 'count' });
    const rows = [
      ...passNumbers(row),
      ...passFaultRows(row, setting),
      ...report.passes[row.index].map(readingRow),
    ];
    return rows.map((one) => ({ pass, tool, ...one }));
  });
  const hole = report.hole.map((reading) => ({
    pass: say('table.hole'),
    tool: '',
    ...readingRow(reading),
  }));
  return { kind: 'rehearsal', plans: [planned(plan)], columns: REHEARSAL, rows: [...passes, ...hole] };
}

/** Two plans beside one another: first how far their implants stand apart, then every reading of both. The limit is the second's. */
export function comparisonTable(first: Evaluation, second: Evaluation): Table<(typeof COMPARISON)[number]> {
  const { pose, implant } = second.plan;
  const apart = presentDeviation(deviation(first.plan.pose, pose, totalLength(implant), implant.index)).map(
    ({ key, label, number, unit }) => ({
      id: `apart-${key}`,
      reading: say('table.apartBy', { what: label }),
      first: '',
      second: '',
      apart: machine(number),
      unit,
      limit: '',
      firstStatus: '',
      secondStatus: '',
      source: '',
    }),
  );
  const readings = second.readings.map((reading) => {
    const [a, b] = [readingRow(readingOf(first.readings, reading.id)), readingRow(reading)];
    return {
      id: b.id,
      reading: b.reading,
      first: a.value,
      second: b.value,
      apart: '',
      unit: b.unit === '' ? a.unit : b.unit,
      limit: b.limit,
      firstStatus: a.status,
      secondStatus: b.status,
      source: b.source,
    };
  });
  return {
    kind: 'comparison',
    plans: [planned(first.plan), planned(second.plan)],
    columns: COMPARISON,
    rows: [...apart, ...readings],
  };
}

/** A table as comma-separated values, its heading in words. */
export const tableCsv = <C extends string>({ columns, rows }: Table<C>): string =>
  csv([
    columns.map((column) => say(`table.${column}` as 'table.id')),
    ...rows.map((row) => columns.map((column) => row[column])),
  ]);

/** A table as JSON: what it is, of which plans, by which version of the program, and its rows as objects of texts. */
export const tableJson = <C extends string>({ kind, plans, rows }: Table<C>): string =>
  `${JSON.stringify({ kind, program: say('app.name'), version: PROGRAM_VERSION, plans, rows }, null, 2)}\n`;
