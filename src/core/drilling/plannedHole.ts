import type { DrillingPlan } from './drillingPlan.ts';
import { type DrillSite, plannedPose } from './drillSite.ts';
import type { Drill, Kit, NeckCutter } from './kit.ts';
import { envelopeCover, type PlannedHole } from './outlook.ts';
import { PassBody, profileOf } from './passBody.ts';

/** A tool on the implant's planned axis, its full diameter (or neck's notch) `depth` below the bone entry, mm. */
export const plannedBody = ({ at, entry }: DrillSite, tool: Drill | NeckCutter, depth: number): PassBody =>
  new PassBody({
    profile: profileOf(tool),
    pose: plannedPose(at),
    entry: { level: entry, point: at.axisPoint(entry) },
    depth,
    press: null,
  });

/** The hole that a plan ends in: last drill, neck cutter, and the implant that will stand there; null where the kit cannot make it. */
export function plannedHole(
  site: DrillSite,
  kit: Kit,
  { last, chain, steps }: DrillingPlan,
): PlannedHole | null {
  if (!last || !chain || steps.length === 0) return null;
  const neck = steps.find((step) => step.reason === 'neck');
  const { envelope, platform, a } = site.at;
  return {
    drill: plannedBody(site, kit.drills[last.index], chain.fullDepth),
    neck: neck?.tool ? plannedBody(site, kit.necks[neck.tool.index], neck.depth) : null,
    implant: envelopeCover(envelope, platform, a),
  };
}
