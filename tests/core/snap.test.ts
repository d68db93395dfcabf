import { describe, expect, test } from 'vitest';
import { axisOf } from '../../src/core/geometry/pose.ts';
import { angleBetween, distance } from '../../src/core/geometry/vec.ts';
import { type Pivot, pivotPoint, shoulderLevel } from '../../src/core/plan/edits.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { type SNAPS, snapTo } from '../../src/core/plan/snap.ts';
import { ladder, rungOf } from '../../src/core/seating/ladder.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

const demo = (id: string): Plan => {
  const found = SITES_DEMO.find((one) => one.id.includes(id));
  if (!found) throw new Error(id);
  return found.plan;
};
const slab = demo('slab');
const lateral = demo('lateral');
const PIVOTS: readonly Pivot[] = ['entry', 'apex', 'platform'];

const snapped = (plan: Plan, snap: (typeof SNAPS)[number], pivot: Pivot = 'entry'): Plan => {
  const made = snapTo(plan, snap, pivot);
  if (!made) throw new Error(snap);
  return made;
};

const answer = (plan: Plan, id: Parameters<typeof readingOf>[1]) =>
  readingOf(evaluate(plan).readings, id).value;

describe('snaps', () => {
  test('to the middle of a slab: the shift is the walls’ half difference times the cosine', () => {
    // Source: the model's hand check: (W/2 − f) / cos τ − r on either side, so the middle is f = 0 at the level.
    const off: Plan = {
      ...slab,
      pose: {
        ...slab.pose,
        platform: { ...slab.pose.platform, f: slab.pose.platform.f + 0.7 },
        tilt: { faciopalatal: 8, mesiodistal: 0 },
      },
    };
    const centring = answer(off, 'centring-crest') ?? Number.NaN;
    const middle = snapped(off, 'bone-faciopalatal');
    expect(answer(middle, 'centring-crest')).toBeCloseTo(0, 6);
    const moved = middle.pose.platform.f - off.pose.platform.f;
    expect(moved).toBeCloseTo(centring * Math.cos((8 * Math.PI) / 180), 5);
    expect(middle.pose.tilt).toEqual(off.pose.tilt);
  });

  test('to the middle between the roots, the axis kept', () => {
    const middle = snapped(lateral, 'bone-mesiodistal');
    expect(answer(middle, 'centring-mesiodistal-crest')).toBeCloseTo(0, 6);
    expect(middle.pose.tilt).toEqual(lateral.pose.tilt);
    expect(middle.pose.platform.f).toBe(lateral.pose.platform.f);
  });

  test.each(PIVOTS)('a tilt leaves its pivot, the %s, where it is', (pivot) => {
    for (const snap of ['ridge-axis', 'crown-axis', 'incisal-line'] as const) {
      const made = snapped(lateral, snap, pivot);
      expect(distance(pivotPoint(made, pivot), pivotPoint(lateral, pivot)), snap).toBeLessThan(1e-9);
    }
    expect(answer(snapped(lateral, 'ridge-axis', pivot), 'axis-to-ridge-faciopalatal')).toBeCloseTo(0, 9);
    const along = snapped(lateral, 'crown-axis', pivot);
    expect(angleBetween(axisOf(along.pose.tilt), axisOf(lateral.site.crown.tilt))).toBeLessThan(1e-5);
  });

  test('to the incisal line: on it for cement, 1 mm palatal of it for a screw', () => {
    expect(
      answer(snapped({ ...lateral, fixing: 'cemented' }, 'incisal-line'), 'incisal-line-offset'),
    ).toBeCloseTo(0, 6);
    const screw = snapped({ ...lateral, fixing: 'screw-gum' }, 'incisal-line');
    expect(answer(screw, 'incisal-line-offset')).toBeCloseTo(-1, 6);
  });

  test('by a part-turn: a rung deeper and one higher come back', () => {
    // By hand: pitch 0.8 mm, two starts, a neck that looks the same every 120°: a third of 1.6 mm.
    const implant = {
      ...lateral.implant,
      thread: { depth: 0.3, pitch: 0.8, starts: 2 },
      index: 3,
      scallop: 0,
    };
    expect(rungOf(implant)).toBeCloseTo(1.6 / 3, 12);
    const plan = { ...lateral, implant };
    const deeper = snapped(plan, 'deeper-rung');
    expect(shoulderLevel(plan.pose) - shoulderLevel(deeper.pose)).toBeCloseTo(1.6 / 3, 9);
    const back = snapped(deeper, 'higher-rung');
    expect(shoulderLevel(back.pose)).toBeCloseTo(shoulderLevel(plan.pose), 9);
    expect(snapTo({ ...plan, implant: { ...implant, index: 0 } }, 'deeper-rung', 'entry')).toBeNull();
  });

  test('where there is no such place, nothing', () => {
    const away: Plan = { ...slab, pose: { ...slab.pose, platform: { m: 0, f: 0, c: -5 } } };
    expect(snapTo(away, 'bone-faciopalatal', 'entry')).toBeNull();
  });
});

test('the rungs of a ladder, by hand', () => {
  // First stop at 0.9, rungs 0.4 apart: 1.3, 0.9, 0.5, 0.1 lie between 1.4 and 0.
  expect(ladder(0.9, 0.4, 1.4, 0).map((s) => Math.round(s * 10) / 10)).toEqual([1.3, 0.9, 0.5, 0.1]);
  expect(ladder(0.9, 0.4, 0.4, 0.2)).toEqual([]);
});
