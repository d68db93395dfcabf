import type { DrillPose } from '../drilling/rehearsal.ts';
import { axisOf, type Pose } from '../geometry/pose.ts';
import { along } from '../geometry/vec.ts';
import { totalLength } from '../implant/shape.ts';
import { solidsOf } from '../plan/evaluate.ts';
import { passBodies, pointAt, rehearsalOf } from '../plan/inHand.ts';
import type { Plan } from '../plan/plan.ts';

/** The plan's implant in a hole on a line: its apex the plan's spare depth above the bottom, `depth` mm below the bone entry. The mark is turned by `roll`. */
export function poseInHole(plan: Plan, line: DrillPose, depth: number, roll: number): Pose {
  const apex = depth - rehearsalOf(plan).spare;
  const entry = pointAt(solidsOf(plan.site), line, 0);
  const [m, f, c] = along(entry, axisOf(line.tilt), totalLength(plan.implant) - apex);
  return { platform: { m, f, c }, tilt: line.tilt, roll };
}

/** The plan's implant in the hole as it was drilled: on the axis of the last drill where its pass ended; null before a drill has met bone. */
export function holePose(plan: Plan): Pose | null {
  // A neck cutter's lowest station is its notch: only drills have a point below.
  const last = passBodies(plan).findLast((body) => body.lowest < 0);
  return last ? poseInHole(plan, last.endPose(), last.depth, plan.pose.roll) : null;
}
