import { axisOf, entryOf, type Pose, platformOf, type Tilt } from '../geometry/pose.ts';
import { along, clamp, dot, sub, type Vec3 } from '../geometry/vec.ts';
import { type ImplantShape, totalLength } from '../implant/shape.ts';
import { incisalLine } from '../measure/lines.ts';
import { Placement } from '../measure/placement.ts';
import { solidsOf } from './evaluate.ts';
import type { Plan } from './plan.ts';
import { POSE_RANGE } from './ranges.ts';

/** Where a tilt turns the axis (rule F6). */
export type Pivot = 'entry' | 'apex' | 'platform' | 'aim';

const withPose = (plan: Plan, pose: Pose): Plan => ({ ...plan, pose });

/** A pose held within the ranges of the plan file; angles by their own range, roll wrapped to (−180, 180]. */
export function heldPose(pose: Pose): Pose {
  const { m, f, c } = pose.platform;
  const r = POSE_RANGE;
  const roll = pose.roll - 360 * Math.ceil((pose.roll - 180) / 360);
  return {
    platform: { m: clamp(m, ...r.m), f: clamp(f, ...r.f), c: clamp(c, ...r.c) },
    tilt: {
      faciopalatal: clamp(pose.tilt.faciopalatal, ...r.faciopalatal),
      mesiodistal: clamp(pose.tilt.mesiodistal, ...r.mesiodistal),
    },
    roll,
  };
}

/** Shift (rule F6): moves the platform in the plane of `m` and `f`, keeps the axis. mm. */
export function shift(plan: Plan, dm: number, df: number): Plan {
  const { platform } = plan.pose;
  return withPose(
    plan,
    heldPose({ ...plan.pose, platform: { ...platform, m: platform.m + dm, f: platform.f + df } }),
  );
}

/** The pivot's point on the axis, site frame. */
export function pivotPoint(plan: Plan, pivot: Pivot): Vec3 {
  const { pose } = plan;
  switch (pivot) {
    case 'entry':
      return entryOf(pose);
    case 'apex':
      return along(platformOf(pose), axisOf(pose.tilt), -totalLength(plan.implant));
    case 'platform':
      return platformOf(pose);
    case 'aim':
      return incisalLine(new Placement(solidsOf(plan.site), plan.implant, pose, plan.crestMargin)).q;
  }
}

/** Tilt to new projected angles about a named pivot that stays where it is (rule F6). Degrees. */
export function tiltTo(plan: Plan, tilt: Tilt, pivot: Pivot): Plan {
  const held = heldPose({ ...plan.pose, tilt }).tilt;
  const fixed = pivotPoint(plan, pivot);
  const reach = dot(sub(platformOf(plan.pose), fixed), axisOf(plan.pose.tilt));
  const [m, f, c] = along(fixed, axisOf(held), reach);
  return withPose(plan, heldPose({ ...plan.pose, platform: { m, f, c }, tilt: held }));
}

/** Advance along the axis, + toward the apex, mm (rule F6). */
export function advance(plan: Plan, distance: number): Plan {
  const [m, f, c] = along(platformOf(plan.pose), axisOf(plan.pose.tilt), -distance);
  return withPose(plan, heldPose({ ...plan.pose, platform: { m, f, c } }));
}

/** Turn about the axis, + carries the mark from facial toward mesial, degrees. */
export function turn(plan: Plan, by: number): Plan {
  return withPose(plan, heldPose({ ...plan.pose, roll: plan.pose.roll + by }));
}

/** Another shape in the same place: platform, axis and turn are kept. */
export function useShape(plan: Plan, implant: ImplantShape): Plan {
  return { ...plan, implant };
}

/** Level of the shoulder's plane above the entry along the axis, mm: the number the depth field edits (+ coronal of the crest plane). */
export const shoulderLevel = (pose: Pose): number => pose.platform.c / axisOf(pose.tilt)[2];
