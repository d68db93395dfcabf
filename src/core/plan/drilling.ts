import type { DepthChain } from '../drilling/depthChain.ts';
import { depthStrip, type StripLevel } from '../drilling/depthStrip.ts';
import { type DrillingPlan, drillingPlan } from '../drilling/drillingPlan.ts';
import { type DrillSite, drillSiteOf } from '../drilling/drillSite.ts';
import { type Circles, circlesOf, type PlannedHole } from '../drilling/outlook.ts';
import { plannedHole } from '../drilling/plannedHole.ts';
import type { Pass } from '../drilling/rehearsal.ts';
import { DEFAULT_LIMITS } from '../measure/defaultLimits.ts';
import { Placement } from '../measure/placement.ts';
import { solidsOf } from './evaluate.ts';
import { kitOf, passBodies, rehearsalOf, toolOf } from './inHand.ts';
import type { Plan } from './plan.ts';

/** The drilling as it is planned: where the axis enters, the order of the tools, the chain of depths and its levels along the axis. */
export interface Drilling {
  readonly site: DrillSite;
  readonly plan: DrillingPlan;
  readonly chain: DepthChain;
  readonly strip: readonly StripLevel[];
  /** The last tools of the plan and the implant, as bodies in the planned pose; null where the implant stands so high that nothing is to be drilled. */
  readonly hole: PlannedHole | null;
}

/** What the planned drilling depends on; the hand and the passes are not among it. */
export const causesOf = (plan: Plan) =>
  [
    plan.site,
    plan.implant,
    plan.pose,
    plan.crestMargin,
    plan.limits,
    kitOf(plan),
    rehearsalOf(plan).spare,
    rehearsalOf(plan).flap,
  ] as const;

/** A pure function of some parts of a plan, kept for the parts it was last asked for. */
export function keptBy<T>(
  partsOf: (plan: Plan) => readonly unknown[],
  make: (plan: Plan) => T,
): (plan: Plan) => T {
  let last: { parts: readonly unknown[]; made: T } | null = null;
  return (plan) => {
    const parts = partsOf(plan);
    if (last?.parts.every((part, i) => part === parts[i])) return last.made;
    last = { parts, made: make(plan) };
    return last.made;
  };
}

/** The drilling of a plan; null where the planned axis meets no bone, or no drill of the kit is narrow enough. */
export const drillingOf = keptBy(causesOf, (plan): Drilling | null => {
  const at = new Placement(solidsOf(plan.site), plan.implant, plan.pose, plan.crestMargin);
  const site = drillSiteOf(at);
  if (!site) return null;
  const kit = kitOf(plan);
  const { spare, flap } = rehearsalOf(plan);
  const floor = plan.limits.floor ?? DEFAULT_LIMITS.floor.bands;
  const made = drillingPlan(site, { kit, spare, flap, floor });
  const { chain } = made;
  if (!chain) return null;
  const strip = depthStrip(site, chain, floor.low?.near ?? 0);
  return { site, plan: made, chain, strip, hole: plannedHole(site, kit, made) };
});

/** The last pass against the plan, as circles within circles; null before the first pass that met bone. Cheap. */
export function circlesNow(plan: Plan): Circles | null {
  const drilling = drillingOf(plan);
  const last = passBodies(plan).at(-1);
  return drilling?.hole && last ? circlesOf(last, drilling.hole.drill) : null;
}

/** Name of a pass's tool, as its diameter, mm. */
export const diameterOf = (plan: Plan, tool: Pass['tool']): number => {
  const found = toolOf(plan, tool);
  return found ? ('diameter' in found ? found.diameter : found.shoulderDiameter) : 0;
};
