import type { Plan } from '../../src/core/plan/plan.ts';
import { POSE_RANGE } from '../../src/core/plan/ranges.ts';
import type { ExerciseDraft } from '../../src/core/teaching/exercise.ts';
import type { Attempt } from '../../src/core/teaching/mark.ts';
import { printAttemptFile } from '../../src/io/attemptFile.ts';
import { parseExerciseFile, printExerciseFiles } from '../../src/io/exerciseFile.ts';

/** A small generator with a seed (Park and Miller 1988). */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Normal numbers of mean 0 and SD 1 (Box and Muller 1958). */
export function normal(random: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}

export const draftOf = (plan: Plan, rest: Partial<ExerciseDraft> = {}): ExerciseDraft => ({
  title: 'Place it',
  words: 'Place the implant so that nothing is beyond.',
  task: 'place',
  hidden: { readings: true, section: false, profile: true, target: false },
  done: 'nothing-beyond',
  tolerances: { 'platform-lateral': 1, 'apex-lateral': 1.5, angle: 5 },
  plan,
  start: 'blank',
  ...rest,
});

export const SALT = '0123456789abcdef0123456789abcdef';

export function filesOf(plan: Plan, rest: Partial<ExerciseDraft> = {}) {
  const files = printExerciseFiles(draftOf(plan, rest), SALT);
  const read = parseExerciseFile(files.teacher);
  if (!read.ok || !read.value.answer) throw new Error('the exercise cannot be read');
  return { ...files, exercise: { ...read.value, answer: read.value.answer } };
}

/** An attempt off the plan as a hand may be: SD 0.6 mm and 4° (invented), 0.3 mm facial and 0.4 mm too deep on the whole. */
export function attemptAt(plan: Plan, gauss: () => number, label: string): Attempt {
  const { platform, tilt, roll } = plan.pose;
  const held = (value: number, [low, high]: readonly [number, number]) =>
    Math.min(high, Math.max(low, value));
  return {
    label,
    pose: {
      platform: {
        m: platform.m + 0.6 * gauss(),
        f: platform.f + 0.3 + 0.6 * gauss(),
        c: platform.c - 0.4 + 0.5 * gauss(),
      },
      tilt: {
        faciopalatal: held(tilt.faciopalatal + 4 * gauss(), POSE_RANGE.faciopalatal),
        mesiodistal: held(tilt.mesiodistal + 4 * gauss(), POSE_RANGE.mesiodistal),
      },
      roll,
    },
    rehearsal: null,
  };
}

/** Twenty files that no class should stumble over, from one that is sound. */
export function brokenFiles(sound: string): string[] {
  const value = JSON.parse(sound);
  const change = (part: object) => JSON.stringify({ ...value, ...part });
  const without = (key: string) => JSON.stringify({ ...value, [key]: undefined });
  const pose = (part: object) => change({ pose: { ...value.pose, ...part } });
  return [
    '',
    '{',
    sound.slice(0, 100),
    'null',
    '[]',
    '"an attempt"',
    '12',
    `\u0000${sound}`,
    sound.replace('"roll": 0', '"roll": 1e999'),
    'x'.repeat(300 * 1024),
    change({ format: 'ridgewright-plan' }),
    change({ version: 2 }),
    change({ exercise: 'f'.repeat(64) }),
    change({ exercise: 'not a fingerprint' }),
    change({ label: 'a'.repeat(41) }),
    change({ name: 'Someone' }),
    without('pose'),
    pose({ platform: { m: 99, f: 0, c: 0 } }),
    pose({ tilt: { faciopalatal: 'steep', mesiodistal: 0 } }),
    change({ rehearsal: { passes: [] } }),
  ];
}

/** The text of an attempt. */
export const attemptText = (exercise: { fingerprint: string }, attempt: Attempt): string =>
  printAttemptFile(exercise, attempt);
