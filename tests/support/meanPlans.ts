import { SITES, type SiteCode } from '../../src/core/anatomy/site.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { planAlongCrown } from '../../src/core/plan/newPlan.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { type DemoPlan, shape } from './demoPlans.ts';

/**
 * One plan a site, from published means alone, the implant along the planned crown's axis. Each is worked out as the file is read, with its crown: a test
 * that does without them imports the scenarios only.
 */
export const MEAN_PLANS: readonly DemoPlan[] = SITES.map((tooth) => ({
  id: `means-${tooth}`,
  plan: meanPlan(tooth),
}));

function meanPlan(tooth: SiteCode): Plan {
  const lateral = tooth % 10 === 2;
  const along = planAlongCrown(
    defaultSite(tooth),
    shape(lateral ? 'tapered-flared-30x11' : 'tapered-straight-35x11'),
    lateral ? 'cemented' : 'screw-bone',
    `${tooth}, mean anatomy`,
  );
  const round = (v: number) => Math.round(v * 100) / 100 || 0;
  const { platform } = along.pose;
  return {
    ...along,
    note: 'Published means, the rest assumed; the implant stands along the axis of the planned crown.',
    pose: {
      ...along.pose,
      platform: { m: round(platform.m), f: round(platform.f), c: round(platform.c) },
    },
  };
}
