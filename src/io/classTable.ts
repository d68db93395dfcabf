import type { Exercise } from '../core/teaching/exercise.ts';
import { MEASURE_IDS } from '../core/teaching/measures.ts';
import { presentFault } from '../words/presentFault.ts';
import { presentMark } from '../words/presentMark.ts';
import { say } from '../words/sayTeach.ts';
import { csv } from './csv.ts';
import type { MarkedClass, MarkedFile } from './markFiles.ts';

/** Why a file could not be marked; '' where it was. */
export function whyUnmarked({ fault }: MarkedFile): string {
  if (fault === null) return '';
  return fault === 'unreadable' ? say('class.unreadable') : presentFault(fault);
}

/** A row for every file; a minus is the keyboard's, so that other programs read a number. */
export function classCsv(exercise: Exercise, { files }: Pick<MarkedClass, 'files'>): string {
  const plain = (text: string) => text.replace('\u2212', '-').replace('\u2013', '');
  const head = ['file', 'label', ...MEASURE_IDS, 'done', 'over', 'broken', 'fault'];
  const rows = files.map((one) => {
    const { file, mark } = one;
    if (!mark) return [file, '', ...MEASURE_IDS.map(() => ''), '', '', '', whyUnmarked(one)];
    const shown = presentMark(mark, exercise);
    const numbers = MEASURE_IDS.map((id) => plain(shown.measures[id]));
    return [file, mark.label, ...numbers, String(mark.done), mark.over.join(' '), mark.broken.join(' '), ''];
  });
  return csv([head, ...rows]);
}
