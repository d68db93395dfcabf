/** Taking up, the correction budget and how a hole ends: handbook areas, the model's table, and dense sampling of its own. */
import { describe, expect, it } from 'vitest';
import { budgetByDepth, evenly, shiftRoom, stepped, tiltRoom } from '../../src/core/drilling/budget.ts';
import { corrected } from '../../src/core/drilling/correct.ts';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { mendsOf } from '../../src/core/drilling/mend.ts';
import {
  circlesOf,
  envelopeCover,
  furthestOutside,
  mendableUntil,
  outlookOf,
  shiftReserve,
} from '../../src/core/drilling/outlook.ts';
import { PassBody, passBody } from '../../src/core/drilling/passBody.ts';
import { crescentArea, crescentDepth, lensArea, takenUp, takers } from '../../src/core/drilling/takenUp.ts';
import { axisFrame, axisOf, tiltOf } from '../../src/core/geometry/pose.ts';
import { along, angleBetween, dot, scale, sub, unit, type Vec3 } from '../../src/core/geometry/vec.ts';
import { envelopeOf } from '../../src/core/implant/profile.ts';
import { solidsOf } from '../../src/core/plan/evaluate.ts';
import { seeded } from '../oracle/plans.ts';
import { type PassNumbers, passOf, poseOf } from '../support/drilling.ts';
import { cylinder, slabPlan } from '../support/slabs.ts';

const slab = solidsOf(slabPlan({ width: 9 }).site);
const body = (n: PassNumbers = {}): PassBody => passBody(slab.ridge, GENERIC_KIT, passOf(n))!;
const RAD = Math.PI / 180;

describe('circles (Weisstein, "Circle-Circle Intersection", MathWorld; from memory)', () => {
  it('two unit circles a radius apart share 2π/3 − √3/2 (the vesica of the textbooks)', () => {
    expect(lensArea(1, 1, 1)).toBeCloseTo((2 * Math.PI) / 3 - Math.sqrt(3) / 2, 12);
  });

  it('a small circle whose centre lies on a far larger one is halved', () => {
    expect(lensArea(1, 1e4, 1e4)).toBeCloseTo(Math.PI / 2, 3);
  });

  it('inside: the whole; apart: nothing; crescent by columns of 1/2000', () => {
    expect(lensArea(1, 1.8, 0.8)).toBeCloseTo(Math.PI, 12);
    expect(lensArea(1, 1.8, 2.8)).toBe(0);
    let columns = 0;
    for (let i = 0; i < 4000; i++) {
      const x = -1 + (i + 0.5) / 2000;
      const h = Math.sqrt(1 - x * x);
      const w = Math.sqrt(Math.max(0, 1.4 ** 2 - (x + 0.7) ** 2));
      columns += (2 * Math.max(0, h - w)) / 2000;
    }
    expect(crescentArea(1, 1.4, 0.7)).toBeCloseTo(columns, 4);
    expect(crescentDepth(1, 1.4, 0.7)).toBeCloseTo(0.3, 12);
    expect(crescentDepth(1, 1.8, 0.7)).toBe(0);
  });
});

describe('taking up (D5)', () => {
  it('coaxial directions: up to e + r1 = r2, every way', () => {
    for (let azimuth = 0; azimuth < 360; azimuth += 45) {
      const put = (e: number) =>
        body({ drill: 4, f: e * Math.cos(azimuth * RAD), m: e * Math.sin(azimuth * RAD), depth: 10.5 });
      expect(takenUp(body(), put(0.799)).takenUp).toBe(true);
      const over = takenUp(body(), put(0.85));
      expect(over.takenUp).toBe(false);
      expect(over.overshoot.gap).toBeCloseTo(0.05, 4);
      expect(
        dot(unit(over.overshoot.at), [-Math.sin(azimuth * RAD), -Math.cos(azimuth * RAD), 0]),
      ).toBeGreaterThan(0);
    }
  });

  it('a shallower one takes nothing up; the first that does is named', () => {
    const short = takenUp(body(), body({ drill: 4, depth: 9.9 }));
    expect(short.shallower).toBe(true);
    expect(short.takenUp).toBe(false);
    expect(takers([body(), body({ drill: 2, depth: 9 }), body({ drill: 4 })])).toEqual([2, 2, null]);
  });

  it('the table of the model: 2.0 by 3.6, 7.75° at 6 mm, 5.78 at 8, 3.28 at 14; the new one reaches 6.08, 8.06, 14.03', () => {
    for (const [depth, angle, reach] of [
      [6, 7.75, 6.08],
      [8, 5.78, 8.06],
      [14, 3.28, 14.03],
    ] as const) {
      const room = tiltRoom({ radius: 1, depth, point: 0.577 }, evenly(1.8));
      expect(Math.abs(room.either - angle)).toBeLessThan(0.005);
      const rim = depth * Math.cos(angle * RAD) + Math.sin(angle * RAD);
      expect(Math.abs(rim - reach)).toBeLessThan(0.005);
      const turned = (fp: number) => body({ drill: 4, fp, depth: reach + 0.005 });
      expect(takenUp(body({ depth }), turned(room.either - 0.002)).takenUp).toBe(true);
      expect(takenUp(body({ depth }), turned(room.either + 0.02)).takenUp).toBe(false);
    }
  });

  it('a neck cutter takes up more at the crest, and only down to its base', () => {
    const wide = stepped([0, 1.5, 1.5, 20], [1.75, 1.5, 1.2, 1.2]);
    const old = { radius: 1, depth: 10, point: 0 };
    expect(shiftRoom(old, wide, 0)).toBeCloseTo(0.75, 12);
    expect(shiftRoom(old, wide, 1)).toBeCloseTo(0.75 - 0.25 / 1.5, 12);
    expect(shiftRoom(old, wide)).toBeCloseTo(0.2, 12);
  });

  it('by depth the room for a shift stays, that for a tilt shrinks', () => {
    const coming = { hand: evenly(1.2), kit: evenly(1.8), neck: null, implant: evenly(2) };
    const rows = budgetByDepth({ radius: 1, depth: 0, point: 0.577 }, coming, [6, 8, 14]);
    expect(rows.map((r) => Number(r.kit.shift.toFixed(9)))).toEqual([0.8, 0.8, 0.8]);
    expect(rows.map((r) => r.kit.tilt.either.toFixed(2))).toEqual(['7.75', '5.78', '3.28']);
    expect(rows[0].hand.tilt.either).toBeLessThan(rows[0].kit.tilt.either);
  });
});

/** How far the old pass, sampled over its side and its floor's edge and at its tip, stands out of a cylinder without end: by vectors alone. */
function sampledGap(
  point: Vec3,
  a: Vec3,
  r1: number,
  depth: number,
  tip: number,
  onNew: Vec3,
  b: Vec3,
  r2: number,
): number {
  const { ef, em } = axisFrame(a);
  const off = (p: Vec3): number => {
    const q = sub(p, onNew);
    return Math.sqrt(Math.max(0, dot(q, q) - dot(q, b) ** 2)) - r2;
  };
  let worst = off(along(point, a, -depth - tip));
  for (let i = 0; i <= 8; i++)
    for (let j = 0; j < 180; j++) {
      const phi = (2 * Math.PI * j) / 180;
      const round = along(scale(ef, Math.cos(phi)), em, Math.sin(phi));
      worst = Math.max(worst, off(along(along(point, a, (-depth * i) / 8), round, r1)));
    }
  return worst;
}

describe('honesty of the budget', () => {
  it('500 rehearsals: within the budget no place stands out, just beyond one does', () => {
    const random = seeded(2024);
    const pick = (lo: number, hi: number) => lo + (hi - lo) * random();
    let tested = 0;
    let gapIn = Number.NEGATIVE_INFINITY;
    for (let n = 0; n < 500; n++) {
      const r1 = pick(0.9, 1.6);
      const r2 = r1 + pick(0.1, 0.9);
      const depth = pick(3, 14);
      const point = r1 * 0.577;
      const pivot = pick(0, depth);
      const offset = n % 3 === 0 ? 0 : pick(-0.95, 0.95) * (r2 - r1);
      const room = tiltRoom({ radius: r1, depth, point }, evenly(r2), pivot, offset);
      const a = axisOf({ faciopalatal: pick(-5, 45), mesiodistal: pick(-20, 20) });
      const { ef, em } = axisFrame(a);
      const phi = pick(0, 2 * Math.PI);
      const way = along(scale(ef, Math.cos(phi)), em, Math.sin(phi));
      const B: Vec3 = [pick(-1, 1), pick(-1, 1), pick(-1, 1)];
      // `e + (d − p) sin δ` is where the old axis stands from the new one at depth d: below the pivot the new one turns against `way`.
      const gap = (delta: number): number => {
        const b = along(scale(a, Math.cos(delta)), way, Math.sin(delta));
        const across = along(scale(way, Math.cos(delta)), a, -Math.sin(delta));
        const onNew = along(along(B, a, -pivot), across, -offset);
        return sampledGap(B, a, r1, depth, point, onNew, scale(b, 1), r2);
      };
      for (const [sign, most] of [
        [1, room.toward],
        [-1, room.away],
      ] as const) {
        const inside = gap(sign * (Number.isFinite(most) ? most : 30) * RAD);
        gapIn = Math.max(gapIn, inside);
        expect(inside, `${n} ${sign}`).toBeLessThan(0.01);
        if (!Number.isFinite(most)) continue;
        tested++;
        expect(gap(sign * (most + 0.05) * RAD), `${n} ${sign} beyond`).toBeGreaterThan(0);
      }
    }
    console.log(`largest gap within the budget ${gapIn.toFixed(4)} mm`);
    expect(tested).toBeGreaterThan(700);
  });

  it('shift: within r2 − r1 round, 0.02 beyond not; pressing by the gap takes it up, by less does not', () => {
    const random = seeded(9);
    for (let n = 0; n < 40; n++) {
      const phi = 360 * random();
      const lean = { fp: 40 * random(), md: 20 * random() - 10 };
      const old = body({ ...lean, depth: 8 });
      const { ef, em, a } = old.frame;
      const way = along(scale(ef, Math.cos(phi * RAD)), em, Math.sin(phi * RAD));
      const wide = (e: number, press: number): PassBody =>
        new PassBody({
          profile: { x: [-0.8, 0], r: [0, 1.4] },
          pose: old.pose,
          entry: { level: 0, point: along(old.entry.point, way, e) },
          depth: 9,
          press: press === 0 ? null : { toward: phi + 180, mouth: press, bottom: press },
        });
      expect(takenUp(old, wide(0.399, 0)).takenUp).toBe(true);
      const { overshoot, takenUp: done } = takenUp(old, wide(0.65, 0));
      expect(done).toBe(false);
      expect(overshoot.gap).toBeCloseTo(0.25, 4);
      expect(takenUp(old, wide(0.65, overshoot.gap + 1e-4)).takenUp).toBe(true);
      expect(takenUp(old, wide(0.65, overshoot.gap - 0.02)).overshoot.gap).toBeCloseTo(0.02, 3);
      expect(angleBetween(wide(0.65, 0.25).axisAt(1).a, a)).toBeLessThan(1e-5);
    }
  });
});

describe('how it ends (D7, D8)', () => {
  const planned = { drill: body({ drill: 4, depth: 13 }), neck: null, implant: null };

  it('round, covered by the implant, open', () => {
    const at = (f: number) => [body({ f, depth: 8 })];
    expect(outlookOf(at(0.79), planned).answer).toBe('round');
    const implant = envelopeCover(envelopeOf(cylinder(2, 12.5)), [0, 0, 0], [0, 0, 1]);
    const covered = outlookOf(at(1.1), { ...planned, implant });
    expect(covered.answer).toBe('covered');
    expect(covered.gap).toBeCloseTo(0.3, 4);
    expect(covered.void).toBeCloseTo(0.1, 4);
    const open = outlookOf(at(1.3), { ...planned, implant });
    expect(open.answer).toBe('open');
    expect(open.void).toBeCloseTo(0.3, 4);
    expect(outlookOf(at(0.9), planned).answer).toBe('open');
  });

  it('a direction error of 5.78° may be followed to 8 mm, one of 3.28° to 14', () => {
    const deep = { ...planned, drill: body({ drill: 4, depth: 15 }) };
    for (const [fp, depth] of [
      [7.751, 6],
      [5.775, 8],
      [3.282, 14],
    ] as const)
      expect(Math.abs(mendableUntil(body({ fp, depth: 2 }), deep).round! - depth)).toBeLessThan(0.03);
    expect(mendableUntil(body({ fp: 1 }), deep).round).toBe(15);
    expect(mendableUntil(body({ f: 3 }), deep).round).toBeNull();
  });

  it('circles within circles: ring r2 − r1; 5° off at the mouth is 13 tan 5 at the apex', () => {
    const seen = circlesOf(body({ fp: -5, f: 0.2, depth: 6 }), planned.drill);
    expect(seen.crest.ring).toBeCloseTo(0.8, 12);
    expect(seen.crest.facial).toBeCloseTo(0.2, 2);
    expect(seen.apex.facial).toBeCloseTo(0.2 + 13 * Math.tan(5 * RAD), 2);
    expect(seen.apex.mesial).toBeCloseTo(0, 9);
    expect(seen.angle).toBeCloseTo(5, 6);
  });

  it('reserve of a shift: what is left of r2 − r1 on each side', () => {
    const old = body({ f: 0.3, depth: 8 });
    expect(shiftReserve(old, planned.drill, 0)).toBeCloseTo(1.1, 2);
    expect(shiftReserve(old, planned.drill, 180)).toBeCloseTo(0.5, 2);
    expect(shiftReserve(body({ f: 0.9 }), planned.drill, 0)).toBeNull();
  });

  it('every way to mend keeps its promise: carried out, the pose and the gap are those said', () => {
    const random = seeded(3);
    for (let n = 0; n < 12; n++) {
      const old = body({
        fp: 10 * random() - 5,
        md: 8 * random() - 4,
        f: random() - 0.5,
        m: random() - 0.5,
        depth: 6 + 4 * random(),
      });
      const { all, best } = mendsOf(slab.ridge, [old], planned);
      expect(all).toHaveLength(7);
      for (const mend of all) {
        const pose = mend.edits.reduce((p, e) => corrected(slab.ridge, p, old.depth, e), old.pose);
        expect(pose).toEqual(mend.pose);
        if (mend.edits.some((e) => e.kind === 'press')) continue;
        const next = passBody(slab.ridge, GENERIC_KIT, { ...passOf({ drill: 4, depth: 13 }), pose })!;
        const gap = Math.max(0, furthestOutside(old, [next]).gap);
        expect(mend.outlook.gap).toBeCloseTo(gap < 1e-3 ? 0 : gap, 3);
      }
      const plan = all.find((m) => m.kind === 'to-plan')!;
      expect(plan.left.apex.facial).toBeCloseTo(0, 6);
      expect(plan.left.angle).toBeLessThan(1e-5);
      expect(best.outlook.answer === 'open').toBe(false);
      expect(tiltOf(axisOf(plan.pose.tilt)).faciopalatal).toBeCloseTo(0, 9);
    }
    expect(poseOf().tilt.faciopalatal).toBe(0);
  });
});
