import type { Plan } from '../core/plan/plan.ts';
import type { Exercise, ExerciseDraft, Hidden } from '../core/teaching/exercise.ts';
import type { Attempt } from '../core/teaching/mark.ts';
import type { Place } from './session.ts';
import type { PlanStores } from './stores.ts';

/** An exercise that a student has opened. */
export interface Sitting {
  readonly exercise: Exercise;
  /** What was on the table before, to go back to. */
  readonly before: Plan;
  /** What the student typed; no more is known of anyone. */
  readonly label: string;
}

/** What a teacher sets, without the plan. */
export type Setting = Omit<ExerciseDraft, 'plan'>;

/** What a new exercise begins with; its tolerances are assumed, and the teacher's to change. */
export const FIRST_SETTING: Setting = {
  title: '',
  words: '',
  task: 'place',
  start: 'blank',
  hidden: { readings: true, section: false, profile: true, target: false },
  done: 'handed-in',
  tolerances: { 'platform-lateral': 1, 'apex-lateral': 1.5, angle: 5 },
};

export const NOTHING_HIDDEN: Hidden = { readings: false, section: false, profile: false, target: false };

/** Puts an exercise on the table, as one undo step called `step`. */
export function sitDown({ document, session, live }: PlanStores, exercise: Exercise, step: string): void {
  const before = document.getState().plan;
  document.open(step, exercise.plan);
  live.set({ sitting: { exercise, before, label: live.getState().sitting?.label ?? '' } });
  session.set({ place: exercise.task, kept: null });
}

/** Whether it is that exercise's plan that stands on the table: edits of its pose and passes keep site and implant, another plan does not. */
const isAt = (sitting: Sitting, plan: Plan): boolean =>
  plan.site === sitting.exercise.plan.site && plan.implant === sitting.exercise.plan.implant;

/** The exercise that is being done, or null: none was opened, or undo or another file has taken its plan off the table. */
export function sittingAt({ document, live }: Pick<PlanStores, 'document' | 'live'>): Sitting | null {
  const { sitting } = live.getState();
  return sitting && isAt(sitting, document.getState().plan) ? sitting : null;
}

/** Gives the exercise up, as one undo step: what was on the table before comes back. */
export function getUp({ document, live }: PlanStores, step: string): void {
  const sitting = sittingAt({ document, live });
  if (sitting) document.open(step, sitting.before);
  live.set({ sitting: null });
}

/** What is handed in. */
export function attemptOf({ exercise, label }: Sitting, { pose, rehearsal }: Plan): Attempt {
  return { label: label.trim(), pose, rehearsal: exercise.task === 'rehearse' ? rehearsal : null };
}

/** Where the student of an exercise may go: to its task; one that is drilled is seated too. */
export const placesOf = ({ task }: Exercise): readonly Place[] =>
  task === 'place' ? ['place'] : ['rehearse', 'seat'];
