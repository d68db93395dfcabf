import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import {
  type ChainId,
  type DepthChain,
  depthChain,
  mouthDiameter,
} from '../../src/core/drilling/depthChain.ts';
import { depthAtMark } from '../../src/core/drilling/depthMark.ts';
import { depthStrip, type StripId } from '../../src/core/drilling/depthStrip.ts';
import { type DrillSite, drillSite } from '../../src/core/drilling/drillSite.ts';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import type { Drill } from '../../src/core/drilling/kit.ts';
import { along, distance, dot, sub } from '../../src/core/geometry/vec.ts';
import { libraryShape } from '../../src/core/implant/library.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import { solidsOf } from '../../src/core/plan/evaluate.ts';
import { boneLevel, drillPoints } from '../support/boneLevel.ts';
import { SITES_DEMO, slabSite } from '../support/demoPlans.ts';
import { libraryPlan, runs, within } from '../support/randomPlans.ts';

const [pilot] = GENERIC_KIT.drills;

interface SlabPlace {
  readonly shape?: ImplantShape;
  readonly f?: number;
  readonly c?: number;
  readonly fp?: number;
  /** Of the ridge, degrees. */
  readonly lean?: number;
}

/** An implant over a slab 8 mm wide and 18 high, gum 3 mm thick, CEJ 2 and margin 3 mm above the crest. */
function onSlab(place: SlabPlace = {}): DrillSite {
  const site = slabSite(8);
  const anatomy = anatomyOf({ ...site, ridge: { ...site.ridge, inclination: place.lean ?? 0 } });
  const shape = place.shape ?? (libraryShape('tapered-flared-30x11') as ImplantShape);
  const platform = { m: 0, f: place.f ?? 0, c: place.c ?? 0 };
  const tilt = { faciopalatal: place.fp ?? 0, mesiodistal: 0 };
  const at = new Placement(anatomy, shape, { platform, tilt, roll: 0 }, 1);
  return drillSite(at, boneLevel(at) as number);
}

const record = (chain: DepthChain, id: ChainId): number | undefined =>
  chain.records.find((r) => r.id === id)?.value;

describe('the depth chain worked by hand on a slab', () => {
  // Model 5 by hand: L_i 11, H_t 1.5, S 0.5, ρ 0.5, a 2.0 mm drill of 120° (y 0.577), gum 3.
  const site = onSlab({ c: 0.5 });
  const chain = depthChain(site, { drill: pilot, spare: 0.5, flap: true });
  it.each([
    ['last-thread', 1],
    ['apex', 12],
    ['full-depth', 12.5],
    ['tip', 13.077],
    ['mark', 12.5],
    ['mark-lower-edge', 12.5],
    ['mark-higher-edge', 12.5],
    ['shoulder-over-gum', -2.5],
    ['neck-shoulder-notch', 0.5],
    ['neck-base-notch', 1],
    ['mouth', 3.333],
    ['thumb', 13],
    ['thumb-spare', 1],
  ] as const)('%s is %s', (id, value) => {
    expect(record(chain, id)).toBeCloseTo(value, 3);
  });

  it('reads the mark at the gum where it is not laid back', () => {
    const closed = depthChain(site, { drill: pilot, spare: 0.5, flap: false });
    expect(closed.mark).toMatchObject({ read: 'gum', edges: null });
    expect(closed.mark.value).toBeCloseTo(15.5, 9);
    expect(closed.mark.after?.mark).toBe(14);
    expect(closed.mark.after?.past).toBeCloseTo(1.5, 9);
    expect(chain.mark).toMatchObject({ read: 'bone', beyond: 0 });
    expect(chain.mark.after?.mark).toBe(12);
  });

  it('adds the point where the marks count it', () => {
    const counting: Drill = { ...pilot, marksCountPoint: true };
    const counted = depthChain(site, { drill: counting, spare: 0.5, flap: true });
    expect(counted.mark.value).toBeCloseTo(13.077, 3);
    expect(counted.fullDepth).toBe(chain.fullDepth);
  });

  it('judges the tip by the floor’s own margin', () => {
    // 18 − 13.077: within the default 2 mm; a margin of 5 it misses, and at 19 mm of depth it is through.
    const [floor, seat] = chain.checks;
    expect(floor.value).toBeCloseTo(4.923, 3);
    expect(floor.status).toBe('within');
    expect(seat.value).toBeCloseTo(0.5, 9);
    const strict = depthChain(site, {
      drill: pilot,
      spare: 0.5,
      flap: true,
      floor: { low: { near: 5, beyond: 4 } },
    });
    expect(strict.checks[0].status).toBe('near');
    expect(depthChain(site, { drill: pilot, spare: 6.5, flap: true }).checks[0].status).toBe('beyond');
  });

  it('draws the strip in order', () => {
    const strip = depthStrip(site, chain, 2);
    const level = (id: StripId) => strip.find((l) => l.id === id)?.level;
    expect(level('planned-margin')).toBeCloseTo(-3, 6);
    expect(level('cej')).toBeCloseTo(-2, 6);
    expect(level('present-gum')).toBeCloseTo(-3, 6);
    expect(level('shoulder')).toBeCloseTo(-0.5, 6);
    expect(level('floor')).toBeCloseTo(18, 6);
    expect(level('floor-margin')).toBeCloseTo(16, 6);
    // The crest's edges stand a hundredth lower: its rounding is 0.05.
    expect(level('crest-facial')).toBeCloseTo(0, 1);
    expect(level('crest-palatal')).toBeCloseTo(0, 1);
  });

  it('has no neck and no rule of thumb for a shoulder at the bone', () => {
    const flat = depthChain(onSlab({ shape: libraryShape('parallel-straight-35x11'), c: -0.2 }), {
      drill: pilot,
      spare: 0,
      flap: true,
    });
    expect(flat.neck).toBeNull();
    expect(flat.thumb).toBeNull();
    expect(flat.fullDepth).toBeCloseTo(11.2, 9);
    expect(record(flat, 'thumb')).toBeUndefined();
  });

  // By hand: upright on a ridge that leans 20°, r 1 and 2.2: edges 2 r tan 20° apart.
  it.each([
    [2, 0.728],
    [4.4, 1.6015],
  ])('sets the edges of a %s mm hole %s mm apart on a crest of 20°', (diameter, apart) => {
    const { mark, fullDepth } = depthChain(onSlab({ lean: 20 }), {
      drill: { ...pilot, diameter },
      spare: 0,
      flap: true,
    });
    const { edges, read, value } = mark;
    expect((edges?.higher ?? 0) - (edges?.lower ?? 0)).toBeCloseTo(apart, 3);
    expect(read).toBe('lower-edge');
    expect(value).toBeCloseTo(fullDepth - apart / 2, 3);
  });

  it('reads the mark at the level of the crest over an open socket, where there is no edge of bone', () => {
    const { plan } = SITES_DEMO[1];
    const at = new Placement(solidsOf(plan.site), plan.implant, plan.pose, 1);
    const over = drillSite(at, boneLevel(at) as number);
    const { mark, fullDepth } = depthChain(over, { drill: pilot, spare: 0.5, flap: true });
    expect(mark).toMatchObject({ read: 'crest-level', edges: null, value: fullDepth });
    const healed = solidsOf({ ...plan.site, state: { kind: 'healed' } });
    const filled = new Placement(healed, plan.implant, plan.pose, 1);
    const bone = drillSite(filled, boneLevel(filled) as number);
    expect(depthChain(bone, { drill: pilot, spare: 0.5, flap: true }).mark.read).toBe('bone');
    expect(bone.entry).toBeCloseTo(over.entry, 9);
  });

  it('sees the gum longer along a leaning axis', () => {
    // By hand: the plane 3 mm above the crest, met at 20°: 3 / cos 20°.
    expect(onSlab({ fp: 20 }).gum).toBeCloseTo(3.1925, 3);
  });
});

describe('the mouth at the crest', () => {
  // Model 5: straight flare, the fraction clamped; H_t = 0: the shoulder's if S ≤ 0, else the neck's.
  it.each([
    [3, 4, 2, 0.5, 3.25],
    [3, 4, 2, 3, 4],
    [3, 4, 2, -1, 3],
    [3, 3.5, 0, 0, 3.5],
    [3, 3.5, 0, 0.2, 3.5],
    [3, 3.5, 0, -0.2, 3],
  ])('neck %s, shoulder %s, H_t %s, base %s below: %s', (neck, shoulder, height, below, mouth) => {
    expect(mouthDiameter(neck, shoulder, height, below)).toBeCloseTo(mouth, 9);
  });
});

/** A random plan whose axis meets the bone, with its drill site. */
const placed = libraryPlan
  .map((plan) => {
    const at = new Placement(solidsOf(plan.site), plan.implant, plan.pose, plan.crestMargin);
    const level = boneLevel(at);
    return level === null ? null : drillSite(at, level);
  })
  .filter((site) => site !== null);

const anyDrill: fc.Arbitrary<Drill> = fc
  .tuple(within(1.5, 4.5), within(80, 150), fc.boolean())
  .map(([diameter, point, marksCountPoint]) => ({ ...pilot, diameter, point, marksCountPoint }));

describe('the depth chain over random plans', () => {
  it('closes against the pose: last thread, apex and shoulder lie where the implant is', () => {
    fc.assert(
      fc.property(placed, anyDrill, within(0, 2), fc.boolean(), (site, drill, spare, flap) => {
        const { at } = site;
        const chain = depthChain(site, { drill, spare, flap });
        const b = at.axisPoint(site.entry);
        const below = (from: readonly [number, number, number]) => -dot(sub(from, b), at.a);
        const apex = along(at.platform, at.a, -at.length);
        expect(below(apex)).toBeCloseTo(chain.apex, 9);
        expect(below(at.platform)).toBeCloseTo(-site.shoulder, 9);
        expect(chain.apex - chain.lastThread).toBeCloseTo(at.shape.implantedLength, 9);
        expect(chain.lastThread + site.shoulder).toBeCloseTo(at.shape.transmucosalLength, 9);
        const y = drill.diameter / 2 / Math.tan((drill.point * Math.PI) / 360);
        expect(chain.tip - chain.apex).toBeCloseTo(spare + y, 9);
        expect(depthAtMark(site, drill, chain.mark.value, flap)).toBeCloseTo(chain.fullDepth, 9);
      }),
      runs(60),
    );
  });

  it('differs without a flap by exactly the gum over the entry', () => {
    fc.assert(
      fc.property(placed, anyDrill, (site, drill) => {
        const open = depthChain(site, { drill, spare: 0.5, flap: true });
        const closed = depthChain(site, { drill, spare: 0.5, flap: false });
        // The gum's own plane: where the axis leaves it.
        const b = site.at.axisPoint(site.entry);
        const top = along(b, site.at.a, site.gum);
        const { crest } = site.at.anatomy.site.gum;
        if (b[2] < crest) expect(top[2]).toBeCloseTo(crest, 9);
        const y = drill.marksCountPoint ? open.point : 0;
        expect(closed.mark.value - (open.fullDepth + y)).toBeCloseTo(distance(top, b), 9);
      }),
      runs(60),
    );
  });

  it('sets the hole’s edges 2 r tan apart, the slope found by parallel axes', () => {
    fc.assert(
      fc.property(placed, within(0.5, 2), (site, radius) => {
        const { at } = site;
        const { mark } = depthChain(site, {
          drill: { ...pilot, diameter: 2 * radius },
          spare: 0,
          flap: true,
        });
        if (!mark.edges) return;
        const h = 0.01;
        const slope = (v: readonly [number, number, number]): number => {
          const level = (k: number) =>
            boneLevel({ anatomy: at.anatomy, a: at.a, entry: along(at.entry, v, k * h) }) ?? Number.NaN;
          return (level(1) - level(-1)) / (2 * h);
        };
        const tan = Math.hypot(slope(at.ef), slope(at.em));
        // A kink of the crest within a hundredth leaves no single slope.
        fc.pre(Number.isFinite(tan));
        expect((mark.edges.higher - mark.edges.lower) / (2 * radius)).toBeCloseTo(tan, 2);
      }),
      runs(40),
    );
  });

  it('never says more room to the floor than the lowest point of the drill has', () => {
    fc.assert(
      fc.property(placed, anyDrill, within(0, 3), (site, drill, spare) => {
        const { at } = site;
        const chain = depthChain(site, { drill, spare, flap: true });
        const bottom = at.axisPoint(site.entry + chain.fullDepth);
        const points = drillPoints(bottom, at.a, drill.diameter / 2, chain.point, 3);
        const lowest = Math.min(...points.map((p) => p[2])) - at.anatomy.ridge.floor;
        expect(chain.checks[0].value).toBeCloseTo(lowest, 3);
      }),
      runs(60),
    );
  });

  it('agrees with the rule of thumb exactly where H_t − S + ρ = 2', () => {
    fc.assert(
      fc.property(placed, within(4, 20), within(0.5, 5), within(0, 3), (site, long, high, spare) => {
        const shape = { ...site.at.shape, implantedLength: long, transmucosalLength: high };
        const at = new Placement(site.at.anatomy, shape, site.at.pose, 1);
        const own = drillSite(at, site.entry);
        const chain = depthChain(own, { drill: pilot, spare, flap: true });
        expect(chain.thumb?.depth).toBeCloseTo(long + 2, 9);
        const over = high - own.shoulder + spare - 2;
        expect(chain.fullDepth - (chain.thumb?.depth ?? 0)).toBeCloseTo(over, 9);
        const left = chain.thumb?.spare ?? 0;
        const asThumb = depthChain(own, { drill: pilot, spare: left, flap: true });
        expect(asThumb.fullDepth).toBeCloseTo(long + 2, 9);
      }),
      runs(40),
    );
  });
});
