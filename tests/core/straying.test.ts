import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pose } from '../../src/core/geometry/pose.ts';
import { libraryShape } from '../../src/core/implant/library.ts';
import { totalLength } from '../../src/core/implant/shape.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { CLOUD, searchCloud, straysOf } from '../../src/core/spread/cloud.ts';
import { deviation } from '../../src/core/spread/deviation.ts';
import { type Forgiving, roomOf, searchForgiving } from '../../src/core/spread/forgiving.ts';
import { normalPoints, normalQuantile } from '../../src/core/spread/normals.ts';
import {
  type Hand,
  handFromMeans,
  ownHand,
  STRAYS,
  type Stray,
  strayedPose,
  strayOf,
} from '../../src/core/spread/straying.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { SITES_DEMO, slabSite } from '../support/demoPlans.ts';

function last<T>(search: Generator<unknown, T>): T {
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

const NO_STRAY: Stray = {
  faciopalatal: 0,
  mesiodistal: 0,
  depth: 0,
  tiltFaciopalatal: 0,
  tiltMesiodistal: 0,
};
const handOf = (sd: Partial<Stray>): Hand => ({ mean: NO_STRAY, sd: { ...NO_STRAY, ...sd } });
const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;

describe('a hand (rule H1)', () => {
  it.each([
    // Table of the standard normal distribution (handbook): Φ(z).
    [0.5, 0],
    [0.8413447, 1],
    [0.9772499, 2],
    [0.9986501, 3],
    [0.975, 1.959964],
    [0.995, 2.575829],
    [1e-6, -4.753424],
  ])('has normal values: Φ⁻¹(%f) = %f', (p, z) => {
    expect(normalQuantile(p)).toBeCloseTo(z, 5);
    expect(normalQuantile(1 - p)).toBeCloseTo(-z, 5);
  });

  it('strays by points that have mean 0, SD 1 and no correlation', () => {
    const points = normalPoints(CLOUD, STRAYS.length);
    for (let i = 0; i < STRAYS.length; i++) {
      expect(Math.abs(mean(points.map((point) => point[i])))).toBeLessThan(1e-9);
      for (let j = 0; j <= i; j++) {
        const moment = mean(points.map((point) => point[i] * point[j]));
        expect(Math.abs(moment - (i === j ? 1 : 0))).toBeLessThan(1e-9);
      }
    }
  });

  it.each([
    // Entry, apex, angle as published (reference values 4.1, 6.1): Tahmaseb 2018; the tapered study, whose implants were about 13 long.
    ['20 studies', 1.2, 3.5, 11, 1.4],
    ['tapered bodies', 0.94, 4.1, 13, 1.36],
  ])(
    'gives back the means it was made of, and the published apex: %s',
    (_, platform, angle, length, apex) => {
      const planned: Pose = {
        platform: { m: 0, f: 0, c: 0 },
        tilt: { faciopalatal: 0, mesiodistal: 0 },
        roll: 0,
      };
      const found = straysOf(handFromMeans(platform, angle), 2000).map((stray) =>
        deviation(planned, strayedPose(planned, stray), length, 0),
      );
      expect(mean(found.map(({ coronal }) => coronal.global))).toBeCloseTo(platform, 1);
      expect(Math.abs(mean(found.map((d) => d.angle)) / angle - 1)).toBeLessThan(0.02);
      expect(Math.abs(mean(found.map(({ apical }) => apical.global)) - apex)).toBeLessThan(0.12);
    },
  );

  const small = fc.double({ min: -2, max: 2, noNaN: true });
  // Within what a plan file may hold for every demo plan.
  const tilt = fc.double({ min: -8, max: 8, noNaN: true });
  const strays = fc.record({
    faciopalatal: small,
    mesiodistal: small,
    depth: small,
    tiltFaciopalatal: tilt,
    tiltMesiodistal: tilt,
  });

  it('puts an implant where the definition of the studies finds it again', () => {
    fc.assert(
      fc.property(strays, fc.integer({ min: 0, max: DEMO_PLANS.length - 1 }), (stray, i) => {
        const { pose, implant } = DEMO_PLANS[i].plan;
        const found = strayOf(deviation(pose, strayedPose(pose, stray), totalLength(implant), 0));
        for (const key of STRAYS) expect(found[key]).toBeCloseTo(stray[key], 5);
      }),
      { numRuns: 200 },
    );
  });

  it('is known from two attempts on, by their own means and SDs', () => {
    const { pose, implant } = DEMO_PLANS[0].plan;
    const attempt = (stray: Partial<Stray>) => ({
      way: 'bench' as const,
      deviation: deviation(
        pose,
        strayedPose(pose, { ...NO_STRAY, ...stray }),
        totalLength(implant),
        implant.index,
      ),
    });
    const attempts = [1, 2, 6].map((facial) =>
      attempt({ faciopalatal: facial / 10, tiltFaciopalatal: facial }),
    );
    expect(ownHand(attempts.slice(0, 1), 'bench')).toBeNull();
    expect(ownHand(attempts, 'screen')).toBeNull();
    const own = ownHand(attempts, 'bench');
    // By hand: mean of 1, 2, 6 is 3, SD √7.
    expect(own?.mean.faciopalatal).toBeCloseTo(0.3, 9);
    expect(own?.sd.faciopalatal).toBeCloseTo(Math.sqrt(7) / 10, 9);
    expect(own?.mean.tiltFaciopalatal).toBeCloseTo(3, 6);
    expect(own?.sd.tiltFaciopalatal).toBeCloseTo(Math.sqrt(7), 6);
    expect(own?.sd.depth).toBeCloseTo(0, 9);
  });
});

/** The slab: 7.5 wide with upright faces, a parallel implant of 3.5 upright in it, so that a wall is (7.5 − 3.5)/2 ∓ shift. */
const slabPlan = (facial: number): Plan => ({
  ...SITES_DEMO[4].plan,
  site: { ...slabSite(), gap: 8 },
  implant: libraryShape('parallel-straight-35x11') ?? SITES_DEMO[4].plan.implant,
  pose: {
    platform: { m: 0, f: facial, c: -0.5 },
    tilt: { faciopalatal: 0, mesiodistal: 0 },
    roll: 0,
  },
});

describe('the cloud (rule H2)', () => {
  it.each([0.5, 1])('breaks a wall of the slab as often as the normal table says, SD %f', (sd) => {
    const plan = slabPlan(0.4);
    const reading = readingOf(evaluate(plan).readings, 'facial-wall-3mm');
    const limit = reading.limit?.bands.low?.beyond ?? Number.NaN;
    // By hand: the wall is 2.0 − 0.4, and a facial stray takes of it as much as it goes.
    expect(reading.value).toBeCloseTo(1.6, 6);
    const z = (1.6 - limit) / sd;
    const cloud = last(searchCloud(plan, handOf({ faciopalatal: sd })));
    const share = cloud.crossed.find(({ id }) => id === 'facial-wall-3mm')?.share ?? 0;
    // Φ(−z), read off by counting a fine grid of the distribution.
    const grid = Array.from({ length: 100_000 }, (_, i) => normalQuantile((i + 0.5) / 100_000));
    const expected = grid.filter((x) => x < -z).length / grid.length;
    expect(Math.abs(share - expected)).toBeLessThan(0.015);
    expect(cloud.placed).toHaveLength(CLOUD);
  });

  it('counts nothing where the hand never strays, and what the site itself breaks is left out', () => {
    const cloud = last(searchCloud(slabPlan(0), handOf({}), 20));
    const { readings } = evaluate(slabPlan(0));
    expect(readings.some(({ id, status }) => id === 'contact-to-crest-mesial' && status === 'beyond')).toBe(
      true,
    );
    expect(cloud).toMatchObject({ crossed: [], any: 0 });
  });
});

/** The worst of margin / SD by a route of its own: SDs from a cloud of the readings themselves. */
function worstByCloud(plan: Plan, hand: Hand): number {
  const here = evaluate(plan).readings;
  const rooms = straysOf(hand, 100).map((stray) =>
    evaluate({ ...plan, pose: strayedPose(plan.pose, stray) }).readings.map(roomOf),
  );
  const scores = here.flatMap((reading, i) => {
    const room = roomOf(reading);
    if (room === null) return [];
    const values = rooms.map((all) => all[i]).filter((value) => value !== null);
    const middle = mean(values);
    const sd = Math.sqrt(mean(values.map((value) => (value - middle) ** 2)));
    return sd < 1e-2 ? [] : [room / sd];
  });
  return Math.min(...scores);
}

describe('what forgives most (rule H3)', () => {
  it('is the middle between two limits, where only they hold it: worked by hand on the slab', () => {
    const hand = handOf({ faciopalatal: 0.5 });
    const { readings } = evaluate(slabPlan(0.7));
    const bound = (id: 'facial-wall-3mm' | 'palatal-wall-3mm') =>
      readingOf(readings, id).limit?.bands.low?.beyond;
    expect([bound('facial-wall-3mm'), bound('palatal-wall-3mm')]).toEqual([1, 0]);
    // By hand: 2 − f is to be as far above 1 as 2 + f above 0, so f = −0.5, and both walls are 1.5 from their bounds, three SDs.
    const found = last(searchForgiving(slabPlan(0.7), hand)) as Forgiving;
    expect(found.pose.platform.f).toBeCloseTo(-0.5, 2);
    expect(found.after.score).toBeCloseTo(3, 2);
    // It began 0.3 from the facial bound.
    expect(found.before.score).toBeCloseTo(0.6, 2);
    expect(found.before.id).toMatch(/^facial-wall/);
  });

  it.each([2, 3])('is no worse than the plan, by a route of its own too: demo %i', (i) => {
    const { plan } = DEMO_PLANS[i];
    const hand = handFromMeans(1.1, 6);
    const found = last(searchForgiving(plan, hand)) as Forgiving;
    expect(found.after.score).toBeGreaterThanOrEqual(found.before.score);
    const better = { ...plan, pose: found.pose };
    expect(found.pose.roll).toBe(plan.pose.roll);
    if (found.after.score > found.before.score + 0.1) {
      expect(worstByCloud(better, hand)).toBeGreaterThan(worstByCloud(plan, hand) - 0.05);
    }
  });
});
