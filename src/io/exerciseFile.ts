import type { Fault } from '../core/plan/fault.ts';
import { fault } from '../core/plan/fault.ts';
import { notOfFormat } from '../core/plan/fileFaults.ts';
import { readPlan } from '../core/plan/read.ts';
import { schemaFaults } from '../core/plan/schemaFaults.ts';
import {
  commitmentOf,
  EXERCISE_FORMAT,
  EXERCISE_VERSION,
  type Exercise,
  type ExerciseDraft,
  type ExerciseFile,
  exerciseFile,
  fingerprintOf,
  forStudents,
} from '../core/teaching/exercise.ts';
import { exerciseSchema, teachingSchemas } from './exerciseSchema.ts';
import { type Parsed, parseJson, printJson, refused } from './json.ts';

const inPlan = (found: Fault): Fault => ({
  ...found,
  field: found.field === '' ? 'plan' : `plan.${found.field}`,
});

/** From an exercise file's text, a teacher's or a student's, to the exercise, or to its faults. Never throws on bad input. */
export function parseExerciseFile(text: string): Parsed<Exercise> {
  const json = parseJson(text);
  if (!json.ok) return json;
  const wrong = notOfFormat(json.value, EXERCISE_FORMAT, EXERCISE_VERSION);
  if (wrong) return refused(wrong);
  // The schema library passes over this one key of a record without a word.
  const { tolerances } = json.value as { tolerances?: unknown };
  if (typeof tolerances === 'object' && tolerances !== null && Object.hasOwn(tolerances, '__proto__'))
    return refused(fault('unknown-field', 'tolerances.__proto__'));
  const parsed = exerciseSchema.safeParse(json.value);
  if (!parsed.success)
    return refused(...schemaFaults(parsed.error.issues, json.value, teachingSchemas().exercise));
  const { answer, commitment, plan: start, format: _, version: __, ...rest } = parsed.data;
  const read = readPlan(start);
  if (!read.ok) return refused(...read.faults.map(inPlan));
  if (answer && commitmentOf(answer) !== commitment) return refused(fault('answer-changed', 'answer'));
  return {
    ok: true,
    value: {
      ...rest,
      plan: read.plan,
      fingerprint: fingerprintOf(json.value as object),
      answer: answer?.pose ?? null,
    },
  };
}

/** 32 hexadecimal digits by chance, from the platform's own source. */
export const newSalt = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** The two files of an exercise: the teacher's, with the answer, and the one that is given out, without it. Give out the second only. */
export function printExerciseFiles(
  draft: ExerciseDraft,
  salt = newSalt(),
): { teacher: string; student: string } {
  const file: ExerciseFile = exerciseFile(draft, salt);
  return { teacher: printJson(file), student: printJson(forStudents(file)) };
}
