import { rehearsalFaults } from '../core/plan/check.ts';
import { fault } from '../core/plan/fault.ts';
import { notOfFormat } from '../core/plan/fileFaults.ts';
import { schemaFaults } from '../core/plan/schemaFaults.ts';
import type { Exercise } from '../core/teaching/exercise.ts';
import { ATTEMPT_FORMAT, ATTEMPT_VERSION, type Attempt } from '../core/teaching/mark.ts';
import { attemptSchema, teachingSchemas } from './exerciseSchema.ts';
import { type Parsed, parseJson, printJson, refused } from './json.ts';

/** Digits of a fingerprint that a message shows. */
const SHORT = 12;

/** From an attempt file's text to an attempt at this exercise, or to its faults; one at another exercise is refused. Never throws on bad input. */
export function parseAttemptFile(
  text: string,
  { fingerprint }: Pick<Exercise, 'fingerprint'>,
): Parsed<Attempt> {
  const json = parseJson(text);
  if (!json.ok) return json;
  const wrong = notOfFormat(json.value, ATTEMPT_FORMAT, ATTEMPT_VERSION);
  if (wrong) return refused(wrong);
  const parsed = attemptSchema.safeParse(json.value);
  if (!parsed.success)
    return refused(...schemaFaults(parsed.error.issues, json.value, teachingSchemas().attempt));
  const { exercise, label, pose, rehearsal } = parsed.data;
  if (exercise !== fingerprint) {
    const [value, allowed] = [exercise, fingerprint].map((digits) => digits.slice(0, SHORT));
    return refused(fault('other-exercise', 'exercise', { value, allowed }));
  }
  const contradicting = rehearsalFaults(rehearsal);
  return contradicting.length > 0
    ? refused(...contradicting)
    : { ok: true, value: { label, pose, rehearsal } };
}

/** An attempt file's text: it names the exercise by its fingerprint and holds no more of anyone than what was typed as its label. */
export const printAttemptFile = (
  { fingerprint }: Pick<Exercise, 'fingerprint'>,
  { label, pose, rehearsal }: Attempt,
): string =>
  printJson({
    format: ATTEMPT_FORMAT,
    version: ATTEMPT_VERSION,
    exercise: fingerprint,
    label,
    pose,
    rehearsal,
  });
