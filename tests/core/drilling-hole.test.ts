/** The drilled hole: bone entry, bodies of passes, presses, outlines. Worked by hand on a slab, and against dense sampling of the rules. */
import { describe, expect, it } from 'vitest';
import { boneEntry } from '../../src/core/drilling/boneEntry.ts';
import { pressAngle } from '../../src/core/drilling/correct.ts';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { holeOf } from '../../src/core/drilling/hole.ts';
import { outlineInPlane, sweptHull } from '../../src/core/drilling/outline.ts';
import { PassBody, passBody } from '../../src/core/drilling/passBody.ts';
import { holeVolume } from '../../src/core/drilling/volume.ts';
import { loopArea, onPlane, type Plane } from '../../src/core/geometry/slice.ts';
import { along, dot, sub, unit, type Vec3 } from '../../src/core/geometry/vec.ts';
import { solidsOf } from '../../src/core/plan/evaluate.ts';
import { seeded } from '../oracle/plans.ts';
import { type PassNumbers, passOf, poseOf, randomPasses } from '../support/drilling.ts';
import { seriesPlan } from '../support/randomPlans.ts';
import { slabPlan } from '../support/slabs.ts';

const slab = solidsOf(slabPlan({ width: 9 }).site);
const body = (n: PassNumbers = {}): PassBody => passBody(slab.ridge, GENERIC_KIT, passOf(n))!;
const RAD = Math.PI / 180;

describe('bone entry (D1) on a slab 9 wide, crest rounded by 0.05', () => {
  it('beside the middle the crest falls by ρ (1 − √(1 − (f/W)²))', () => {
    const drop = (f: number) => 0.05 * (1 - Math.sqrt(1 - (f / 4.5) ** 2));
    for (const f of [0, 1, -3.2]) expect(boneEntry(slab.ridge, poseOf(0, f))!.level).toBeCloseTo(drop(f), 10);
  });

  it('through the facial wall: 1.5 mm off it, leaning 40°, level 1.5 / sin 40', () => {
    const found = boneEntry(slab.ridge, poseOf(0, 6, 40))!;
    expect(found.level).toBeCloseTo(1.5 / Math.sin(40 * RAD), 9);
    expect(found.point[1]).toBeCloseTo(4.5, 9);
  });

  it('past the ridge there is none, and such a pass leaves no hole', () => {
    expect(boneEntry(slab.ridge, poseOf(0, 20))).toBeNull();
    expect(holeOf(slab.ridge, GENERIC_KIT, [passOf({ f: 20 })]).bodies).toHaveLength(0);
  });

  it('lies on the surface of sloping crests, with bone on its apical and none on its coronal side', () => {
    for (let n = 0; n < 40; n++) {
      const plan = seriesPlan(900 + n, n % 10);
      const { ridge } = solidsOf(plan.site);
      const pose = poseOf(0.8 - 0.04 * n, 0.5, plan.pose.tilt.faciopalatal, plan.pose.tilt.mesiodistal);
      const found = boneEntry(ridge, pose)!;
      const a = body({ fp: pose.tilt.faciopalatal, md: pose.tilt.mesiodistal }).frame.a;
      expect(Math.abs(ridge.solid(...found.point))).toBeLessThan(1e-8);
      expect(ridge.solid(...along(found.point, a, -1e-4))).toBeLessThan(0);
      for (let x = 1e-4; x < 6; x += 0.01)
        expect(ridge.solid(...along(found.point, a, x))).toBeGreaterThan(0);
    }
  });
});

describe('bodies (D2)', () => {
  it('a 2.0 drill of 120° to 10 mm ends 0.577 deeper in a point', () => {
    const hole = body();
    expect(hole.axisAt(0).tip[2]).toBeCloseTo(-10.5774, 4);
    expect(hole.contains([0.99, 0, -9.99])).toBe(true);
    expect(hole.contains([1.01, 0, -9.99])).toBe(false);
    expect(hole.contains([0, 0.49, -10.29])).toBe(true);
    expect(hole.contains([0, 0.51, -10.29])).toBe(false);
  });

  it('a neck cutter is a frustum between its notches, a cylinder above, flat below', () => {
    const neck = body({ neck: 0, depth: 1 });
    expect(neck.contains([1.49, 0, -0.99])).toBe(true);
    expect(neck.contains([0, 0, -1.01])).toBe(false);
    expect(neck.contains([1.6, 0, -0.39])).toBe(true);
    expect(neck.contains([1.61, 0, -0.41])).toBe(false);
    expect(neck.contains([1.74, 0, 3])).toBe(true);
  });
});

describe('presses (D3)', () => {
  it('0.5 mm over 14 mm is 2.0°, a shift 0', () => {
    expect(pressAngle({ toward: 0, mouth: 0.5, bottom: 0 }, 14)).toBeCloseTo(2.045, 3);
    expect(pressAngle({ toward: 0, mouth: 0.5, bottom: 0.5 }, 14)).toBe(0);
    const end = body({ depth: 14, press: { toward: 0, mouth: 0.5, bottom: 0 } }).endPose();
    expect(end.tilt.faciopalatal).toBeCloseTo(2.045, 3);
    expect(end.tilt.mesiodistal).toBeCloseTo(0, 9);
  });

  it('stretches end on the surface of the union of tools between the moving ends of the axis', () => {
    const random = seeded(77);
    const pick = (lo: number, hi: number) => lo + (hi - lo) * random();
    const worst = { shift: 0, drill: 0, flat: 0 };
    for (let n = 0; n < 60; n++) {
      const drill = n % 3 > 0;
      const depth = pick(6, 14);
      const mouth = pick(-0.7, 0.7);
      const bottom = n % 2 ? mouth : n % 4 ? 0 : pick(-0.35, 0.35);
      const profile = drill ? { x: [-0.8, 0], r: [0, 1.4] } : { x: [0, 2], r: [1.5, 2] };
      const press = { toward: pick(0, 360), mouth, bottom };
      const point: Vec3 = [0.2, -0.1, 0.4];
      const pose = poseOf(0, 0, pick(0, 40), pick(-10, 10));
      const swept = new PassBody({ profile, pose, entry: { level: -0.4, point }, depth, press });
      const [from, to] = [swept.axisAt(0), swept.axisAt(1)];
      const mix = (p: Vec3, q: Vec3, s: number) => along(p, sub(q, p), s);
      const out = (p: Vec3, s: number): number => {
        const low = mix(from.bottom, to.bottom, s);
        const up = unit(sub(mix(from.mouth, to.mouth, s), low));
        const q = sub(p, low);
        const x = dot(q, up);
        const rho = Math.sqrt(Math.max(0, dot(q, q) - x * x));
        if (drill) return Math.max(rho - 1.4, (rho - 1.4 - 1.75 * x) / Math.hypot(1, 1.75));
        return Math.max(rho - 2, (rho - 1.5 - x / 4) / Math.hypot(1, 0.25), -x);
      };
      const least = (p: Vec3): number => {
        let best = { s: 0, value: Infinity };
        const look = (s: number) => {
          const value = out(p, s);
          if (value < best.value) best = { s, value };
        };
        for (let i = 0; i <= 200; i++) look(i / 200);
        for (let step = 1 / 400; step > 1e-7; step /= 2)
          for (const s of [best.s - step, best.s + step]) if (s >= 0 && s <= 1) look(s);
        return best.value;
      };
      const kind = mouth === bottom ? 'shift' : drill ? 'drill' : 'flat';
      for (let k = 0; k < 12; k++) {
        const { ef, em } = swept.frame;
        const start = along(
          along(along(from.bottom, from.a, pick(-1, depth + 1)), ef, pick(-2.5, 2.5)),
          em,
          pick(-2.5, 2.5),
        );
        const v = unit([pick(-1, 1), pick(-1, 1), pick(-0.3, 0.3)]);
        const found = swept.stretches(start, v);
        for (const end of found.flat().filter(Number.isFinite))
          worst[kind] = Math.max(worst[kind], Math.abs(least(along(start, v, end))));
        const holds = found.some(([lo, hi]) => lo <= 0 && hi >= 0);
        const inside = least(start);
        if (Math.abs(inside) > 0.003) expect(holds).toBe(inside < 0);
        if (Math.abs(inside) > 1e-6) expect(swept.contains(start)).toBe(inside < 0);
      }
    }
    console.log(`off the surface, mm: ${JSON.stringify(worst)}`);
    expect(worst.shift).toBeLessThan(1e-9);
    expect(worst.drill).toBeLessThan(3e-4);
    expect(worst.flat).toBeLessThan(4e-3);
  });

  it('contains and stretches agree in whole holes', () => {
    const random = seeded(12);
    let held = 0;
    for (let n = 0; n < 25; n++) {
      const plan = seriesPlan(300 + n, n % 10);
      const { ridge } = solidsOf(plan.site);
      const hole = holeOf(ridge, GENERIC_KIT, randomPasses(random, plan));
      if (hole.bodies.length === 0) continue;
      const { bottom, a, mouth } = hole.bodies[0].axisAt(0);
      for (let k = 0; k < 60; k++) {
        const p = along(bottom, sub(mouth, bottom), 1.2 * random()).map(
          (x) => x + 3 * random() - 1.5,
        ) as never;
        const v = unit(along([random() - 0.5, random() - 0.5, random() - 0.5], a, 0.1));
        const found = hole.stretches(p, v);
        const holds = found.some(([lo, hi]) => lo <= 0 && hi >= 0);
        const edge = Math.min(...found.flat().map(Math.abs), Infinity);
        if (edge > 0.02) expect(hole.contains(p), `${n} ${k}`).toBe(holds);
        if (holds) held++;
        for (let i = 0; i + 1 < found.length; i++) expect(found[i][1]).toBeLessThan(found[i + 1][0]);
      }
    }
    expect(held).toBeGreaterThan(200);
  });
});

describe('what is drawn', () => {
  const upright: Plane = { origin: [0, 0, 0], x: [0, 1, 0], y: [0, 0, 1] };
  const areas = (hole: PassBody, plane: Plane, top: number) =>
    outlineInPlane(hole, plane, top).map((loop) => Math.abs(loopArea(loop)));

  it('through the axis: rectangle 2 r (h + top) and triangle r y; beside it by 0.6: half-width 0.8', () => {
    expect(areas(body(), upright, 1)[0]).toBeCloseTo(2 * 11 + 0.5774, 2);
    const beside = areas(body(), { ...upright, origin: [0.6, 0, 0] }, 1)[0];
    // Below the full diameter the hyperbola x = √((1 − z/y)² − 0.36), z to 0.4 y: ∫ by Simpson in 2000 steps.
    let tip = 0;
    for (let i = 0; i <= 2000; i++) {
      const w = i === 0 || i === 2000 ? 1 : i % 2 ? 4 : 2;
      tip += (w * 2 * Math.sqrt(Math.max(0, (1 - (0.4 * i) / 2000) ** 2 - 0.36)) * 0.4 * 0.57735) / 6000;
    }
    expect(Math.abs(beside - 1.6 * 11 - tip)).toBeLessThan(0.02);
  });

  it('across the axis a circle, pressed by 0.5 a stadium; past the hole nothing', () => {
    const across: Plane = { origin: [0, 0, -4], x: [1, 0, 0], y: [0, 1, 0] };
    expect(areas(body(), across, 1)[0]).toBeCloseTo(Math.PI, 1);
    const press = { toward: 30, mouth: 0.5, bottom: 0.5 };
    expect(Math.abs(areas(body({ press }), across, 1)[0] - Math.PI - 1)).toBeLessThan(0.02);
    expect(areas(body(), { ...across, origin: [0, 0, -11] }, 1)).toHaveLength(0);
    expect(areas(body(), { ...upright, origin: [1.1, 0, 0] }, 1)).toHaveLength(0);
  });

  it('points of an outline stand within 0.01 mm of the body, and its middles too', () => {
    const random = seeded(5);
    for (let n = 0; n < 30; n++) {
      const plan = seriesPlan(50 + n, n % 10);
      const { ridge } = solidsOf(plan.site);
      for (const one of holeOf(ridge, GENERIC_KIT, randomPasses(random, plan)).bodies) {
        const { ef, em, a } = one.frame;
        const plane: Plane = { origin: one.entry.point, x: n % 2 ? ef : em, y: a };
        const top = one.entry.point[2] + 1.5;
        const [loop] = outlineInPlane(one, plane, top);
        expect(loop).toBeDefined();
        loop.forEach(([x, y], i) => {
          const [u, w] = loop[(i + 1) % loop.length];
          const p = onPlane(plane, (x + u) / 2, (y + w) / 2);
          const off = p[2] > top - 0.01 ? 0 : Math.abs(one.signed(p));
          expect(off, `${n} ${i}`).toBeLessThan(0.01);
        });
      }
    }
  });

  it('hull points lie on the body', () => {
    for (const press of [
      null,
      { toward: 20, mouth: 0.4, bottom: 0.4 },
      { toward: 200, mouth: 0.5, bottom: -0.2 },
    ])
      for (const p of sweptHull(body({ press, fp: 20 }), 24, 2).flat())
        expect(body({ press, fp: 20 }).signed(p)).toBeLessThan(1e-9);
  });
});

describe('mirror', () => {
  it('sites 11 and 21 give the same hole', () => {
    const random = seeded(31);
    const plan = seriesPlan(8, 0);
    const passes = randomPasses(random, plan);
    const [right, left] = ([11, 21] as const).map((tooth) => {
      const anatomy = solidsOf({ ...plan.site, tooth });
      const hole = holeOf(anatomy.ridge, GENERIC_KIT, passes);
      return { volume: holeVolume(anatomy, hole.bodies), entries: hole.bodies.map((b) => b.entry) };
    });
    expect(left.volume).toBeCloseTo(right.volume, 9);
    expect(left.entries).toEqual(right.entries);
  });
});
