import type { ReadingId } from '../measure/reading.ts';
import type { Plan } from '../plan/plan.ts';
import type { TrajectoryId } from './trajectories.ts';

export const LESSON_FORMAT = 'ridgewright-lesson';
export const LESSON_VERSION = 1;

/** From where the stage is looked at, and how the bone stands there. */
export const LESSON_VIEWS = ['mesial', 'distal', 'facial', 'palatal', 'incisal', 'axis'] as const;
export const LESSON_BONES = ['cut', 'whole', 'translucent'] as const;

/** One step of a lesson: what is shown, and what the teacher says beside it (rule L13). */
export interface LessonStep {
  readonly words: string;
  /** Which of the lesson's plans. */
  readonly plan: number;
  readonly view: (typeof LESSON_VIEWS)[number];
  readonly bone: (typeof LESSON_BONES)[number];
  readonly gum: boolean;
  /** What has gone wrong, in whole per cent of its full size; null: the plan as it is meant. */
  readonly trajectory: { readonly id: TrajectoryId; readonly percent: number } | null;
  /** The class is asked first: what it costs stays covered until the teacher uncovers it. */
  readonly ask: boolean;
  /** The reading that is picked out. */
  readonly reading: ReadingId | null;
}

/** An ordered list of views and trajectories, on one or a few plans. */
export interface Lesson {
  readonly title: string;
  readonly words: string;
  readonly plans: readonly Plan[];
  readonly steps: readonly LessonStep[];
}
