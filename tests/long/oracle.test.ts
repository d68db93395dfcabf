/** All 1,040 plans of the oracle's series; the usual checks take 624 of them. */
import { expect, it } from 'vitest';
import { compare, table } from '../oracle/agreement.ts';
import { half, SERIES } from '../oracle/agreement-seeds.ts';
import { expectAgreement } from '../oracle/expectations.ts';

it.each([0, 1] as const)(
  'agrees with the oracle on half %i of the sites',
  (which) => {
    const found = compare(half(which, SERIES.posesPerSite));
    console.log(table(found));
    expect(found.plans).toBe((SERIES.sites / 2) * SERIES.posesPerSite);
    expectAgreement(found);
  },
  3_600_000,
);
