import type { Pose } from '../geometry/pose.ts';
import { canonical } from '../plan/fingerprint.ts';
import type { Plan } from '../plan/plan.ts';
import { sha256 } from '../plan/sha256.ts';
import { wordless } from '../plan/wordless.ts';
import type { MeasureId } from './measures.ts';

export const EXERCISE_FORMAT = 'ridgewright-exercise';
export const EXERCISE_VERSION = 1;

/** What the student does: sets a pose, or drills and seats. */
export const TASKS = ['place', 'rehearse'] as const;
export type Task = (typeof TASKS)[number];

/** When an attempt counts as done: always; nothing that a pose can change is beyond; drilled to the plan's last drill; seated. */
export const DONE = ['handed-in', 'nothing-beyond', 'drilled', 'seated'] as const;
export type Done = (typeof DONE)[number];

/** What the page keeps from the student. */
export interface Hidden {
  readonly readings: boolean;
  readonly section: boolean;
  readonly profile: boolean;
  /** The incisal line, the reference levels and the planned crown. */
  readonly target: boolean;
}

/** An exercise as it was read: from a teacher's file with its answer, from a student's without (rules L7, L8). */
export interface Exercise {
  readonly title: string;
  /** What the student is asked to do, in the teacher's words. */
  readonly words: string;
  readonly task: Task;
  /** Site, implant, fixing and limits, with the pose from which the student starts. */
  readonly plan: Plan;
  readonly hidden: Hidden;
  readonly done: Done;
  /** How far an attempt may be off before a measure is marked, mm or degrees; a measure that is not named is shown and not marked. */
  readonly tolerances: Readonly<Partial<Record<MeasureId, number>>>;
  /** Of everything the student's file holds: what an attempt must name. */
  readonly fingerprint: string;
  readonly answer: Pose | null;
}

/** What a teacher sets. */
export interface ExerciseDraft
  extends Pick<Exercise, 'title' | 'words' | 'task' | 'hidden' | 'done' | 'tolerances'> {
  /** The teacher's own plan: its pose is the answer. */
  readonly plan: Plan;
  /** Where the student starts: from nothing, or from the teacher's plan, which is then no secret (it is to be drilled). */
  readonly start: 'blank' | 'plan';
}

/** Where the answer could stand in a file of an exercise, and the salt that keeps it from being guessed. */
export interface Answer {
  readonly pose: Pose;
  readonly salt: string;
}

/** The value of an exercise file; `answer` in the teacher's only. */
export interface ExerciseFile extends Omit<Exercise, 'fingerprint' | 'answer'> {
  readonly format: typeof EXERCISE_FORMAT;
  readonly version: typeof EXERCISE_VERSION;
  /** SHA-256 of the answer with its salt: the teacher cannot change the answer afterwards, the student cannot read it. */
  readonly commitment: string;
  readonly answer?: Answer;
}

/** Over the crest point, upright, mark facially: a start that tells nothing. */
const BLANK: Pose = {
  platform: { m: 0, f: 0, c: 0 },
  tilt: { faciopalatal: 0, mesiodistal: 0 },
  roll: 0,
};

export const commitmentOf = (answer: Answer): string => sha256(canonical(answer));

/** Of the file's own value as it was written, the answer left out: teacher's and student's file have the same. */
export function fingerprintOf(file: object): string {
  const { answer: _, ...rest } = file as Record<string, unknown>;
  return sha256(canonical(rest));
}

/** The teacher's file of an exercise; of the plan's own words none goes along. `salt`: at least 16 characters by chance, made at the door; without it a pose could be found by trying. */
export function exerciseFile({ plan, start, ...draft }: ExerciseDraft, salt: string): Required<ExerciseFile> {
  const answer: Answer = { pose: plan.pose, salt };
  return {
    format: EXERCISE_FORMAT,
    version: EXERCISE_VERSION,
    ...draft,
    plan: { ...wordless(plan), pose: start === 'plan' ? plan.pose : BLANK, rehearsal: null },
    commitment: commitmentOf(answer),
    answer,
  };
}

/** The same without its answer: what the students get. */
export function forStudents(file: ExerciseFile): ExerciseFile {
  const { answer: _, ...rest } = file;
  return rest;
}
