import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { siteFaults } from '../../src/core/plan/check.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import {
  resetSiteNumber,
  setSiteNumber,
  siteNumbers,
  takeSiteNumber,
  type WaitingEdit,
} from '../../src/core/plan/siteFields.ts';
import { MEAN_PLANS } from '../support/meanPlans.ts';

const start = (tooth: number): Plan =>
  MEAN_PLANS.find(({ plan }) => plan.site.tooth === tooth)?.plan ?? MEAN_PLANS[0].plan;

/** A ridge that contradicts itself on the way when it is typed row by row from the mean of tooth 12. Invented. */
const NARROW: readonly (readonly [string, number])[] = [
  ['ridge.widths.0.palatal', 2],
  ['ridge.widths.1.palatal', 2.6],
  ['ridge.widths.2.palatal', 3.4],
  ['ridge.widths.3.palatal', 4.4],
  ['ridge.widths.1.depth', 3],
  ['ridge.widths.2.depth', 6],
  ['ridge.widths.3.depth', 10],
];

const typed = (plan: Plan, list: readonly (readonly [string, number])[]): WaitingEdit => {
  let edit: WaitingEdit = { plan, waiting: new Map() };
  for (const [path, value] of list) {
    edit = takeSiteNumber(edit, path, value);
    expect(siteFaults(edit.plan.site)).toEqual([]);
  }
  return edit;
};

describe('numbers typed one by one', () => {
  const plan = start(12);
  const whole = typed(plan, NARROW);

  test('some contradict the others on the way', () => {
    expect(NARROW.some(([path, value]) => !setSiteNumber(plan, path, value).ok)).toBe(true);
  });

  test('all are taken in the end, in whatever order, and the plan is sound at every step', () => {
    expect(whole.waiting.size).toBe(0);
    for (const [path, value] of NARROW)
      expect(siteNumbers(whole.plan.site).find((n) => n.path === path)?.value).toBe(value);
    fc.assert(
      fc.property(fc.shuffledSubarray([...NARROW], { minLength: NARROW.length }), (order) => {
        const { plan: made, waiting } = typed(plan, order);
        expect(waiting.size).toBe(0);
        expect(made).toEqual(whole.plan);
      }),
      { numRuns: 40 },
    );
  });

  test('what contradicts waits with its reason, and comes in when the other number lets it', () => {
    const waiting = typed(plan, [['ridge.widths.1.depth', 0.9]]);
    expect(waiting.plan).toEqual(plan);
    expect(waiting.waiting.get('ridge.widths.1.depth')).toMatchObject({
      value: 0.9,
      fault: { code: 'depths-not-rising', field: 'site.ridge.widths.1.depth', low: 1 },
    });
    const both = takeSiteNumber(waiting, 'ridge.widths.0.depth', 0.5);
    expect(both.waiting.size).toBe(0);
    expect(both.plan.site.ridge.widths.map((w) => w.depth).slice(0, 2)).toEqual([0.5, 0.9]);
  });

  test('a number out of its range names field, value and range', () => {
    const low = setSiteNumber(plan, 'gap', -1);
    expect(low).toMatchObject({ ok: false, fault: { code: 'out-of-range', field: 'site.gap', value: -1 } });
  });
});

test('a reset brings back the mean of that tooth', () => {
  for (const tooth of [11, 12, 13, 14] as const) {
    const changed = setSiteNumber(start(tooth), 'gap', 8);
    if (!changed.ok) throw new Error('refused');
    const back = resetSiteNumber(changed.plan, 'gap');
    expect(back.ok && back.plan.site.gap).toBe(defaultSite(tooth).gap);
  }
});
