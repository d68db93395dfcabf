import type { DrillPose } from '../drilling/rehearsal.ts';
import { totalLength } from '../implant/shape.ts';
import { drillingOf } from '../plan/drilling.ts';
import { drillPoseOf, passBodies, rehearsalOf } from '../plan/inHand.ts';
import type { Plan } from '../plan/plan.ts';
import { deviation } from '../spread/deviation.ts';
import type { OwnAttempt } from '../spread/hand.ts';
import { holePose } from './inHole.ts';

/** Why a rehearsal is no attempt of a hand yet: nothing is drilled; the last drill of the order has not cut; a teacher has dialled skid or drift in; or the drill stood in the planned axis to the last digit, where a button puts it and no hand. */
export type NoAttempt = 'no-hole' | 'not-last-drill' | 'dialled' | 'put-there';

/** Two lines nearer to each other than this, mm and degrees, are one: a hand leaves more between them. */
const SAME = 1e-9;

function isOneLine(a: DrillPose, b: DrillPose): boolean {
  const apart = [
    a.mouth.m - b.mouth.m,
    a.mouth.f - b.mouth.f,
    a.tilt.faciopalatal - b.tilt.faciopalatal,
    a.tilt.mesiodistal - b.tilt.mesiodistal,
  ];
  return apart.every((d) => Math.abs(d) < SAME);
}

/** The rehearsal of a plan as an attempt at the screen: the implant in the hole as it was drilled, against the planned one. All passes count, those stepped back over too. */
export function screenAttempt(stepped: Plan): OwnAttempt | NoAttempt {
  const rehearsal = { ...rehearsalOf(stepped), shown: null };
  const plan = { ...stepped, rehearsal };
  const placed = passBodies(plan).length > 0 ? holePose(plan) : null;
  if (!placed) return 'no-hole';
  const last = drillingOf(plan)?.plan.last;
  const drilled = rehearsal.passes.some(
    ({ tool }) => tool.kind === 'drill' && tool.index >= (last?.index ?? 0),
  );
  if (!drilled) return 'not-last-drill';
  if (rehearsal.wander.skid !== 0 || rehearsal.wander.drift !== 0) return 'dialled';
  const { pose, implant } = plan;
  if (isOneLine(drillPoseOf(placed), drillPoseOf(pose))) return 'put-there';
  return { way: 'screen', deviation: deviation(pose, placed, totalLength(implant), implant.index) };
}
