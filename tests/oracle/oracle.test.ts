/**
 * The readings against the slow oracle (own formulas and dense sampling from the rules alone, no code shared with the core) on
 * 312 seeded plans over 26 sites (520 in the long run); `oracle-second-half.test.ts` has as many more. The oracle itself is proved in `hand.test.ts`.
 */
import { expect, it } from 'vitest';
import { compare, table } from './agreement.ts';
import { half, SERIES, USUAL } from './agreement-seeds.ts';
import { expectAgreement } from './expectations.ts';

it('agrees with the oracle on the even sites', () => {
  const found = compare(half(0));
  console.log(table(found));
  expect(found.plans).toBe((SERIES.sites / 2) * USUAL);
  expectAgreement(found);
}, 1_800_000);
