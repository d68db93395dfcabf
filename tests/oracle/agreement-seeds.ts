/** The seeded series that the readings are compared on, cut in two so that two cores can share it. */
import type { Plan } from '../../src/core/plan/plan.ts';
import { randomPlans } from './plans.ts';

export const SERIES = { sites: 52, posesPerSite: 20, seed: 20_240 } as const;

/** Every other site. */
export function* half(which: 0 | 1): Generator<Plan> {
  let i = 0;
  for (const plan of randomPlans(SERIES)) {
    if (Math.floor(i / SERIES.posesPerSite) % 2 === which) yield plan;
    i += 1;
  }
}
