import type { Rehearsal } from '../drilling/rehearsal.ts';
import type { Pose } from '../geometry/pose.ts';
import { totalLength } from '../implant/shape.ts';
import { SITE_FACT } from '../measure/margin.ts';
import type { ReadingId } from '../measure/reading.ts';
import { drillingOf } from '../plan/drilling.ts';
import { passesShown, rehearsalOf } from '../plan/inHand.ts';
import type { Plan } from '../plan/plan.ts';
import { planInSeat, seatNow } from '../plan/seat.ts';
import { type Deviation, deviation, lateralInShoulderPlane } from '../spread/deviation.ts';
import { evaluated } from './evaluated.ts';
import type { Done, Exercise } from './exercise.ts';
import { holePose } from './inHole.ts';
import { MEASURE_IDS, type MeasureId, type Measures, measuresOf } from './measures.ts';

export const ATTEMPT_FORMAT = 'ridgewright-attempt';
export const ATTEMPT_VERSION = 1;

/** A student's attempt. `label`: what the student typed, no more is known of anyone. */
export interface Attempt {
  readonly label: string;
  readonly pose: Pose;
  readonly rehearsal: Rehearsal | null;
}

/** An attempt beside the teacher's plan. Measures and limits, side by side: no score (rule L9). */
export interface Mark {
  readonly label: string;
  /** Where the implant stands in the end. */
  readonly pose: Pose;
  readonly deviation: Deviation;
  readonly measures: Measures;
  /** Lateral at the platform by its second definition: where the placed axis meets the planned shoulder plane, mm. */
  readonly inShoulderPlane: number;
  /** Measures beyond the teacher's tolerance. */
  readonly over: readonly MeasureId[];
  /** Readings that are beyond in the attempt and not in the teacher's plan. */
  readonly broken: readonly ReadingId[];
  readonly done: boolean;
}

/** The plan that an attempt has made of an exercise. */
export const attempted = (exercise: Exercise, { pose, rehearsal }: Attempt): Plan => ({
  ...exercise.plan,
  pose,
  rehearsal,
});

/** An exercise to be marked: with its answer. */
export type Answered = Exercise & { readonly answer: Pose };

/**
 * Where the implant stands in the end: where its seating has brought it; else in the hole, on the last drill's axis with its apex the spare depth above the bottom; else where
 * it was put.
 */
export function placedPose(exercise: Exercise, attempt: Attempt): Pose {
  if (exercise.task === 'place') return attempt.pose;
  // The hole is held against the start's own plan; only its passes count.
  const plan = attempted(exercise, attempt);
  if (rehearsalOf(plan).seating.length > 0 && seatNow(plan)) return planInSeat(plan).pose;
  return holePose(plan) ?? attempt.pose;
}

const beyond = (plan: Plan): Set<ReadingId> =>
  new Set(
    evaluated(plan).readings.flatMap(({ id, status }) =>
      status === 'beyond' && !SITE_FACT.test(id) ? [id] : [],
    ),
  );

function isDone(done: Done, exercise: Exercise, attempt: Attempt, broken: ReadonlySet<ReadingId>): boolean {
  const plan = attempted(exercise, attempt);
  switch (done) {
    case 'handed-in':
      return true;
    case 'nothing-beyond':
      return broken.size === 0;
    case 'drilled': {
      const drilling = drillingOf(plan);
      const last = drilling?.plan.last;
      if (!drilling || !last) return false;
      return passesShown(plan).some(
        ({ tool, depth }) =>
          tool.kind === 'drill' && tool.index >= last.index && depth >= drilling.chain.apex - 1e-9,
      );
    }
    case 'seated':
      return seatNow(plan)?.state.phase === 'seated';
  }
}

/** An attempt marked. Cost: one evaluation, 5 to 40 ms. */
export function markAttempt(exercise: Answered, attempt: Attempt): Mark {
  const { plan, answer, tolerances } = exercise;
  const pose = placedPose(exercise, attempt);
  const found = deviation(answer, pose, totalLength(plan.implant), plan.implant.index);
  const measures = measuresOf(found);
  const model = beyond(answeredPlan(exercise));
  const own = beyond({ ...plan, pose });
  const over = MEASURE_IDS.filter((id) => {
    const most = tolerances[id];
    const value = measures[id];
    return most !== undefined && value !== null && Math.abs(value) > most + 1e-9;
  });
  return {
    label: attempt.label,
    pose,
    deviation: found,
    measures,
    inShoulderPlane: lateralInShoulderPlane(answer, pose),
    over,
    broken: [...own].filter((id) => !model.has(id)),
    done: isDone(exercise.done, exercise, attempt, own),
  };
}

const answers = new WeakMap<Exercise, Plan>();

/** The teacher's plan: the exercise's, with its answer. The same object for the same exercise. */
export function answeredPlan(exercise: Answered): Plan {
  const known = answers.get(exercise);
  if (known) return known;
  const made = { ...exercise.plan, pose: exercise.answer };
  answers.set(exercise, made);
  return made;
}
