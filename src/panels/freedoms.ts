import { entryOf } from '../core/geometry/pose.ts';
import { advance, type Pivot, shift, shoulderLevel, tiltTo, turn } from '../core/plan/edits.ts';
import type { Plan } from '../core/plan/plan.ts';
import { POSE_RANGE } from '../core/plan/ranges.ts';
import type { Unit } from '../words/format.ts';
import { sayAdvance, sayShift, sayTilt, sayTurn } from '../words/sayEdit.ts';

/** One degree of freedom of the pose as a number that can be read and set. mm and degrees. */
export interface Freedom {
  /** Also the id of its handle on the stage. */
  readonly id: 'shift-m' | 'shift-f' | 'tilt-fp' | 'tilt-md' | 'advance' | 'turn';
  readonly unit: Unit;
  readonly least: number;
  readonly most: number;
  readonly read: (plan: Plan) => number;
  /** The plan with this number, everything else as the rule F6 says; tilts turn about the pivot. */
  readonly write: (plan: Plan, value: number, pivot: Pivot) => Plan;
  /** Name of the undo step that changed it by so much. */
  readonly say: (by: number) => string;
}

const bounds = ([least, most]: readonly [number, number]) => ({ least, most });

export const SHIFT_M: Freedom = {
  id: 'shift-m',
  unit: 'mm',
  ...bounds(POSE_RANGE.m),
  read: ({ pose }) => entryOf(pose)[0],
  write: (plan, value) => shift(plan, value - entryOf(plan.pose)[0], 0),
  say: (by) => sayShift(by, 0),
};

export const SHIFT_F: Freedom = {
  id: 'shift-f',
  unit: 'mm',
  ...bounds(POSE_RANGE.f),
  read: ({ pose }) => entryOf(pose)[1],
  write: (plan, value) => shift(plan, 0, value - entryOf(plan.pose)[1]),
  say: (by) => sayShift(0, by),
};

export const TILT_FP: Freedom = {
  id: 'tilt-fp',
  unit: 'deg',
  ...bounds(POSE_RANGE.faciopalatal),
  read: ({ pose }) => pose.tilt.faciopalatal,
  write: (plan, value, pivot) => tiltTo(plan, { ...plan.pose.tilt, faciopalatal: value }, pivot),
  say: (by) => sayTilt(0, by),
};

export const TILT_MD: Freedom = {
  id: 'tilt-md',
  unit: 'deg',
  ...bounds(POSE_RANGE.mesiodistal),
  read: ({ pose }) => pose.tilt.mesiodistal,
  write: (plan, value, pivot) => tiltTo(plan, { ...plan.pose.tilt, mesiodistal: value }, pivot),
  say: (by) => sayTilt(by, 0),
};

/** The field shows the shoulder's level, + coronal of the crest plane; the edit advances along the axis. */
export const ADVANCE: Freedom = {
  id: 'advance',
  unit: 'mm',
  ...bounds(POSE_RANGE.c),
  read: ({ pose }) => shoulderLevel(pose),
  write: (plan, value) => advance(plan, shoulderLevel(plan.pose) - value),
  say: (by) => sayAdvance(-by),
};

export const TURN: Freedom = {
  id: 'turn',
  unit: 'deg',
  ...bounds(POSE_RANGE.roll),
  read: ({ pose }) => pose.roll,
  write: (plan, value) => turn(plan, value - plan.pose.roll),
  say: (by) => sayTurn(by),
};
