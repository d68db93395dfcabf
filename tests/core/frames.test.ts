/**
 * Frames, signs and angles. Sources: ISO 3950 (two-digit codes), the standard mapping to Universal numbers, plane trigonometry, and the worked
 * numbers and published rows named beside each check.
 */
import { describe, expect, it } from 'vitest';
import { anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { archOf, fromArch, toArch } from '../../src/core/anatomy/arch.ts';
import { classOf } from '../../src/core/anatomy/landmarks.ts';
import { SITES, type SiteCode } from '../../src/core/anatomy/site.ts';
import {
  axisFrame,
  axisOf,
  entryOf,
  markOf,
  type Pose,
  tiltOf,
  trueTilt,
} from '../../src/core/geometry/pose.ts';
import { angleBetween, cross, dot, norm, type Vec3 } from '../../src/core/geometry/vec.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { advance, shift, tiltTo } from '../../src/core/plan/edits.ts';
import { deviation, lateralInShoulderPlane } from '../../src/core/spread/deviation.ts';
import { slabPlan } from '../support/slabs.ts';

const sin = (degrees: number) => Math.sin((degrees * Math.PI) / 180);
const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);
const near = (found: Vec3, wanted: Vec3, digits = 9) => {
  for (let i = 0; i < 3; i++) expect(found[i]).toBeCloseTo(wanted[i], digits);
};

describe('teeth by ISO 3950', () => {
  // Second digit counts from the midline: 1 central, 2 lateral, 3 canine, 4 and 5 premolars; first digit 1 upper right, 2 upper left.
  it.each([
    [11, 'central'],
    [12, 'lateral'],
    [13, 'canine'],
    [14, 'premolar1'],
    [15, 'premolar2'],
    [21, 'central'],
    [22, 'lateral'],
    [23, 'canine'],
    [24, 'premolar1'],
    [25, 'premolar2'],
  ] as const)('%i is a %s', (code, cls) => expect(classOf(code)).toBe(cls));

  it('supports exactly the upper front and first premolars', () => {
    expect([...SITES]).toEqual([11, 12, 13, 14, 21, 22, 23, 24]);
  });

  it.each([10, 16, 18, 20, 29])('knows no tooth %i', (code) =>
    expect(() => classOf(code)).toThrow(RangeError),
  );

  // The neighbours in the mouth: of 11 they are 21 and 12; of 14 they are 13 and 15; and mirrored.
  it.each([
    [11, 21, 12],
    [12, 11, 13],
    [13, 12, 14],
    [14, 13, 15],
    [21, 11, 22],
    [22, 21, 23],
    [23, 22, 24],
    [24, 23, 25],
  ] as const)('of %i the mesial neighbour is %i, the distal %i', (tooth, mesial, distal) => {
    const { teeth } = anatomyOf(defaultSite(tooth));
    expect([teeth.mesial.code, teeth.distal.code]).toEqual([mesial, distal]);
  });

  // The patient's right is quadrant 1; x points to the patient's left (F1), so 11–14 stand at x < 0, 21–24 mirrored at x > 0.
  it.each([
    [11, 21],
    [12, 22],
    [13, 23],
    [14, 24],
  ] as const)('%i and %i are mirror images in the jaw frame', (right, left) => {
    const r = anatomyOf(defaultSite(right));
    const l = anatomyOf(defaultSite(left));
    for (const p of [[0, 0, 0], [2, 1, -5], r.teeth.mesial.origin, r.teeth.distal.root.apex] as Vec3[]) {
      const [x, y, z] = r.toJaw(p);
      near(l.toJaw(p), [-x, y, z], 12);
    }
    expect(r.toJaw([0, 0, 0])[0]).toBeLessThan(0);
    expect(l.toJaw([0, 0, 0])[0]).toBeGreaterThan(0);
  });

  it('goes distally from 11 to 14: each further from the midline and further back', () => {
    const at = ([11, 12, 13, 14] as SiteCode[]).map((t) => anatomyOf(defaultSite(t)).toJaw([0, 0, 0]));
    for (let i = 1; i < 4; i++) {
      expect(at[i][0]).toBeLessThan(at[i - 1][0]);
      expect(at[i][1]).toBeLessThan(at[i - 1][1]);
    }
  });

  it('has m toward the midline, f away from the arch’s middle, c toward the edges', () => {
    for (const tooth of SITES) {
      const { toJaw, toJawDirection, teeth } = anatomyOf(defaultSite(tooth));
      const [x] = toJaw([0, 0, 0]);
      expect(Math.abs(toJaw([1, 0, 0])[0])).toBeLessThan(Math.abs(x));
      near(toJawDirection([0, 0, 1]), [0, 0, 1]);
      expect(toJawDirection([0, 1, 0])[1]).toBeGreaterThan(0);
      // Crowns stand coronal of the bone, roots run apically.
      expect(teeth.mesial.marks.tip[2]).toBeGreaterThan(teeth.mesial.origin[2]);
      expect(teeth.mesial.root.apex[2]).toBeLessThan(teeth.mesial.origin[2]);
      // A right-handed jaw frame: (m, f, c) is right-handed on one side of the arch and left-handed on the other (F2).
      const handed = dot(cross(toJawDirection([1, 0, 0]), toJawDirection([0, 1, 0])), [0, 0, 1]);
      expect(handed).toBeCloseTo(tooth < 20 ? 1 : -1, 12);
    }
  });
});

describe('the arch', () => {
  it('has the radius of a circle through its chord and sagitta: (w²/4 + h²)/(2h)', () => {
    // Handbook: chord 34, sagitta 6: (289 + 36)/12 = 27.083333; chord 2h over a half-circle: R = h.
    expect(archOf({ width: 34, depth: 6 }).radius).toBeCloseTo(27.083333, 6);
    expect(archOf({ width: 40, depth: 20 }).radius).toBeCloseTo(20, 12);
    expect(archOf({ width: 40, depth: 0 }).radius).toBe(Number.POSITIVE_INFINITY);
  });

  it('reads a quarter of a circle of radius 20: 10π along it, −20 in the middle of it', () => {
    const arch = archOf({ width: 40, depth: 20 });
    near(fromArch(arch, 10 * Math.PI, 0, 3), [20, -20, 3]);
    const [q, e] = toArch(arch, [20, -20, 3]);
    expect(q).toBeCloseTo(10 * Math.PI, 9);
    expect(e).toBeCloseTo(0, 9);
    // 5 mm outside the arch on the same radius.
    near(fromArch(arch, 10 * Math.PI, 5, 0), [25, -20, 0]);
  });
});

describe('tilts', () => {
  // Worked numbers of the reference values 6.1: atan √(tan² a + tan² b).
  it.each([
    [5, 3, 5.823],
    [20, 5, 20.523],
    [0, 30, 30],
    [-10, 0, 10],
  ])('%d° facially and %d° mesially compose to %d°', (faciopalatal, mesiodistal, wanted) => {
    expect(trueTilt({ faciopalatal, mesiodistal })).toBeCloseTo(wanted, 3);
    const a = axisOf({ faciopalatal, mesiodistal });
    expect(angleBetween(a, [0, 0, 1])).toBeCloseTo(wanted, 3);
    expect(norm(a)).toBeCloseTo(1, 15);
  });

  it('come back from the axis as they went in', () => {
    for (const faciopalatal of [-10, 0, 17, 50])
      for (const mesiodistal of [-30, 0, 12, 30]) {
        const back = tiltOf(axisOf({ faciopalatal, mesiodistal }));
        expect(back.faciopalatal).toBeCloseTo(faciopalatal, 12);
        expect(back.mesiodistal).toBeCloseTo(mesiodistal, 12);
      }
  });

  it('+ leans the coronal end facially and mesially', () => {
    const a = axisOf({ faciopalatal: 20, mesiodistal: 10 });
    expect(a[0]).toBeGreaterThan(0);
    expect(a[1]).toBeGreaterThan(0);
    expect(a[2]).toBeGreaterThan(0);
  });

  it('carry a frame whose directions are perpendicular, facial and mesial', () => {
    for (const faciopalatal of [-10, 0, 25, 50])
      for (const mesiodistal of [-30, 0, 14, 30]) {
        const { a, ef, em } = axisFrame(axisOf({ faciopalatal, mesiodistal }));
        for (const v of [a, ef, em]) expect(norm(v)).toBeCloseTo(1, 14);
        for (const [v, w] of [
          [a, ef],
          [a, em],
          [ef, em],
        ])
          expect(dot(v, w)).toBeCloseTo(0, 14);
        expect(ef[1]).toBeGreaterThan(0);
        expect(em[0]).toBeGreaterThan(0);
      }
  });

  it('turn the mark from facial toward mesial', () => {
    const pose = (roll: number): Pose => ({
      platform: { m: 0, f: 0, c: 0 },
      tilt: { faciopalatal: 0, mesiodistal: 0 },
      roll,
    });
    near(markOf(pose(0)), [0, 1, 0], 14);
    near(markOf(pose(90)), [1, 0, 0], 14);
    near(markOf(pose(180)), [0, -1, 0], 14);
  });

  it('meet the crest’s plane at the entry: 3 below it, leaning 30° facially, 3 tan 30° facially of the platform', () => {
    const pose: Pose = {
      platform: { m: 1, f: 2, c: -3 },
      tilt: { faciopalatal: 30, mesiodistal: 0 },
      roll: 0,
    };
    near(entryOf(pose), [1, 2 + 3 * Math.tan(Math.PI / 6), 0]);
  });
});

describe('apex displacement by a tilt about the platform', () => {
  // Reference values 6.1: length, angle, L sin t, 2 L sin(t/2), L (1 − cos t).
  it.each([
    [10, 1, 0.175, 0.175, 0.0015],
    [10, 3.5, 0.61, 0.611, 0.0187],
    [10, 5, 0.872, 0.872, 0.0381],
    [13, 7.03, 1.591, 1.594, 0.0977],
    [11.5, 10, 1.997, 2.005, 0.1747],
  ])('length %d, %d°: lateral %d, in all %d, %d of depth lost', (length, angle, lateral, global, lost) => {
    const plan = slabPlan({ l: length });
    const tilted = tiltTo(plan, { faciopalatal: angle, mesiodistal: 0 }, 'platform');
    const { coronal, apical, angle: found } = deviation(plan.pose, tilted.pose, length, 0);
    expect(coronal.global).toBeCloseTo(0, 12);
    expect(found).toBeCloseTo(angle, 9);
    expect(apical.lateral).toBeCloseTo(lateral, 3);
    expect(apical.global).toBeCloseTo(global, 3);
    expect(apical.global).toBeCloseTo(2 * length * sin(angle / 2), 12);
    expect(-apical.depth).toBeCloseTo(lost, 4);
    // The coronal end leans facially, so the apex goes palatally.
    expect(apical.faciopalatal).toBeCloseTo(-apical.lateral, 12);
  });

  it('holds for a tilt of both planes from a leaning axis: 2 L sin(δ/2) with the true angle between the axes', () => {
    const from = slabPlan({ fp: 12, md: -5, l: 13 });
    const to = tiltTo(from, { faciopalatal: 21, mesiodistal: 4 }, 'platform');
    const delta = angleBetween(axisOf(from.pose.tilt), axisOf(to.pose.tilt));
    const { apical, angle } = deviation(from.pose, to.pose, 13, 0);
    expect(angle).toBeCloseTo(delta, 9);
    expect(apical.global).toBeCloseTo(26 * sin(delta / 2), 9);
  });
});

describe('deviation of a placed implant', () => {
  const pose = (m: number, f: number, c: number, fp = 0, md = 0, roll = 0): Pose => ({
    platform: { m, f, c },
    tilt: { faciopalatal: fp, mesiodistal: md },
    roll,
  });

  it('gives the synthetic example of 6.2', () => {
    // There u = +z toward the apex, A = 0, B = (0.6, 0.3, 0.4), v = (sin 5°, 0, cos 5°), L = 10. Here z points coronally, so that c = −z and the apex
    // that goes toward +m means a coronal end that leans toward −m.
    const planned = pose(0, 0, 0);
    const placed = pose(0.6, 0.3, -0.4, 0, -5);
    const { coronal, apical, angle } = deviation(planned, placed, 10, 0);
    expect(coronal.global).toBeCloseTo(0.781, 4);
    expect(coronal.depth).toBeCloseTo(0.4, 12);
    expect(coronal.lateral).toBeCloseTo(0.6708, 4);
    expect(lateralInShoulderPlane(planned, placed)).toBeCloseTo(0.6397, 4);
    expect([apical.mesiodistal, apical.faciopalatal, apical.depth].map((x) => x.toFixed(4))).toEqual([
      '1.4716',
      '0.3000',
      '0.3619',
    ]);
    expect(apical.global).toBeCloseTo(1.5448, 4);
    expect(angle).toBeCloseTo(5, 9);
  });

  // Onclin, thesis p. 48, single placements: global, lateral, depth, printed to 0.1.
  it.each([
    [1.0, 0.8, 0.6],
    [1.2, 0.6, 1.0],
    [1.0, 0.9, 0.4],
    [0.9, 0.5, 0.7],
    [2.6, 2.6, 0.2],
    [1.9, 1.9, 0.1],
    [1.3, 0.8, 1.0],
    [1.5, 0.9, 1.2],
  ])(
    'makes of the published lateral and depth the published global %d (%d, %d)',
    (global, lateral, depth) => {
      // Planned 20° facially, so that neither part lies along a frame's direction; 0.05 as printed.
      const planned = pose(0.3, -0.5, 1, 20, 6);
      const { a, ef, em } = axisFrame(axisOf(planned.tilt));
      const at = (i: number) => [0.3, -0.5, 1][i] - depth * a[i] + lateral * (0.6 * ef[i] - 0.8 * em[i]);
      const placed = { ...planned, platform: { m: at(0), f: at(1), c: at(2) } };
      const { coronal } = deviation(planned, placed, 11, 0);
      expect(coronal.lateral).toBeCloseTo(lateral, 9);
      expect(coronal.depth).toBeCloseTo(depth, 9);
      expect(coronal.faciopalatal).toBeCloseTo(0.6 * lateral, 9);
      expect(coronal.mesiodistal).toBeCloseTo(-0.8 * lateral, 9);
      expect(coronal.global).toBeCloseTo(Math.hypot(lateral, depth), 12);
      expect(Math.abs(coronal.global - global)).toBeLessThan(0.05);
    },
  );

  it('keeps lateral² + depth² = global² for every pair of poses', () => {
    for (let i = 0; i < 200; i++) {
      const x = (k: number) => Math.sin(12.9898 * (i + 1) * k) * 2;
      const planned = pose(x(1), x(2), x(3), 20 + 8 * x(4), 8 * x(5));
      const placed = pose(x(6), x(7), x(8), 20 + 8 * x(9), 8 * x(10));
      const { coronal, apical } = deviation(planned, placed, 11, 0);
      for (const o of [coronal, apical]) {
        expect(Math.hypot(o.lateral, o.depth)).toBeCloseTo(o.global, 12);
        expect(Math.hypot(o.mesiodistal, o.faciopalatal)).toBeCloseTo(o.lateral, 12);
      }
    }
  });

  it('counts too deep as +, a shift facially and mesially as +', () => {
    const plan = slabPlan({ fp: 25 });
    expect(deviation(plan.pose, advance(plan, 1.5).pose, 11, 0).coronal).toMatchObject({
      depth: expect.closeTo(1.5, 9),
      lateral: expect.closeTo(0, 9),
    });
    const { coronal } = deviation(plan.pose, shift(plan, 0.4, 0.5).pose, 11, 0);
    expect(coronal.mesiodistal).toBeCloseTo(0.4, 9);
    // Across an axis that leans 25° a shift of 0.5 in the jaw's plane is 0.5 cos 25° across and −0.5 sin 25° deep.
    expect(coronal.faciopalatal).toBeCloseTo(0.5 * cos(25), 9);
    expect(coronal.depth).toBeCloseTo(-0.5 * sin(25), 9);
  });

  it('takes the roll modulo the neck', () => {
    const roll = (planned: number, placed: number, n: number) =>
      deviation(pose(0, 0, 0, 0, 0, planned), pose(0, 0, 0, 0, 0, placed), 11, n).roll;
    expect(roll(10, 30, 6)).toBeCloseTo(20, 9);
    expect(roll(10, 50, 6)).toBeCloseTo(-20, 9);
    expect(roll(0, 30, 6)).toBeCloseTo(30, 9); // half-way counts as +
    expect(roll(-170, 170, 1)).toBeCloseTo(-20, 9);
    expect(roll(0, 40, 0)).toBeNull();
  });

  it('plausibly adds up to the published apex: 1.2 mm at the entry and 3.5° over 10 mm give 1.35 mm by root sum of squares (6.1)', () => {
    const apex = Math.hypot(1.2, 2 * 10 * sin(3.5 / 2));
    expect(apex).toBeCloseTo(1.35, 2);
    // The same by poses: 1.2 across the plane of the tilt.
    const { apical } = deviation(pose(0, 0, 0), pose(1.2, 0, 0, 3.5), 10, 0);
    expect(apical.global).toBeCloseTo(apex, 9);
  });
});
