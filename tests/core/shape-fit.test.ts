import { describe, expect, it } from 'vitest';
import { anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import type { Site } from '../../src/core/anatomy/site.ts';
import { IMPLANT_LIBRARY, libraryShape } from '../../src/core/implant/library.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import { marginOf } from '../../src/core/measure/margin.ts';
import type { Reading } from '../../src/core/measure/reading.ts';
import { shift, tiltTo, useShape as withShape } from '../../src/core/plan/edits.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import { loweredCrest } from '../../src/core/plan/loweredCrest.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { MOST_LOOKS, type ShapeFit, searchFit, searchFits } from '../../src/core/plan/shapeFit.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { slabPlan } from '../support/slabs.ts';

const shapeOf = (name: string): ImplantShape => {
  const found = libraryShape(name);
  if (!found) throw new Error(`no shape ${name}`);
  return found;
};

function fitOf(plan: Plan, shape: ImplantShape): { fit: ShapeFit; yields: number } {
  const search = searchFit(plan, shape);
  for (let yields = 0; ; yields++) {
    const step = search.next();
    if (step.done) return { fit: step.value, yields };
  }
}

const RANK: Readonly<Record<string, number>> = { within: 0, near: 1, beyond: 2 };
const rank = ({ status }: Reading): number => RANK[status ?? ''] ?? 0;
const worstRank = (plan: Plan): number => Math.max(...evaluate(plan).readings.map(rank));

const demo = (id: string): Plan => {
  const found = SITES_DEMO.find((one) => one.id === id);
  if (!found) throw new Error(`no plan ${id}`);
  return found.plan;
};

describe('the margin of a reading', () => {
  const base = readingOf(evaluate(slabPlan()).readings, 'root-mesial');
  const limit = base.limit && { ...base.limit, bands: { low: { near: 1.5, beyond: 1 } } };
  const at = (value: number, status: Reading['status'], unit: Reading['unit'] = 'mm'): Reading => ({
    ...base,
    value,
    status,
    unit,
    limit,
  });

  it('is the distance to the near bound, a degree a tenth of a millimetre, beyond below all that is near', () => {
    expect(marginOf(at(2, 'within'))).toBeCloseTo(0.5, 12);
    expect(marginOf(at(1.2, 'near'))).toBeCloseTo(-0.3, 12);
    expect(marginOf(at(2.5, 'within', 'deg'))).toBeCloseTo(0.1, 12);
    expect(marginOf(at(0.9, 'beyond'))).toBeLessThan(marginOf(at(-90, 'near')) ?? 0);
    expect(marginOf(at(2, null))).toBeNull();
  });
});

describe('the best pose of a shape', () => {
  // Source: worked by hand. A slab 6 mm wide, an upright cylinder of radius 1.75: the walls are 1.25 − f and 1.25 + f.
  const cylinder = shapeOf('parallel-straight-35x11');
  const wall = { low: { near: 2, beyond: 0.2 } };
  const even = { 'facial-wall-crest': wall, 'facial-wall-deep': wall, 'palatal-wall': wall };
  const askew = (plan: Plan) => tiltTo(shift(plan, 0, 0.3), { faciopalatal: 4, mesiodistal: 0 }, 'entry');

  it('is the middle of a slab, upright, where both walls have the same limit', () => {
    const { fit } = fitOf(askew(slabPlan({ width: 6, plan: { limits: even } })), cylinder);
    expect(fit.pose.platform.f).toBeCloseTo(0, 1);
    expect(Math.abs(fit.pose.tilt.faciopalatal)).toBeLessThan(0.5);
    expect(fit.worst.id).toMatch(/-wall-/);
    expect(fit.worst.value).toBeGreaterThan(1.22);
    expect(fit.worst.value).toBeLessThanOrEqual(1.25 + 1e-9);
  });

  it('lies where both walls lack as much, where the facial one is to be a millimetre thicker', () => {
    // −f − 0.75 = 0.25 + f: half a millimetre palatal, both a quarter of a millimetre short.
    const { fit } = fitOf(askew(slabPlan({ width: 6 })), cylinder);
    expect(fit.pose.platform.f).toBeCloseTo(-0.5, 1);
    expect(marginOf(fit.worst)).toBeCloseTo(-0.25, 1);
    expect(fit.worst.status).toBe('near');
  });

  it('is reported with the reading and the status that the pose has, and is no worse than where it began', () => {
    for (const [id, name] of [
      ['demo-1-narrow-lateral', 'tapered-flared-30x11'],
      ['demo-2-fresh-socket', 'tapered-straight-40x13'],
      ['demo-3-wide-premolar', 'tapered-straight-45x9'],
      ['demo-4-thin-gum', 'tapered-scalloped-40x11'],
    ] as const) {
      const plan = demo(id);
      const shape = shapeOf(name);
      const { fit, yields } = fitOf(plan, shape);
      const start = withShape(plan, shape);
      const found = { ...start, pose: fit.pose };
      const { readings } = evaluate(found);
      expect(readingOf(readings, fit.worst.id)).toEqual(fit.worst);
      expect(rank(fit.worst)).toBe(worstRank(found));
      expect(worstRank(found)).toBeLessThanOrEqual(worstRank(start));
      const least = (at: readonly Reading[]) => Math.min(...at.map((r) => marginOf(r) ?? Infinity));
      if (rank(fit.worst) < 2)
        expect(least(readings)).toBeGreaterThanOrEqual(least(evaluate(start).readings));
      expect(fit.pose.roll).toBe(plan.pose.roll);
      expect(yields).toBeLessThanOrEqual(MOST_LOOKS);
    }
  });

  it('comes shape by shape, in the order of the library', () => {
    const search = searchFits(slabPlan());
    const names: string[] = [];
    while (names.length < 2) {
      const { value } = search.next();
      if (value) names.push(value.shape.name);
    }
    expect(names).toEqual(IMPLANT_LIBRARY.slice(0, 2).map(({ name }) => name));
  });
});

describe('a lowered crest', () => {
  const surface = (site: Site, side: 1 | -1, d: number): number => {
    const { ridge } = anatomyOf(site);
    return ridge.half(side, 0, d) * ridge.cap(d);
  };

  it('gives half a millimetre of width on a ridge that widens by one a millimetre, and costs as much height', () => {
    // Source: worked by hand. 4.0 wide at 1 mm and 7.0 at 4 mm, straight between: 4.5 at 1.5 mm.
    const widths = [
      { depth: 1, facial: 2, palatal: 2 },
      { depth: 4, facial: 3.5, palatal: 3.5 },
    ];
    const { site } = slabPlan({ ridge: { widths, height: 18 } });
    const found = loweredCrest(site, 0.5);
    expect(found?.width.before).toBeCloseTo(4, 9);
    expect(found?.width.after).toBeCloseTo(4.5, 9);
    expect(found?.height).toEqual({ before: 18, after: 17.5 });
    expect(found?.site.reference.margin).toBeCloseTo(site.reference.margin + 0.5, 9);
    expect(found?.site.mesial.boneLevel).toBeCloseTo(site.mesial.boneLevel + 0.5, 9);
    expect(found?.site.gum).toEqual(site.gum);
  });

  it('keeps the surface at every depth that is entered, and the floor and the teeth in the jaw', () => {
    for (const { plan } of SITES_DEMO) {
      const found = loweredCrest(plan.site, 0.7);
      if (plan.site.state.kind === 'socket') {
        expect(found).toBeNull();
        continue;
      }
      const lowered = found?.site ?? plan.site;
      for (const { depth } of lowered.ridge.widths) {
        for (const side of [1, -1] as const)
          expect(surface(lowered, side, depth)).toBeCloseTo(surface(plan.site, side, depth + 0.7), 9);
      }
      const [before, after] = [anatomyOf(plan.site), anatomyOf(lowered)];
      const floor = (at: typeof before) => at.toJaw([0, 0, at.ridge.floor])[2];
      expect(floor(after)).toBeCloseTo(floor(before), 9);
      expect(after.toJaw(after.teeth.mesial.origin)[2]).toBeCloseTo(
        before.toJaw(before.teeth.mesial.origin)[2],
        9,
      );
    }
  });
});
