import type { Ridge } from '../anatomy/ridge.ts';
import { axisOf, type Tilt } from '../geometry/pose.ts';
import { along, deg, type Vec3 } from '../geometry/vec.ts';
import { type BoneEntry, boneEntry, mouthOf } from './boneEntry.ts';
import { PassBody } from './passBody.ts';
import type { DrillPose, Press } from './rehearsal.ts';

/** A correction of the drill's pose as data. Shift in the plane of `m` and `f`, mm; tilt as changes of the projected angles, degrees (rule F6). */
export type DrillEdit =
  | { readonly kind: 'shift'; readonly facial: number; readonly mesial: number }
  | {
      readonly kind: 'tilt';
      readonly about: 'mouth' | 'bottom';
      readonly faciopalatal: number;
      readonly mesiodistal: number;
    }
  | { readonly kind: 'press'; readonly press: Press };

export const shifted = ({ mouth, tilt }: DrillPose, facial: number, mesial: number): DrillPose => ({
  mouth: { m: mouth.m + mesial, f: mouth.f + facial },
  tilt,
});

/** The pose through a point of space, leaning by `tilt`. Site frame, mm. */
export function poseThrough(pivot: Vec3, tilt: Tilt): DrillPose {
  const a = axisOf(tilt);
  const mouth = along(pivot, a, -pivot[2] / a[2]);
  return { mouth: { m: mouth[0], f: mouth[1] }, tilt };
}

/** The point of an axis at a level (rule F5). */
export const axisPoint = (pose: DrillPose, level: number): Vec3 =>
  along(mouthOf(pose), axisOf(pose.tilt), -level);

/** The pose turned to `tilt` about the point of its axis at a level. */
export const tiltedAbout = (pose: DrillPose, level: number, tilt: Tilt): DrillPose =>
  poseThrough(axisPoint(pose, level), tilt);

/** By how much the axis turns in a press, degrees: 0 for a shift; 0.5 mm at the mouth over 14 mm of depth, the bottom standing: 2.0. */
export const pressAngle = ({ mouth, bottom }: Press, depth: number): number =>
  deg(Math.atan2(Math.abs(mouth - bottom), depth));

/** The pose that a press ends in, `entry` and `depth` being those of the pass. */
export const pressEnd = (pose: DrillPose, entry: BoneEntry, depth: number, press: Press): DrillPose =>
  new PassBody({ profile: { x: [0], r: [0] }, pose, entry, depth, press }).endPose();

/** A pose after an edit. About the mouth: the bone entry; about the bottom: that of a hole of `depth`. The pose itself where its axis meets no bone to turn about. */
export function corrected(ridge: Ridge, pose: DrillPose, depth: number, edit: DrillEdit): DrillPose {
  if (edit.kind === 'shift') return shifted(pose, edit.facial, edit.mesial);
  const entry = boneEntry(ridge, pose);
  if (!entry) return pose;
  if (edit.kind === 'press') return pressEnd(pose, entry, depth, edit.press);
  const level = edit.about === 'mouth' ? entry.level : entry.level + depth;
  return tiltedAbout(pose, level, {
    faciopalatal: pose.tilt.faciopalatal + edit.faciopalatal,
    mesiodistal: pose.tilt.mesiodistal + edit.mesiodistal,
  });
}
