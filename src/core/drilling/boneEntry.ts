import type { Ridge } from '../anatomy/ridge.ts';
import { golden } from '../geometry/golden.ts';
import { axisOf } from '../geometry/pose.ts';
import { fallingRoot } from '../geometry/root.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
import type { DrillPose } from './rehearsal.ts';

/** Where an axis enters the bone (rule D1). */
export interface BoneEntry {
  /** Along the axis, mm apical of its crossing with the plane `c = 0` (rule F5). */
  readonly level: number;
  /** Site frame, mm. */
  readonly point: Vec3;
}

/** How far apart the axis is looked at, mm: bone that it meets over less is found by the dip between. */
const STRIDE = 0.05;
/** The search begins so far above the highest crest: more than the leaning of any crest adds. */
const ABOVE = 9;
const TOLERANCE = 1e-12;

/** Point of a drill's axis in the plane `c = 0`. */
export const mouthOf = (pose: DrillPose): Vec3 => [pose.mouth.m, pose.mouth.f, 0];

/** Highest level at which the search for bone begins, `c`. */
const startLevel = (ridge: Ridge): number => {
  let top = 0;
  for (let q = -12; q <= 12; q += 0.5) top = Math.max(top, ridge.crest(q));
  return top + ABOVE;
};

/**
 * Bone entry `B` of a drill's axis: its most coronal crossing with the ridge's surface above the floor, socket, dehiscence and canal taken as filled
 * (rule D1). null: the axis meets no bone. Level exact to 1e-10 mm.
 */
export function boneEntry(ridge: Ridge, pose: DrillPose): BoneEntry | null {
  const a = axisOf(pose.tilt);
  const mouth = mouthOf(pose);
  const solid = (t: number): number => {
    const p = along(mouth, a, -t);
    return ridge.solid(p[0], p[1], p[2]);
  };
  const found = (from: number, to: number): BoneEntry => {
    const level = fallingRoot(solid, from, to, TOLERANCE);
    return { level, point: along(mouth, a, -level) };
  };
  const end = -ridge.floor / a[2];
  let t = -startLevel(ridge) / a[2];
  let [before, here] = [Infinity, solid(t)];
  if (here <= 0) return { level: t, point: along(mouth, a, -t) };
  while (t < end) {
    const next = Math.min(end, t + STRIDE);
    const there = solid(next);
    if (here < before && here < there && here < STRIDE * ridge.steepWithin(STRIDE)) {
      const dip = lowest(solid, t - STRIDE, next);
      if (dip.value <= 0) return found(t - STRIDE, dip.at);
    }
    if (there <= 0) return found(t, next);
    [before, here] = [here, there];
    t = next;
  }
  return null;
}

/** Least value of a dip between two places. */
function lowest(f: (x: number) => number, from: number, to: number): { at: number; value: number } {
  let best = { at: from, value: Infinity };
  golden(
    (x) => {
      const value = f(x);
      if (value < best.value) best = { at: x, value };
      return value;
    },
    from,
    to,
    20,
  );
  return best;
}
