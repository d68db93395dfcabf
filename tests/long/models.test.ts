/** Practice models of many random sites, drilled at random: each is one closed body, or a reason is given. Source: manifold-3d. */
import { expect, it } from 'vitest';
import { EMPTY_REHEARSAL } from '../../src/core/drilling/rehearsal.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { buildModel } from '../../src/solids/build.ts';
import { seeded } from '../oracle/plans.ts';
import { randomPasses } from '../support/drilling.ts';
import { seriesPlan } from '../support/randomPlans.ts';
import { opinionOn, solidModeller } from '../support/solid.ts';

const COUNT = 60;

it(`${COUNT} random sites, drilled at random: closed bodies, nearly all of them offered`, async () => {
  const kernel = await solidModeller();
  const random = seeded(7);
  const refused: string[] = [];
  let leftOut = 0;
  for (let i = 0; i < COUNT; i++) {
    const site = seriesPlan(9000 + i, i % 20);
    const passes = randomPasses(random, site);
    const plan: Plan = { ...site, rehearsal: { ...EMPTY_REHEARSAL, passes } };
    const made = buildModel(kernel, plan, 'drilled');
    if (!made.ok) {
      refused.push(`${i} ${made.why.code}`);
      continue;
    }
    leftOut += made.model.leftOut;
    const opinion = await opinionOn(made.model.mesh);
    expect(opinion.status, `${i}`).toBe('NoError');
    expect(Math.abs(opinion.volume / made.model.volume - 1), `${i}`).toBeLessThan(1e-5);
  }
  console.log(`${refused.length} of ${COUNT} refused (${refused.join(', ')}); ${leftOut} pieces left out`);
  expect(refused.length).toBeLessThan(COUNT / 20);
});
