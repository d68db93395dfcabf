import { parseExerciseFile } from '../io/exerciseFile.ts';
import { parsePlanFile } from '../io/planFile.ts';
import { sitDown } from '../state/sitting.ts';
import type { PlanStores } from '../state/stores.ts';
import { planTitle } from '../words/planTitle.ts';
import { say } from '../words/sayExercise.ts';
import { faultLines } from './faultLines.ts';
import { refusal, success, type Told } from './told.ts';

/** The text of an exercise file says so near its beginning. */
const isExercise = (text: string): boolean => /"format":\s*"ridgewright-exercise"/.test(text);

type Refused = (fault: string) => string;

function openExercise(stores: PlanStores, text: string, refused: Refused): Told {
  const read = parseExerciseFile(text);
  if (!read.ok) return refusal(faultLines(read.faults, refused));
  const { title } = read.value;
  sitDown(stores, read.value, say('edit.exercise', { title }));
  return success([say('exercise.opened', { title })]);
}

/** Puts the plan or the exercise of a file's text on the table. */
export function openText(stores: PlanStores, text: string, refused: Refused): Told {
  if (isExercise(text)) return openExercise(stores, text, refused);
  const read = parsePlanFile(text);
  if (!read.ok) return refusal(faultLines(read.faults, refused));
  const title = planTitle(read.plan);
  stores.document.open(say('edit.open', { title }), read.plan);
  return success(read.migrated.length > 0 ? [say('plans.opened', { title }), say('plans.migrated')] : []);
}
