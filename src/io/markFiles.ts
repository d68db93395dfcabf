import type { Fault } from '../core/plan/fault.ts';
import { type ClassReport, classReport } from '../core/teaching/classReport.ts';
import { type Answered, type Mark, markAttempt } from '../core/teaching/mark.ts';
import { parseAttemptFile } from './attemptFile.ts';

/** A file of a class: its mark, or why it could not be marked; it stops nothing. */
export type MarkedFile =
  | { readonly file: string; readonly mark: Mark; readonly fault: null }
  | { readonly file: string; readonly mark: null; readonly fault: Fault | 'unreadable' };

export interface MarkedClass {
  readonly files: readonly MarkedFile[];
  readonly report: ClassReport;
}

/** One file's text; null: it could not be read. */
export function markFile(exercise: Answered, file: string, text: string | null): MarkedFile {
  if (text === null) return { file, mark: null, fault: 'unreadable' };
  const read = parseAttemptFile(text, exercise);
  return read.ok
    ? { file, mark: markAttempt(exercise, read.value), fault: null }
    : { file, mark: null, fault: read.faults[0] };
}

/** A class of files. A page may call {@link markFile} a few at a time and then {@link gathered}. */
export function gathered(files: readonly MarkedFile[]): MarkedClass {
  const marks = files.flatMap(({ mark }) => mark ?? []);
  return { files, report: classReport(marks) };
}
