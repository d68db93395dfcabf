/** Edits of the pose (rule F6; model section 2). Sources: the definitions of shift, tilt, advance and turn, and plane geometry. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisOf, entryOf, type Pose, platformOf } from '../../src/core/geometry/pose.ts';
import { along, angleBetween, distance, dot, sub } from '../../src/core/geometry/vec.ts';
import { totalLength } from '../../src/core/implant/shape.ts';
import {
  advance,
  heldPose,
  type Pivot,
  pivotPoint,
  shift,
  shoulderLevel,
  tiltTo,
  turn,
  useShape,
} from '../../src/core/plan/edits.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { POSE_RANGE } from '../../src/core/plan/ranges.ts';
import { parsePlanFile, printPlanFile } from '../../src/io/planFile.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { anyPlan, runs, within } from '../support/randomPlans.ts';
import { cylinder, slabPlan } from '../support/slabs.ts';

const PIVOTS: readonly Pivot[] = ['entry', 'apex', 'platform', 'aim'];

const inRange = ({ platform, tilt, roll }: Pose): boolean => {
  const holds = (v: number, [low, high]: readonly [number, number]) => v >= low && v <= high;
  return (
    holds(platform.m, POSE_RANGE.m) &&
    holds(platform.f, POSE_RANGE.f) &&
    holds(platform.c, POSE_RANGE.c) &&
    holds(tilt.faciopalatal, POSE_RANGE.faciopalatal) &&
    holds(tilt.mesiodistal, POSE_RANGE.mesiodistal) &&
    holds(roll, POSE_RANGE.roll)
  );
};

describe('shift', () => {
  it('moves the platform in the plane of m and f, keeps the axis, the height and everything else', () => {
    fc.assert(
      fc.property(anyPlan, within(-3, 3), within(-3, 3), (plan, dm, df) => {
        const { pose, ...rest } = shift(plan, dm, df);
        expect(pose.platform.m).toBeCloseTo(plan.pose.platform.m + dm, 12);
        expect(pose.platform.f).toBeCloseTo(plan.pose.platform.f + df, 12);
        expect(pose.platform.c).toBe(plan.pose.platform.c);
        expect(pose.tilt).toEqual(plan.pose.tilt);
        const { pose: _, ...before } = plan;
        expect(rest).toEqual(before);
      }),
      runs(100),
    );
  });

  it('and back is where it was', () => {
    fc.assert(
      fc.property(anyPlan, within(-3, 3), within(-3, 3), (plan, dm, df) => {
        const back = shift(shift(plan, dm, df), -dm, -df);
        expect(distance(platformOf(back.pose), platformOf(plan.pose))).toBeLessThan(1e-12);
        expect(back.pose.tilt).toEqual(plan.pose.tilt);
      }),
      runs(100),
    );
  });

  it('by centring × cos τ brings an implant to the middle of a slab (model, centring)', () => {
    const plan = slabPlan({ width: 9, f: 0.8, c: -2, fp: 14, md: 6 });
    const { readings, placement } = evaluate(plan);
    const apart = readingOf(readings, 'centring-apex').value ?? Number.NaN;
    const moved = shift(plan, 0, apart * Math.sqrt(1 - placement.a[1] ** 2));
    expect(readingOf(evaluate(moved).readings, 'centring-apex').value).toBeCloseTo(0, 9);
  });
});

describe('tilt', () => {
  const tilts = fc.tuple(within(-10, 50), within(-30, 30));

  it.each(PIVOTS)('about the %s keeps that point, and sets both angles', (pivot) => {
    fc.assert(
      fc.property(anyPlan, tilts, (plan, [faciopalatal, mesiodistal]) => {
        const before = pivotPoint(plan, pivot);
        const tilted = tiltTo(plan, { faciopalatal, mesiodistal }, pivot);
        expect(tilted.pose.tilt).toEqual({ faciopalatal, mesiodistal });
        // A pivot whose platform would leave the range of the plan file is the one exception.
        const { m, f, c } = tilted.pose.platform;
        fc.pre(Math.abs(m) < 15 && Math.abs(f) < 15 && c > -20 && c < 15);
        expect(distance(pivotPoint(tilted, pivot), before)).toBeLessThan(1e-9);
      }),
      runs(100),
    );
  });

  it.each(PIVOTS)('about the %s and back is where it was', (pivot) => {
    fc.assert(
      fc.property(anyPlan, tilts, (plan, [faciopalatal, mesiodistal]) => {
        const there = tiltTo(plan, { faciopalatal, mesiodistal }, pivot);
        const { m, f, c } = there.pose.platform;
        fc.pre(Math.abs(m) < 15 && Math.abs(f) < 15 && c > -20 && c < 15);
        const back = tiltTo(there, plan.pose.tilt, pivot);
        expect(distance(platformOf(back.pose), platformOf(plan.pose))).toBeLessThan(1e-9);
      }),
      runs(60),
    );
  });

  it('about the entry keeps the crest’s point; about the apex moves the platform by 2 L sin(δ/2)', () => {
    const plan = slabPlan({ c: -1.5, l: 12 });
    const about = (pivot: Pivot) => tiltTo(plan, { faciopalatal: 9, mesiodistal: 0 }, pivot);
    expect(distance(entryOf(about('entry').pose), [0, 0, 0])).toBeLessThan(1e-12);
    const apex = about('apex');
    expect(distance(platformOf(apex.pose), platformOf(plan.pose))).toBeCloseTo(
      24 * Math.sin((4.5 * Math.PI) / 180),
      12,
    );
    // The coronal end leans facially, and it is the coronal end that moved.
    expect(apex.pose.platform.f).toBeGreaterThan(0);
    expect(about('platform').pose.platform).toEqual(plan.pose.platform);
  });

  it('about the aim point keeps where the axis meets the incisal line’s plane', () => {
    const { plan } = SITES_DEMO[0];
    const before = evaluate(plan).line;
    const after = evaluate(tiltTo(plan, { faciopalatal: 30, mesiodistal: 2 }, 'aim')).line;
    expect(distance(after.q, before.q)).toBeLessThan(1e-9);
    expect(after.offset).toBeCloseTo(before.offset, 9);
    expect(after.place).toBeCloseTo(before.place, 9);
  });
});

describe('advance and turn', () => {
  it('moves along the axis, + toward the apex, and keeps the axis and the entry', () => {
    fc.assert(
      fc.property(anyPlan, within(-2, 2), (plan, d) => {
        const { pose } = advance(plan, d);
        const a = axisOf(plan.pose.tilt);
        const moved = sub(platformOf(pose), platformOf(plan.pose));
        expect(dot(moved, a)).toBeCloseTo(-d, 12);
        expect(distance(platformOf(pose), along(platformOf(plan.pose), a, -d))).toBeLessThan(1e-12);
        expect(distance(entryOf(pose), entryOf(plan.pose))).toBeLessThan(1e-9);
        expect(shoulderLevel(pose)).toBeCloseTo(shoulderLevel(plan.pose) - d, 12);
      }),
      runs(100),
    );
  });

  it('turns the mark only, modulo 360, into (−180, 180]', () => {
    const plan = slabPlan({ roll: 170 });
    expect(turn(plan, 20).pose.roll).toBeCloseTo(-170, 12);
    expect(turn(plan, 10).pose.roll).toBe(180);
    expect(turn(plan, -350).pose.roll).toBe(180);
    expect(turn(plan, 720).pose.roll).toBeCloseTo(170, 12);
    expect(turn(plan, 20).pose.platform).toEqual(plan.pose.platform);
  });

  it('by 360/n looks the same: every reading but for the neck’s own is what it was', () => {
    const plan = SITES_DEMO[0].plan;
    const scalloped = useShape(plan, { ...plan.implant, scallop: 1, index: 2 });
    const [a, b] = [evaluate(scalloped).readings, evaluate(turn(scalloped, 180)).readings];
    a.forEach((r, i) => {
      if (r.value === null) expect(b[i].value).toBeNull();
      else expect(b[i].value, r.id).toBeCloseTo(r.value, 9);
    });
  });

  it('another shape stands in the same place', () => {
    const plan = slabPlan({ m: 0.3, f: 0.2, c: -0.7, fp: 12 });
    const other = useShape(plan, cylinder(2, 9));
    expect(other.pose).toEqual(plan.pose);
    expect(totalLength(other.implant)).toBe(9);
  });
});

describe('ranges', () => {
  const wild = fc.oneof(within(-1e6, 1e6), within(-60, 60));

  it('every edit stays within the schema’s ranges, however wild, and its plan can be saved and read', () => {
    const edits = fc.oneof(
      fc.tuple(wild, wild).map(
        ([m, f]) =>
          (p: Plan) =>
            shift(p, m, f),
      ),
      fc.tuple(wild, wild, fc.constantFrom(...PIVOTS)).map(
        ([fp, md, pivot]) =>
          (p: Plan) =>
            tiltTo(p, { faciopalatal: fp, mesiodistal: md }, pivot),
      ),
      wild.map((d) => (p: Plan) => advance(p, d)),
      wild.map((d) => (p: Plan) => turn(p, d)),
    );
    fc.assert(
      fc.property(fc.array(edits, { minLength: 1, maxLength: 6 }), (list) => {
        let { plan } = SITES_DEMO[4];
        for (const edit of list) {
          plan = edit(plan);
          expect(inRange(plan.pose)).toBe(true);
        }
        const back = parsePlanFile(printPlanFile(plan));
        expect(back.ok).toBe(true);
      }),
      runs(150),
    );
  });

  it('keeps a pose that is within them as it is', () => {
    fc.assert(
      fc.property(anyPlan, ({ pose }) => {
        expect(heldPose(pose)).toEqual(pose);
      }),
      runs(50),
    );
  });

  it('the axis always has a coronal part: no tilt within the ranges lies flat', () => {
    const { faciopalatal, mesiodistal } = POSE_RANGE;
    for (const fp of faciopalatal)
      for (const md of mesiodistal)
        expect(angleBetween(axisOf({ faciopalatal: fp, mesiodistal: md }), [0, 0, 1])).toBeLessThan(55);
  });
});
