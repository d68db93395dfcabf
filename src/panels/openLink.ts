import { readExerciseHash } from '../io/link/exerciseLink.ts';
import { readPlanHash } from '../io/link/planLink.ts';
import { sitDown } from '../state/sitting.ts';
import type { PlanStores } from '../state/stores.ts';
import type { PlainKey } from '../words/say.ts';
import { say } from '../words/sayExercise.ts';
import { faultLines } from './faultLines.ts';
import { refusal, success, type Told } from './told.ts';

const WHY = { long: 'link.long', newer: 'link.newer', broken: 'link.broken' } as const satisfies Record<
  string,
  PlainKey
>;

const linkRefused = (fault: string): string => say('link.refused', { fault });

/** Opens the plan of a link. */
export function openPlanLink({ document }: PlanStores, hash: string): Told {
  const read = readPlanHash(hash);
  if (!read.ok && read.why === 'plan') return refusal(faultLines(read.faults, linkRefused));
  if (!read.ok) return refusal([linkRefused(say(WHY[read.why]))]);
  document.open(say('link.edit'), read.plan);
  return success([say('link.opened')]);
}

/** Puts the exercise of a link on the table. */
export function openExerciseLink(stores: PlanStores, hash: string): Told {
  const read = readExerciseHash(hash);
  if (!read.ok && read.why === 'exercise') return refusal(faultLines(read.faults, linkRefused));
  if (!read.ok) return refusal([linkRefused(say(WHY[read.why]))]);
  const { title } = read.exercise;
  sitDown(stores, read.exercise, say('edit.exercise', { title }));
  return success([say('exercise.opened', { title })]);
}
