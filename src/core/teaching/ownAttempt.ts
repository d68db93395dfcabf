import { totalLength } from '../implant/shape.ts';
import { drillingOf } from '../plan/drilling.ts';
import { passBodies, rehearsalOf } from '../plan/inHand.ts';
import type { Plan } from '../plan/plan.ts';
import { deviation } from '../spread/deviation.ts';
import type { OwnAttempt } from '../spread/hand.ts';
import { holePose } from './inHole.ts';

/** Why a rehearsal is no attempt of a hand yet: nothing is drilled; the last drill of the order has not cut; or a teacher has dialled skid or drift in. */
export type NoAttempt = 'no-hole' | 'not-last-drill' | 'dialled';

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
  return { way: 'screen', deviation: deviation(pose, placed, totalLength(implant), implant.index) };
}
