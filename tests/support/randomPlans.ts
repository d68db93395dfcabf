import fc from 'fast-check';
import type { ToothNumbers } from '../../src/core/anatomy/site.ts';
import { IMPLANT_LIBRARY } from '../../src/core/implant/library.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { randomPlans } from '../oracle/plans.ts';
import { cylinder } from './slabs.ts';

/** A plan of the seeded series, by its seed and its place in it (the place decides tooth, arch and state). */
export function seriesPlan(seed: number, place: number): Plan {
  let last: Plan | undefined;
  for (const plan of randomPlans({ sites: place + 1, posesPerSite: 1, seed })) last = plan;
  if (!last) throw new Error('an empty series');
  return last;
}

/** Sizes of crown that random plans have, a tooth: a crown is made once, by far the longest part of a first evaluation, and its form has tests of its own. */
const CROWNS = 3;
const crowns = new Map<string, ToothNumbers>();

/** The plan with one of a few crowns of its tooth, its own tilt kept. */
function withCrownOf(plan: Plan, which: number): Plan {
  const { crown, tooth } = plan.site;
  const question = `${tooth % 10} ${which}`;
  const numbers = crowns.get(question) ?? seriesPlan(which + 1, (tooth % 10) - 1).site.crown;
  crowns.set(question, numbers);
  return { ...plan, site: { ...plan.site, crown: { ...numbers, tilt: crown.tilt } } };
}

/** Random plans over all sites, healed and fresh, straight and curved. */
export const anyPlan: fc.Arbitrary<Plan> = fc
  .tuple(fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 0, max: 39 }))
  .map(([seed, place]) => withCrownOf(seriesPlan(seed, place), seed % CROWNS));

/** The same with a plain cylinder of the plan's diameter and length. */
export const cylinderPlan: fc.Arbitrary<Plan> = anyPlan.map((plan) => ({
  ...plan,
  implant: cylinder(plan.implant.implantedDiameter / 2, plan.implant.implantedLength),
}));

/** A shape of the library in a random plan. */
export const libraryPlan: fc.Arbitrary<Plan> = fc
  .tuple(anyPlan, fc.constantFrom(...IMPLANT_LIBRARY))
  .map(([plan, implant]) => ({ ...plan, implant }));

export const within = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

/** Runs with a fixed seed: a failure repeats. */
export const runs = (numRuns: number, seed = 20_240_229): fc.Parameters<unknown> => ({ numRuns, seed });
