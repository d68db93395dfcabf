import * as z from 'zod/mini';
import { rehearsalSchema } from '../core/plan/rehearsalSchema.ts';
import { planSchema, poseSchema } from '../core/plan/schema.ts';
import { DONE, EXERCISE_FORMAT, EXERCISE_VERSION, TASKS } from '../core/teaching/exercise.ts';
import { ATTEMPT_FORMAT, ATTEMPT_VERSION } from '../core/teaching/mark.ts';
import { MEASURE_IDS } from '../core/teaching/measures.ts';

const text = (most: number) => z.string().check(z.maxLength(most));
/** 64 hexadecimal digits; what is none equals none. */
const sha = text(64);

/** Largest tolerance that means anything, mm and degrees. */
const tolerance = z.number().check(z.minimum(0), z.maximum(45));

const exercise = {
  format: z.literal(EXERCISE_FORMAT),
  version: z.literal(EXERCISE_VERSION),
  title: text(120),
  words: text(2000),
  task: z.enum(TASKS),
  hidden: z.strictObject({
    readings: z.boolean(),
    section: z.boolean(),
    profile: z.boolean(),
    target: z.boolean(),
  }),
  done: z.enum(DONE),
  tolerances: z.partialRecord(z.enum(MEASURE_IDS), tolerance),
  commitment: sha,
  answer: z.optional(
    z.strictObject({ pose: poseSchema, salt: z.string().check(z.minLength(16), z.maxLength(128)) }),
  ),
};

/** An exercise file but for its plan, which is read as a plan file is, so that an older one is carried over. */
export const exerciseSchema = z.strictObject({ ...exercise, plan: z.unknown() });

export const attemptSchema = z.strictObject({
  format: z.literal(ATTEMPT_FORMAT),
  version: z.literal(ATTEMPT_VERSION),
  exercise: sha,
  label: text(40),
  pose: poseSchema,
  rehearsal: z.nullable(rehearsalSchema),
});

type JsonSchema = Readonly<Record<string, unknown>>;
let published: { exercise: JsonSchema; attempt: JsonSchema } | null = null;

/** The schemas of exercise and attempt files in their published form; made once. */
export function teachingSchemas() {
  published ??= {
    exercise: {
      title: 'Ridgewright exercise, version 1',
      ...z.toJSONSchema(z.strictObject({ ...exercise, plan: planSchema })),
    },
    attempt: { title: 'Ridgewright attempt, version 1', ...z.toJSONSchema(attemptSchema) },
  };
  return published;
}
