import type { Exercise } from '../core/teaching/exercise.ts';
import { MEASURE_IDS } from '../core/teaching/measures.ts';
import { PUBLISHED_SPREADS } from '../core/teaching/published.ts';
import { csv } from '../io/csv.ts';
import type { MarkedClass, MarkedFile } from '../io/markFiles.ts';
import { presentFault } from '../words/presentFault.ts';
import {
  presentBroken,
  presentMark,
  presentOver,
  presentStatistics,
  publishedLines,
  sayCount,
  sayMeasure,
} from '../words/presentMark.ts';
import { say } from '../words/say.ts';
import { textTable } from './textTable.ts';

const why = ({ fault }: MarkedFile): string => {
  if (fault === null) return '';
  return fault === 'unreadable' ? say('class.unreadable') : presentFault(fault);
};

/** Columns of the table that a person reads; the CSV has all measures. */
const SHOWN = ['platform-lateral', 'platform-depth', 'apex-lateral', 'apex-depth', 'angle'] as const;

/** A class as tables a person can read. */
export function markTable(exercise: Exercise, { files, report }: MarkedClass): string {
  const rows = files.flatMap(({ file, mark }) => {
    if (!mark) return [];
    const shown = presentMark(mark, exercise);
    const broken = shown.broken.join('; ');
    return [[file, shown.label, ...SHOWN.map((id) => shown.measures[id]), shown.done, broken]];
  });
  const head = [
    say('class.columns.file'),
    say('class.columns.label'),
    ...SHOWN.map(sayMeasure),
    say('class.columns.done'),
    say('class.columns.broken'),
  ];
  const statistics = presentStatistics(report).map(({ label, mean, sd, range }) => [label, mean, sd, range]);
  const over = presentOver(report, exercise);
  const faults = files.filter(({ mark }) => mark === null);
  const named = (file: MarkedFile) => say('cli.named', { name: file.file, value: why(file) });
  const blocks = [
    [
      say('mark.exercise', { title: exercise.title, fingerprint: exercise.fingerprint.slice(0, 12) }),
      sayCount(report, files.length, exercise),
    ],
    textTable([head, ...rows]),
    textTable([
      [
        say('class.columns.measure'),
        say('class.columns.mean'),
        say('class.columns.sd'),
        say('class.columns.range'),
      ],
      ...statistics,
    ]),
    [say('measure.definition'), say('class.noScore')],
    over.length > 0 ? [say('class.overHeading'), ...over] : [],
    [say('class.brokenHeading'), ...presentBroken(report)],
    [say('published.heading'), ...publishedLines(), say('published.mouse')],
    faults.length > 0 ? [say('class.faults'), ...faults.map(named)] : [],
    [say('cli.caution')],
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

/** The core's own numbers, and in `shown` and `says` what the page shows. */
export function markJson(exercise: Exercise, { files, report }: MarkedClass): string {
  const out = {
    exercise: { title: exercise.title, fingerprint: exercise.fingerprint, done: exercise.done },
    files: files.map((one) => {
      const { file, mark } = one;
      if (!mark) return { file, fault: one.fault, says: why(one) };
      const { deviation: _, ...rest } = mark;
      return { file, ...rest, shown: presentMark(mark, exercise).measures };
    }),
    report,
    published: PUBLISHED_SPREADS,
  };
  return `${JSON.stringify(out, null, 2)}\n`;
}

/** A row for every file; a minus is the keyboard's, so that other programs read a number. */
export function markCsv(exercise: Exercise, { files }: MarkedClass): string {
  const plain = (text: string) => text.replace('\u2212', '-').replace('\u2013', '');
  const head = ['file', 'label', ...MEASURE_IDS, 'done', 'over', 'broken', 'fault'];
  const rows = files.map((one) => {
    const { file, mark } = one;
    if (!mark) return [file, '', ...MEASURE_IDS.map(() => ''), '', '', '', why(one)];
    const shown = presentMark(mark, exercise);
    const numbers = MEASURE_IDS.map((id) => plain(shown.measures[id]));
    return [file, mark.label, ...numbers, String(mark.done), mark.over.join(' '), mark.broken.join(' '), ''];
  });
  return csv([head, ...rows]);
}
