import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance } from '../../src/core/geometry/vec.ts';
import { IMPLANT_LIBRARY } from '../../src/core/implant/library.ts';
import { envelopeOf } from '../../src/core/implant/profile.ts';
import { totalLength } from '../../src/core/implant/shape.ts';
import { READING_IDS } from '../../src/core/measure/reading.ts';
import { drillingOf } from '../../src/core/plan/drilling.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import { kitOf } from '../../src/core/plan/inHand.ts';
import { DEMO_PLANS, MEAN_PLANS } from '../../src/io/plans.ts';
import { spread } from '../../src/marks/spread.ts';
import { stretches } from '../../src/panels/BudgetBar.tsx';
import * as freedoms from '../../src/panels/freedoms.ts';
import { limitLine, THICK_PX } from '../../src/panels/profileShape.ts';
import { readingGroups } from '../../src/panels/readingGroups.ts';
import { PX_PER_MM, yOf } from '../../src/panels/scale.ts';
import { LABEL_GAP, labelHeights, STRIP, stripRows, stripScale } from '../../src/panels/stripLayout.ts';
import { implantOutline } from '../../src/paper/implantOutline.ts';
import { intoSection } from '../../src/paper/sectionPlane.ts';
import { runsOf } from '../../src/paper/wallRuns.ts';

const PLANS = [...DEMO_PLANS, ...MEAN_PLANS].map(({ plan }) => plan);

describe('the table', () => {
  it.each(['cemented', 'screw-bone', 'screw-gum'] as const)('has every reading once: %s', (fixing) => {
    const ids = readingGroups(fixing).flatMap((group) => group.ids);
    expect([...ids].sort()).toEqual([...READING_IDS].sort());
  });

  it('shows first the depth that the fixing is judged by', () => {
    for (const plan of PLANS) {
      const { readings } = evaluate(plan);
      const [key] = readingGroups(plan.fixing);
      const judged = readings.filter(({ id, limit }) => /^shoulder-to-(cej|gum-margin)$/.test(id) && limit);
      expect(judged).toHaveLength(1);
      expect(key.ids).toContain(judged[0].id);
    }
  });
});

describe('the section', () => {
  const walls = [
    'facial-wall-3mm',
    'palatal-wall-3mm',
    'facial-wall-thinnest',
    'palatal-wall-thinnest',
  ] as const;

  it('shows a wall in true length, in the plane, at its level, facial to the right', () => {
    let seen = 0;
    for (const plan of PLANS) {
      const evaluation = evaluate(plan);
      const project = intoSection(evaluation);
      for (const id of walls) {
        const { from, to, level } = readingOf(evaluation.readings, id);
        if (!from || !to || level === null) continue;
        const [a, b] = [project(from), project(to)];
        // Rule M1: the ray runs along ±e_f at one level, so the plane holds both ends.
        expect(Math.abs(a.off) + Math.abs(b.off)).toBeLessThan(1e-9);
        expect(a.level).toBeCloseTo(level, 9);
        expect(b.level).toBeCloseTo(level, 9);
        expect(Math.abs(b.x - a.x)).toBeCloseTo(distance(from, to), 9);
        expect(Math.sign(b.x)).toBe(id.startsWith('facial') ? 1 : -1);
        seen += 1;
      }
    }
    expect(seen).toBeGreaterThan(30);
  });

  it('draws no implant beyond its envelope, and the whole of its length', () => {
    for (const shape of IMPLANT_LIBRARY) {
      const envelope = envelopeOf(shape);
      const outline = implantOutline(shape, 0.4);
      for (const { x, y } of outline.filter((p) => p.y > 0)) {
        expect(Math.abs(x)).toBeLessThanOrEqual(envelope.radius(Math.min(y, totalLength(shape))) + 1e-9);
      }
      expect(Math.max(...outline.map((p) => p.y))).toBeCloseTo(totalLength(shape), 9);
      // Some crest reaches the envelope: the thread is not drawn thinner than it is.
      const crests = outline.filter(
        ({ x, y }) => y > shape.transmucosalLength && Math.abs(Math.abs(x) - envelope.radius(y)) < 1e-9,
      );
      expect(crests.length).toBeGreaterThan(shape.implantedLength / shape.thread.pitch);
    }
  });
});

describe('the wall profile', () => {
  const sample = (level: number, wall: number | null, counts = true) => ({ level, wall, gap: 0, counts });

  it('is blank where a level has no wall, and above the counting window where the surface stands out', () => {
    const runs = runsOf([
      sample(0, -0.2, false),
      sample(1, 1),
      sample(2, 1),
      sample(3, null),
      sample(4, -0.5),
      sample(5, 0.5),
    ]);
    expect(runs.map(({ samples }) => samples.map(({ level }) => level))).toEqual([
      [1, 2],
      [4, 5],
    ]);
  });

  it('steps the facial limit at 3 mm from 2.0 to 1.0 (near) and from 1.0 to 0.5 (beyond)', () => {
    // Source: the model's limits of the facial wall: ≥ 2.0 (beyond 1.0) down to 3 mm, then ≥ 1.0 (beyond 0.5).
    const plan = { ...PLANS[0], limits: {} };
    const steps = (bound: 'near' | 'beyond') => [
      ...new Set(limitLine(plan, 'facial', bound, 0, 8).map(({ x }) => x / THICK_PX)),
    ];
    expect(steps('near')).toEqual([2, 1]);
    expect(steps('beyond')).toEqual([1, 0.5]);
    const corner = limitLine(plan, 'facial', 'near', 0, 8).find(({ x }) => x === THICK_PX);
    expect(corner?.y).toBeCloseTo(yOf(3), 6);
  });

  it('takes a plan’s own bands', () => {
    const plan = { ...PLANS[0], limits: { 'palatal-wall': { low: { near: 1.5, beyond: 0.7 } } } };
    expect(limitLine(plan, 'palatal', 'near', 0, 4)[0].x).toBe(-1.5 * THICK_PX);
  });
});

describe('the depth strip and the budget’s bar', () => {
  it('hold every level between their ends at the section’s scale or a smaller one, labels apart', () => {
    for (const plan of PLANS) {
      const drilling = drillingOf(plan);
      if (!drilling?.plan.last) continue;
      const scale = stripScale(drilling.strip.map(({ level }) => level));
      expect(scale.pxPerMm).toBeLessThanOrEqual(PX_PER_MM);
      expect(scale.y(1) - scale.y(0)).toBeCloseTo(scale.pxPerMm, 9);
      for (const { level } of drilling.strip) {
        expect(scale.y(level)).toBeGreaterThanOrEqual(STRIP.top);
        expect(scale.y(level)).toBeLessThanOrEqual(STRIP.foot);
      }
      const rows = stripRows(drilling, kitOf(plan).drills[drilling.plan.last.index]);
      const heights = labelHeights(rows, scale).sort((a, b) => a - b);
      for (let i = 1; i < heights.length; i++)
        expect(heights[i] - heights[i - 1]).toBeGreaterThan(LABEL_GAP - 1e-6);
      expect(heights[heights.length - 1]).toBeLessThan(STRIP.height - 12);
    }
  });

  it('cut the depth where the answer changes, and leave out what has no length', () => {
    const cut = (round: number | null, covered: number | null) =>
      stretches({ round, covered }, 12).map(({ answer, from, to }) => [answer, from, to]);
    expect(cut(6.9, 9.2)).toEqual([
      ['round', 0, 6.9],
      ['covered', 6.9, 9.2],
      ['open', 9.2, 12],
    ]);
    expect(cut(12, 12)).toEqual([['round', 0, 12]]);
    expect(cut(null, 3)).toEqual([
      ['covered', 0, 3],
      ['open', 3, 12],
    ]);
    expect(cut(null, null)).toEqual([['open', 0, 12]]);
  });
});

describe('labels along one line', () => {
  const wanted = fc.array(fc.double({ min: 0, max: 400, noNaN: true }), { minLength: 1, maxLength: 8 });

  it('stay apart, in order and inside', () => {
    fc.assert(
      fc.property(wanted, (places) => {
        const found = spread(places, 25, 0, 400);
        const order = places.map((_, i) => i).sort((i, j) => places[i] - places[j] || i - j);
        const sorted = order.map((i) => found[i]);
        for (let i = 1; i < sorted.length; i++) expect(sorted[i] - sorted[i - 1]).toBeGreaterThan(25 - 1e-6);
        expect(sorted[0]).toBeGreaterThan(-1e-6);
        expect(sorted[sorted.length - 1]).toBeLessThan(400 + 1e-6);
      }),
    );
  });

  it('stay where they want to be when there is room, and share the way when there is not', () => {
    expect(spread([100, 20, 300], 25, 0, 400)).toEqual([100, 20, 300]);
    // Least squares by hand: two that want 100 and 110 with 25 between stand at 92.5 and 117.5.
    expect(spread([110, 100], 25, 0, 400)).toEqual([117.5, 92.5]);
  });
});

describe('the fields', () => {
  const all = Object.values(freedoms);

  it.each(all.map((freedom) => [freedom.id, freedom] as const))('%s reads what was written', (_, freedom) => {
    for (const plan of PLANS) {
      for (const pivot of ['entry', 'apex', 'platform', 'aim'] as const) {
        const value = freedom.read(plan) + 0.4;
        expect(freedom.read(freedom.write(plan, value, pivot))).toBeCloseTo(value, 9);
      }
    }
  });
});
