/** The seeded series that the readings are compared on, cut in two so that two cores can share it. */
import type { Plan } from '../../src/core/plan/plan.ts';
import { randomPlans } from './plans.ts';

export const SERIES = { sites: 52, posesPerSite: 20, seed: 20_240 } as const;
/** Of each site's poses so many are looked at in the usual checks; the long run takes them all. */
export const USUAL = 12;

/** Every other site, the first so many poses of each. */
export function* half(which: 0 | 1, poses: number = USUAL): Generator<Plan> {
  let i = 0;
  for (const plan of randomPlans(SERIES)) {
    const site = Math.floor(i / SERIES.posesPerSite);
    if (site % 2 === which && i % SERIES.posesPerSite < poses) yield plan;
    i += 1;
  }
}
