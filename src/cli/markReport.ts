import type { Exercise } from '../core/teaching/exercise.ts';
import { PUBLISHED_SPREADS } from '../core/teaching/published.ts';
import { whyUnmarked } from '../io/classTable.ts';
import type { MarkedClass, MarkedFile } from '../io/markFiles.ts';
import {
  presentBroken,
  presentMark,
  presentOver,
  presentStatistics,
  publishedLines,
  sayCount,
  sayMeasure,
} from '../words/presentMark.ts';
import { say } from '../words/sayAll.ts';
import { textTable } from './textTable.ts';

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
  const named = (file: MarkedFile) => say('cli.named', { name: file.file, value: whyUnmarked(file) });
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
      if (!mark) return { file, fault: one.fault, says: whyUnmarked(one) };
      const { deviation: _, ...rest } = mark;
      return { file, ...rest, shown: presentMark(mark, exercise).measures };
    }),
    report,
    published: PUBLISHED_SPREADS,
  };
  return `${JSON.stringify(out, null, 2)}\n`;
}
