import type { Pose } from '../geometry/pose.ts';
import type { ImplantShape } from '../implant/shape.ts';
import type { Plan } from './plan.ts';

/** The plan with another pose and implant in it, everything else as it is: what a kept pose would be on this site today. */
export const withKept = (
  plan: Plan,
  kept: { readonly pose: Pose; readonly implant: ImplantShape },
): Plan => ({
  ...plan,
  pose: kept.pose,
  implant: kept.implant,
});
