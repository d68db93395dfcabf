import type { Answered } from '../core/teaching/mark.ts';
import type { MarkedFile } from '../io/markFiles.ts';

/** A class on the table: the exercise with its answer, and the attempts marked so far. */
export interface Classroom {
  readonly exercise: Answered | null;
  readonly files: readonly MarkedFile[];
  /** Files that are still to be marked. */
  readonly waiting: number;
}

export const NO_CLASS: Classroom = { exercise: null, files: [], waiting: 0 };
