import type { Fault } from '../../core/plan/fault.ts';
import type { Exercise } from '../../core/teaching/exercise.ts';
import { parseExerciseFile } from '../exerciseFile.ts';
import { EXERCISE_TAG } from './address.ts';
import { LONGEST_PACKED, pack, unpack } from './pack.ts';

export type ExerciseLinkResult =
  | { readonly ok: true; readonly exercise: Exercise }
  /** Too long to be looked at; of a newer program; or not what was packed (cut off, mistyped). */
  | { readonly ok: false; readonly why: 'long' | 'newer' | 'broken' }
  /** It was read, and holds no exercise that can be used. */
  | { readonly ok: false; readonly why: 'exercise'; readonly faults: readonly Fault[] };

/** What stands after `#` in a link to the students' exercise: all of its file, the teacher's words too, and of the teacher's file never the answer. Null where it would be longer than what is read. */
export function exerciseHash(file: string): string | null {
  const { answer: _, ...student } = JSON.parse(file) as Record<string, unknown>;
  const packed = pack(JSON.stringify(student));
  return packed.length > LONGEST_PACKED ? null : `${EXERCISE_TAG}${packed}`;
}

/** The exercise of what stands after `#` in an address. Never throws on bad input. */
export function readExerciseHash(hash: string): ExerciseLinkResult {
  if (!hash.startsWith(EXERCISE_TAG)) return { ok: false, why: 'newer' };
  const packed = hash.slice(EXERCISE_TAG.length);
  if (packed.length > LONGEST_PACKED) return { ok: false, why: 'long' };
  const text = unpack(packed);
  if (text === null) return { ok: false, why: 'broken' };
  const read = parseExerciseFile(text);
  return read.ok ? { ok: true, exercise: read.value } : { ok: false, why: 'exercise', faults: read.faults };
}
