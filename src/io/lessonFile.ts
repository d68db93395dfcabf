import * as z from 'zod/mini';
import { READING_IDS } from '../core/measure/reading.ts';
import { type Fault, fault } from '../core/plan/fault.ts';
import { notOfFormat } from '../core/plan/fileFaults.ts';
import { readPlan } from '../core/plan/read.ts';
import { planSchema } from '../core/plan/schema.ts';
import { schemaFaults } from '../core/plan/schemaFaults.ts';
import {
  LESSON_BONES,
  LESSON_FORMAT,
  LESSON_VERSION,
  LESSON_VIEWS,
  type Lesson,
} from '../core/teaching/lesson.ts';
import { TRAJECTORY_IDS } from '../core/teaching/trajectories.ts';
import { type Parsed, parseJson, printJson, refused } from './json.ts';

const text = (most: number) => z.string().check(z.maxLength(most));
const whole = (low: number, high: number) => z.int().check(z.minimum(low), z.maximum(high));
const MOST_PLANS = 6;

const step = z.strictObject({
  words: text(300),
  plan: whole(0, MOST_PLANS - 1),
  view: z.enum(LESSON_VIEWS),
  bone: z.enum(LESSON_BONES),
  gum: z.boolean(),
  trajectory: z.nullable(z.strictObject({ id: z.enum(TRAJECTORY_IDS), percent: whole(0, 100) })),
  ask: z.boolean(),
  reading: z.nullable(z.enum(READING_IDS)),
});

const fields = {
  format: z.literal(LESSON_FORMAT),
  version: z.literal(LESSON_VERSION),
  title: text(120),
  words: text(2000),
  steps: z.array(step).check(z.minLength(1), z.maxLength(60)),
};
const few = [z.minLength(1), z.maxLength(MOST_PLANS)] as const;

/** A lesson file but for its plans, which are read as plan files are, so that older ones are carried over. */
const lessonSchema = z.strictObject({ ...fields, plans: z.array(z.unknown()).check(...few) });

let published: Readonly<Record<string, unknown>> | null = null;

/** The lesson file's schema in its published form; made once. */
export function lessonJsonSchema(): Readonly<Record<string, unknown>> {
  published ??= {
    title: 'Ridgewright lesson, version 1',
    ...z.toJSONSchema(z.strictObject({ ...fields, plans: z.array(planSchema).check(...few) })),
  };
  return published;
}

const inPlan = (found: Fault, i: number): Fault => ({
  ...found,
  field: found.field === '' ? `plans.${i}` : `plans.${i}.${found.field}`,
});

/** From a lesson file's text to a lesson, or to its faults. Never throws on bad input. */
export function parseLessonFile(file: string): Parsed<Lesson> {
  const json = parseJson(file);
  return json.ok ? readLesson(json.value) : json;
}

/** The same from a parsed value. */
export function readLesson(value: unknown): Parsed<Lesson> {
  const wrong = notOfFormat(value, LESSON_FORMAT, LESSON_VERSION);
  if (wrong) return refused(wrong);
  const parsed = lessonSchema.safeParse(value);
  if (!parsed.success) return refused(...schemaFaults(parsed.error.issues, value, lessonJsonSchema()));
  const { title, words, steps } = parsed.data;
  const read = parsed.data.plans.map(readPlan);
  const faults = read.flatMap((plan, i) => (plan.ok ? [] : plan.faults.map((found) => inPlan(found, i))));
  if (faults.length > 0) return refused(...faults);
  const plans = read.flatMap((plan) => (plan.ok ? [plan.plan] : []));
  const lost = steps.findIndex(({ plan }) => plan >= plans.length);
  if (lost >= 0)
    return refused(
      fault('out-of-range', `steps.${lost}.plan`, {
        value: steps[lost].plan,
        low: 0,
        high: plans.length - 1,
      }),
    );
  return { ok: true, value: { title, words, plans, steps } };
}

/** A lesson file's text; the inverse of {@link parseLessonFile}. */
export const printLessonFile = ({ title, words, plans, steps }: Lesson): string =>
  printJson({ format: LESSON_FORMAT, version: LESSON_VERSION, title, words, steps, plans });
