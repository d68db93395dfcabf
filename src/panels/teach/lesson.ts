import type { Plan } from '../../core/plan/plan.ts';
import type { Lesson, LessonStep } from '../../core/teaching/lesson.ts';
import type { TeachStores } from '../../state/teach.ts';
import { sightOf } from './trajectories.ts';

/** Most plans and steps of a lesson file. */
const MOST = { plans: 6, steps: 60 } as const;

/** Shows a step of a lesson: its plan, its view, what has gone wrong; where the class is asked first, the answer is covered. */
export function showStep({ session, live }: TeachStores, lesson: Lesson, index: number): void {
  const step = lesson.steps[index];
  if (!step) return;
  const { view, bone, gum, trajectory, ask, reading } = step;
  const { section, sectionLevel } = sightOf(trajectory?.id ?? 'too-facial');
  session.set({
    view,
    bone,
    section,
    ...(sectionLevel === undefined ? {} : { sectionLevel }),
    selectedReading: reading,
    layers: { ...session.getState().layers, gum },
  });
  live.set({
    lesson,
    lessonStep: index,
    ...(trajectory ? { trajectory: trajectory.id, amount: trajectory.percent / 100 } : { amount: 0 }),
    answerHidden: ask,
    viewAsked: live.getState().viewAsked + 1,
  });
}

/** One step on or back; a covered answer is uncovered first. */
export function stepLesson(stores: TeachStores, way: 1 | -1): void {
  const { lesson, lessonStep, answerHidden } = stores.live.getState();
  if (!lesson) return;
  if (way === 1 && answerHidden) stores.live.set({ answerHidden: false });
  else showStep(stores, lesson, lessonStep + way);
}

/** The place of a plan among a lesson's, which it joins where it is not one of them yet; null: the lesson has as many as it may. */
function joined(plans: readonly Plan[], plan: Plan): { plans: readonly Plan[]; index: number } | null {
  const found = plans.indexOf(plan);
  if (found >= 0) return { plans, index: found };
  return plans.length < MOST.plans ? { plans: [...plans, plan], index: plans.length } : null;
}

/** What the page shows, as a step of a lesson on a plan. */
function stepNow({ session, live }: TeachStores, plan: number, words: string): LessonStep {
  const { view, bone, layers, selectedReading } = session.getState();
  const { trajectory, amount, answerHidden } = live.getState();
  const percent = Math.round(100 * amount);
  return {
    words,
    plan,
    view,
    bone,
    gum: layers.gum,
    trajectory: percent > 0 ? { id: trajectory, percent } : null,
    ask: answerHidden,
    reading: selectedReading,
  };
}

/** Puts what the page shows into a lesson: after the step shown, or in its place. A lesson begins with it where none is open. False: the lesson is full. */
export function takeView(stores: TeachStores, title: string, where: 'after' | 'here'): boolean {
  const { lesson, lessonStep } = stores.live.getState();
  const { plan } = stores.planned.document.getState();
  const begun = lesson ?? { title, words: '', plans: [], steps: [] };
  const at = joined(begun.plans, plan);
  const here = where === 'here';
  if (!at || (!here && begun.steps.length >= MOST.steps)) return false;
  const step = stepNow(stores, at.index, here ? (begun.steps[lessonStep]?.words ?? '') : '');
  const index = !lesson ? 0 : here ? lessonStep : lessonStep + 1;
  const steps = [...begun.steps.slice(0, index), step, ...begun.steps.slice(here ? index + 1 : index)];
  stores.live.set({ lesson: { ...begun, plans: at.plans, steps }, lessonStep: index });
  return true;
}

/** Takes the step shown out; the last one closes the lesson. */
export function takeOut(stores: TeachStores): void {
  const { lesson, lessonStep } = stores.live.getState();
  if (!lesson) return;
  const steps = lesson.steps.filter((_, i) => i !== lessonStep);
  if (steps.length === 0) stores.live.set({ lesson: null, lessonStep: 0 });
  else showStep(stores, { ...lesson, steps }, Math.min(lessonStep, steps.length - 1));
}

/** Writes the words of the step shown. */
export const withWords = (lesson: Lesson, index: number, words: string): Lesson => ({
  ...lesson,
  steps: lesson.steps.map((step, i) => (i === index ? { ...step, words } : step)),
});
