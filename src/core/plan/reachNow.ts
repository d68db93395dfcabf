import { drillSiteOf } from '../drilling/drillSite.ts';
import { type Reach, type ReachReport, reachOfTool, reachReport } from '../drilling/reach.ts';
import { Placement } from '../measure/placement.ts';
import { drillingOf } from './drilling.ts';
import { solidsOf } from './evaluate.ts';
import { handOf, kitOf, planInHand, toolOf } from './inHand.ts';
import type { Plan } from './plan.ts';

/** Whether the planned tools come down between the crowns, and whether the one in the hand does where it is held. */
export interface ReachNow {
  readonly planned: ReachReport | null;
  /** Null where its axis meets no bone. */
  readonly hand: Reach | null;
}

/** Reach of a plan as it stands. Costs some 20 ms: asked for when it is looked at, not with every move. */
export function reachNow(plan: Plan): ReachNow {
  const drilling = drillingOf(plan);
  const kit = kitOf(plan);
  const last = drilling?.plan.last;
  const { tool: ref, depth } = handOf(plan);
  const tool = toolOf(plan, ref);
  const held = planInHand(plan);
  const site = drillSiteOf(new Placement(solidsOf(plan.site), held.implant, held.pose, plan.crestMargin));
  return {
    planned: drilling && last ? reachReport(drilling.site, kit, last.index, drilling.chain) : null,
    hand: site && tool ? reachOfTool(site, kit.handpiece, tool, depth) : null,
  };
}
