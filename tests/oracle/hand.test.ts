/**
 * The oracle proved against answers worked by hand. Sources: the slab formulas of the model's definitions (plane geometry), the
 * handbook areas of cylinder and frustum, and the two worked numbers −0.936 and −0.879.
 */
import { describe, expect, it } from 'vitest';
import type { SocketState } from '../../src/core/anatomy/site.ts';
import type { ReadingId } from '../../src/core/measure/reading.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { Ground } from './model.ts';
import { monotoneCubic, RAD, seeded, size, step, tan } from './numbers.ts';
import { Root } from './obstacles.ts';
import { randomSite, slabPlan } from './plans.ts';
import { type Answers, groundOf, oracleProfile, oracleReadings, placedOf } from './readings.ts';

const answered = new WeakMap<Plan, Answers>();

const value = (plan: Plan, id: ReadingId): number => {
  const answers = answered.get(plan) ?? oracleReadings(plan);
  answered.set(plan, answers);
  const found = answers.get(id);
  if (found === null || found === undefined) throw new Error(`${id} is not applicable`);
  return found;
};

describe('slab and cylinder', () => {
  it('upright and centred: walls 2.0, true 2.0, centring 0 (7.5 / 2 − 1.75)', () => {
    const plan = slabPlan({ width: 7.5, radius: 1.75 });
    for (const side of ['facial', 'palatal'] as const) {
      for (const where of ['1mm', '3mm', '5mm', 'apex', 'thinnest', 'true'] as const) {
        expect(value(plan, `${side}-wall-${where}`)).toBeCloseTo(2, 6);
      }
    }
    expect(value(plan, 'centring-crest')).toBeCloseTo(0, 6);
    expect(value(plan, 'bone-contact')).toBeCloseTo(100, 6);
    expect(value(plan, 'shoulder-to-crest-facial')).toBeCloseTo(0, 6);
  });

  it('profile (W/2 − f(s)) / cos τ − r over both tilts and offsets', () => {
    const random = seeded(41);
    for (let i = 0; i < 40; i += 1) {
      const tilt = { faciopalatal: -25 + 50 * random(), mesiodistal: -15 + 30 * random() };
      const f0 = -0.8 + 1.6 * random();
      const plan = slabPlan({ width: 9, radius: 1.5, tilt, f0, length: 9 });
      const tau = Math.asin(placedOf(plan).axis.a[1]);
      for (const side of ['facial', 'palatal'] as const) {
        const sign = side === 'facial' ? 1 : -1;
        for (const t of [2, 4, 6, 9]) {
          const wall = (4.5 - sign * (f0 - t * Math.sin(tau))) / Math.cos(tau) - 1.5;
          expect(oracleProfile(plan, side, t).wall).toBeCloseTo(wall, 6);
        }
      }
    }
  });

  it('true distance (W/2 − f(s)) − r cos τ at the thinner end of the counting window', () => {
    const random = seeded(42);
    for (let i = 0; i < 12; i += 1) {
      const tilt = { faciopalatal: -25 + 50 * random(), mesiodistal: 0 };
      const f0 = -0.8 + 1.6 * random();
      const plan = slabPlan({ width: 9, radius: 1.5, tilt, f0, length: 9 });
      const tau = tilt.faciopalatal * RAD;
      for (const side of ['facial', 'palatal'] as const) {
        const sign = side === 'facial' ? 1 : -1;
        // The generatrix at ±e_f is 1 mm below the crest where t cos τ ± r sin τ = 1.
        const first = (1 - sign * 1.5 * Math.sin(tau)) / Math.cos(tau);
        const at = (t: number): number => 4.5 - sign * (f0 - t * Math.sin(tau)) - 1.5 * Math.cos(tau);
        const expected = Math.min(at(Math.max(0, first)), at(9));
        expect(value(plan, `${side}-wall-true`)).toBeCloseTo(expected, 4);
      }
    }
  });

  it('a facial plane 1.0 mm from the axis, r 2, τ 20°: profile 1/cos 20° − 2 = −0.936, true 1.0 − 2 cos 20° = −0.879', () => {
    // The axis stands 1.0 mm inside the plane f = 5 at s = 5, and the margin is such that counting begins at that level.
    const tilt = { faciopalatal: 20, mesiodistal: 0 };
    const s = Math.sin(20 * RAD);
    const c = Math.cos(20 * RAD);
    const plan = slabPlan({ width: 10, radius: 2, tilt, f0: 4 + 5 * s, length: 10 });
    const profile = oracleProfile(plan, 'facial', 5).wall;
    expect(profile).toBeCloseTo(1 / c - 2, 6);
    expect(profile).toBeCloseTo(-0.936, 3);
    const found = value({ ...plan, crestMargin: 5 * c + 2 * s }, 'facial-wall-true');
    expect(found).toBeCloseTo(1 - 2 * c, 4);
    expect(found).toBeCloseTo(-0.879, 3);
  });

  it('advance by d moves the shoulder by −d (straight neck, flat crest)', () => {
    const up = slabPlan({ width: 8, radius: 1.5 });
    const down = slabPlan({ width: 8, radius: 1.5, depth: 1.3 });
    for (const way of ['facial', 'palatal', 'mesial', 'distal'] as const) {
      expect(value(down, `shoulder-to-crest-${way}`) - value(up, `shoulder-to-crest-${way}`)).toBeCloseTo(
        -1.3,
        6,
      );
    }
  });

  it('a slab that leans: an implant along its axis reads what the upright pair reads', () => {
    const tilt = { faciopalatal: 28, mesiodistal: 0 };
    const plan = slabPlan({ width: 7.5, radius: 1.75, tilt, inclination: 28 });
    expect(value(plan, 'facial-wall-true')).toBeCloseTo(2, 6);
    expect(value(plan, 'palatal-wall-3mm')).toBeCloseTo(2, 6);
    expect(value(plan, 'axis-to-ridge-total')).toBeCloseTo(0, 9);
  });

  it('half of a cylinder outside a plane through its axis: half its area, contact 50 %, all threads of one generatrix', () => {
    const plan = slabPlan({ width: 8, radius: 1.5, f0: 4, length: 10 });
    const area = 2 * Math.PI * 1.5 * 10;
    expect(value(plan, 'exposure-dehiscence')).toBeCloseTo(area / 2, 1);
    expect(value(plan, 'bone-contact')).toBeCloseTo(50, 1);
    expect(value(plan, 'exposed-threads')).toBeCloseTo(10 / 0.8, 4);
  });

  it('frustum: the whole threaded area is π (R + r) s and the cylinder 2πRh (handbook)', () => {
    const base = slabPlan({ width: 8, radius: 2, f0: 40, length: 10 });
    const plan: Plan = { ...base, implant: { ...base.implant, apicalDiameter: 2, taperLength: 6 } };
    const slant = Math.hypot(6, 1);
    const whole = Math.PI * (2 + 1) * slant + 2 * Math.PI * 2 * 4;
    expect(value(plan, 'exposure-dehiscence')).toBeCloseTo(whole, 3);
  });
});

describe('fresh socket', () => {
  const socket = (dehiscence: number): SocketState => ({
    kind: 'socket',
    axis: { faciopalatal: 0, mesiodistal: 0 },
    width: 6,
    breadth: 7,
    depth: 12,
    parallel: 8,
    wall: { thickness: 0.8, level: 2 },
    dehiscence: { depth: dehiscence, width: 4 },
  });

  it('gap 2.0 and wall 0.8: wall 0.8, gap 2.0', () => {
    // Slab 10: facial sheet at 5, wall 0.8, so the void's facial side at 4.2; envelope's at 2.2: axis at 0.7, r 1.5.
    const plan = slabPlan({ width: 10, radius: 1.5, f0: 0.7, state: socket(0) });
    const at = oracleProfile(plan, 'facial', 3);
    expect(at.wall).toBeCloseTo(0.8, 5);
    expect(at.gap).toBeCloseTo(2, 5);
    expect(value(plan, 'socket-gap-facial')).toBeCloseTo(2, 5);
    expect(value(plan, 'facial-wall-3mm')).toBeCloseTo(0.8, 5);
    expect(oracleReadings(plan).get('facial-wall-true')).toBeNull();
    // Below the socket the bone is whole: 5 − 0.7 − 1.5.
    const deep = slabPlan({ width: 10, radius: 1.5, f0: 0.7, state: socket(0), length: 14 });
    expect(oracleProfile(deep, 'facial', 13).wall).toBeCloseTo(2.8, 6);
  });

  it('a dehiscence takes the wall away down to its depth', () => {
    const plan = slabPlan({ width: 10, radius: 1.5, f0: 0.7, state: socket(5) });
    expect(oracleProfile(plan, 'facial', 3).wall).toBeCloseTo(0, 5);
    expect(oracleProfile(plan, 'facial', 5.1).wall).toBeCloseTo(0.8, 5);
    expect(oracleProfile(plan, 'facial', 3).gap).toBeCloseTo(2.8, 5);
  });
});

describe('parts of the oracle', () => {
  it('the entered widths are the surface’s, undercut and rounding or not', () => {
    const random = seeded(5);
    for (let i = 0; i < 16; i += 1) {
      const site = randomSite(random, i);
      const g = new Ground(site);
      // Over the site the roots' eminences reach in by at most their own tails: taken away to see the entries alone.
      const bare = new Ground({ ...site, ridge: { ...site.ridge, eminence: { height: 0, halfWidth: 3 } } });
      for (const entry of site.ridge.widths) {
        for (const side of ['facial', 'palatal'] as const) {
          const p = bare.sheetPoint(side, 0, entry.depth);
          const [q, u, d] = g.section(p);
          expect(q).toBeCloseTo(0, 9);
          expect(d).toBeCloseTo(entry.depth, 9);
          expect(Math.abs(u)).toBeCloseTo(entry[side], 9);
        }
      }
    }
  });

  it('the ridge solid and the sheets say the same of points below the crest', () => {
    const random = seeded(9);
    const g = groundOf(slabPlan({ width: 7, radius: 1.5, inclination: 20 }));
    for (let i = 0; i < 400; i += 1) {
      const p = g.place(-3 + 6 * random(), -6 + 12 * random(), -2 + 12 * random());
      const [, , d] = g.section(p);
      const within = d >= 0 && g.beyond('facial', p) <= 0 && g.beyond('palatal', p) <= 0;
      expect(g.inRidge(p)).toBe(within);
    }
  });

  it('neighbours stand so that their contacts bound the gap, and the curved arch turns them', () => {
    const random = seeded(3);
    for (let i = 0; i < 16; i += 1) {
      const site = randomSite(random, i);
      const g = new Ground(site);
      expect(g.mesial.contact[0]).toBeCloseTo(site.gap / 2, 6);
      expect(g.distal.contact[0]).toBeCloseTo(-site.gap / 2, 6);
    }
  });

  it('distance to a half-ellipsoid that is a hemisphere: |p| − R, and to the rim from above', () => {
    const plan = slabPlan({ width: 8, radius: 1.5 });
    const tooth = groundOf(plan).mesial;
    const ball = new Root({
      ...tooth,
      numbers: { ...tooth.numbers, cervixWidth: 6, cervixDepth: 6, rootLength: 3 },
    });
    const from = (x: number, y: number, z: number) =>
      [tooth.origin[0] + x, tooth.origin[1] + y, tooth.origin[2] + z] as const;
    expect(ball.signed(from(3, 4, -12))).toBeCloseTo(13 - 3, 5);
    expect(ball.signed(from(1, 0.5, -1))).toBeCloseTo(size([1, 0.5, 1]) - 3, 5);
    expect(ball.signed(from(6, 0, 4))).toBeCloseTo(5, 4);
  });

  it('the monotone cubic passes through its knots, never overshoots, and has the slopes of the published formulas', () => {
    // Worked from the formulas in Fritsch and Butland, SIAM J. Sci. Stat. Comput. 1984;5:300: knots 0, 1, 3, values 0, 1, 1.5, secants
    // 1 and 0.25. Inside (3 h₀ + 3 h₁ = 9): weights w1 = 2·2 + 1 = 5, w2 = 2 + 2·1 = 4; end: ((2·1 + 2)·1 − 1·0.25) / 3.
    const f = monotoneCubic([0, 1, 3], [0, 1, 1.5]);
    const middle = 9 / (5 / 1 + 4 / 0.25);
    const h = 1e-6;
    expect((f(1 + h) - f(1 - h)) / (2 * h)).toBeCloseTo(middle, 5);
    expect((f(h) - f(0)) / h).toBeCloseTo((4 * 1 - 0.25) / 3, 4);
    expect(f(3)).toBeCloseTo(1.5, 12);
    expect(f(-1)).toBe(0);
    expect(f(4) - f(3)).toBeCloseTo((f(3) - f(3 - h)) / h, 4);
    for (let x = 0; x < 3; x += 0.01) expect(f(x + 0.01)).toBeGreaterThanOrEqual(f(x));
    expect(step(0.5, 0, 1)).toBe(0.5);
  });

  it('tan of the projected angles makes the axis', () => {
    const { a } = placedOf(
      slabPlan({ width: 8, radius: 1, tilt: { faciopalatal: 20, mesiodistal: 10 } }),
    ).axis;
    expect(a[1] / a[2]).toBeCloseTo(tan(20), 12);
    expect(a[0] / a[2]).toBeCloseTo(tan(10), 12);
  });
});
