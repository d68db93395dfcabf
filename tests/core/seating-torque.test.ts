/**
 * The torque estimate (rule T10). Formulas against the worked values of reference-values 6.3 (derived, checked by script); trends against published ones, each
 * named. Bone pressures, friction and the holes of the foam study are assumed, so that holding a published torque is a fit and proves no more than the order
 * of magnitude. Slab 40 mm wide, upright, shoulder at the crest.
 */
import { describe, expect, it } from 'vitest';
import { anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { holeOf } from '../../src/core/drilling/hole.ts';
import { libraryShape } from '../../src/core/implant/library.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import { contactOf } from '../../src/core/seating/contact.ts';
import {
  type BoneClass,
  frustumMoment,
  loadsOf,
  pressureShare,
  screwTorque,
  type TorqueEstimate,
  torqueCurve,
  torqueEstimate,
} from '../../src/core/seating/torque.ts';
import { cylinderHole } from '../support/holes.ts';
import { cylinder, slabPlan } from '../support/slabs.ts';

const SITE = slabPlan({ width: 40, ridge: { height: 30 } }).site;
const ANATOMY = anatomyOf(SITE);
const CLASSES: readonly BoneClass[] = [4, 3, 2, 1];

const placed = (shape: ImplantShape, c = 0): Placement =>
  new Placement(
    ANATOMY,
    shape,
    { platform: { m: 0, f: 0, c }, tilt: { faciopalatal: 0, mesiodistal: 0 }, roll: 0 },
    1,
  );
const drilled = (diameter: number) => cylinderHole([0, 0, 0], [0, 0, 1], diameter / 2, 5, 14);
const tapered = (coronal: number, apical: number, length: number): ImplantShape =>
  cylinder(coronal / 2, length, { apicalDiameter: apical, taperLength: length });
const estimate = (shape: ImplantShape, hole: number, bone: BoneClass): TorqueEstimate =>
  torqueEstimate(contactOf(placed(shape), drilled(hole)), shape, bone);

describe('the formulas', () => {
  it('screw: 77.8 N·mm of 100 N, d 4, lead 1, friction 0.3', () => {
    expect(screwTorque(100, 4, 1, 0.3)).toBeCloseTo(77.8, 1);
    // Without friction the work of a turn is that of the lead: T 2π = W l.
    expect(screwTorque(100, 4, 1, 0) * 2 * Math.PI).toBeCloseTo(100, 9);
  });

  it('side: 75.4 N·mm of a cylinder 4.0 × 10 at 1 MPa and friction 0.3; 194.0 mm³ of a frustum', () => {
    expect(0.3 * 1 * frustumMoment(2, 2, 10)).toBeCloseTo(75.4, 1);
    expect(frustumMoment(2, 1.5, 10)).toBeCloseTo(194.0, 1);
  });

  it('side, summed over the grid, is the closed form where the pressure is even', () => {
    // As good as fully pressed: in a hole of 0.2 the share is over 1 − exp(−9.3) everywhere, 1e-4 short of 1.
    const round = cylinder(2, 10);
    expect(loadsOf(contactOf(placed(round, -2), drilled(0.2)), round).moment).toBeCloseTo(
      frustumMoment(2, 2, 10),
      1,
    );
    const cone = tapered(4, 3, 10);
    expect(loadsOf(contactOf(placed(cone, -2), drilled(0.2)), cone).moment).toBeCloseTo(194.0, 1);
  });

  it('thread: flanks are a ring of the thread’s depth for every pitch', () => {
    // 4.0 × 10, depth 0.3, pitch 0.8: 12.5 turns of 4π · 0.3 = 47.12 mm².
    const round = cylinder(2, 10);
    const { flanks, diameter } = loadsOf(contactOf(placed(round, -2), drilled(0.2)), round);
    expect(flanks).toBeCloseTo(47.12, 1);
    expect(diameter).toBeCloseTo(4, 9);
    // Half of the thread’s depth in bone, at 1 − exp(−0.15/(0.1 · 2)) = 0.52763 of full pressure.
    expect(pressureShare(0.15, 2)).toBeCloseTo(0.52763, 5);
    expect(loadsOf(contactOf(placed(round, -2), drilled(3.7)), round).flanks).toBeCloseTo(
      (47.124 / 2) * 0.52763,
      2,
    );
  });

  it('has the dimensions of a torque: all lengths doubled, eight times', () => {
    const once = cylinder(1, 5, { thread: { depth: 0.2, pitch: 0.5, starts: 1 } });
    const twice = cylinder(2, 10, { thread: { depth: 0.4, pitch: 1, starts: 1 } });
    const small = estimate(once, 1.8, 2);
    const large = estimate(twice, 3.6, 2);
    expect(large.thread.high / small.thread.high).toBeCloseTo(8, 6);
    expect(large.side.low / small.side.low).toBeCloseTo(8, 6);
  });

  it('is nothing in a hole that is wider than the implant', () => {
    expect(estimate(cylinder(2, 10), 4.1, 1)).toMatchObject({ low: 0, high: 0 });
  });
});

describe('published trends', () => {
  const body = cylinder(2, 11);

  it('rises with density (Camargo 2017: dense over soft foam; Misch’s classes)', () => {
    const rising = CLASSES.map((bone) => estimate(body, 3.5, bone));
    for (let i = 1; i < rising.length; i++) {
      expect(rising[i].low).toBeGreaterThan(rising[i - 1].low);
      expect(rising[i].high).toBeGreaterThan(rising[i - 1].high);
    }
  });

  it('rises as the hole is drilled smaller (Camargo 2017: 22.6 undersized over 11.7)', () => {
    const rising = [3.8, 3.6, 3.4, 3.2, 3, 2.8].map((hole) => estimate(body, hole, 3));
    for (let i = 1; i < rising.length; i++) expect(rising[i].low).toBeGreaterThan(rising[i - 1].low);
  });

  it('rises with the taper in a hole as wide as the apex (J Implant Dent 1:21; Yang 2022: a side term with taper, none without)', () => {
    // Both 3.5 at the apex, in a hole of 3.5: the parallel body has no press, the tapered ones more the wider they become.
    const rising = [3.5, 3.7, 4, 4.3].map((coronal) => estimate(tapered(coronal, 3.5, 11), 3.5, 3));
    expect(rising[0].side.high).toBeCloseTo(0, 9);
    for (let i = 1; i < rising.length; i++) expect(rising[i].low).toBeGreaterThan(rising[i - 1].low);
  });

  it('rises as the implant goes in, a tapered one at a growing rate', () => {
    const rate = (shape: ImplantShape): number[] => {
      const curve = torqueCurve(placed(shape), drilled(3.4), [6, 4, 2, 0]);
      return curve.slice(1).map(({ high }, i) => high - curve[i].high);
    };
    for (const step of rate(body)) expect(step).toBeGreaterThan(0);
    const cone = rate(tapered(4.2, 3.2, 11));
    expect(cone[1]).toBeGreaterThan(cone[0]);
    expect(cone[2]).toBeGreaterThan(cone[1]);
  });

  it('holds the torques measured in foam, 4.0 × 11, the holes assumed 3.6 and 3.2, parallel or tapered', () => {
    const spans = (e: TorqueEstimate, measured: number) => e.low < measured && measured < e.high;
    const cone = libraryShape('tapered-straight-40x11');
    for (const shape of [body, cone ?? body]) {
      expect(spans(estimate(shape, 3.6, 1), 48.9)).toBe(true);
      expect(spans(estimate(shape, 3.6, 4), 11.7)).toBe(true);
      expect(spans(estimate(shape, 3.2, 4), 22.6)).toBe(true);
      // And not each of them anywhere: dense foam’s torque is out of soft bone’s reach.
      expect(spans(estimate(shape, 3.6, 4), 48.9)).toBe(false);
    }
    expect(cone?.apicalDiameter).toBeLessThan(4);
  });

  it('gains from undersizing in soft foam about what was measured: 22.6/11.7 = 1.9, within a third', () => {
    const gain = estimate(body, 3.2, 4).high / estimate(body, 3.6, 4).high;
    expect(Math.abs(gain / (22.6 / 11.7) - 1)).toBeLessThan(0.33);
  });
});

describe('a hole as it was drilled', () => {
  it('is to the implant as a plain cylinder is, where it was drilled straight', () => {
    const drills = GENERIC_KIT.drills.map(({ diameter }, index) => ({ diameter, index }));
    const last = drills.filter(({ diameter }) => diameter < 3.9).at(-1);
    const passes = drills.slice(0, (last?.index ?? 0) + 1).map(({ index }) => ({
      tool: { kind: 'drill' as const, index },
      pose: { mouth: { m: 0, f: 0 }, tilt: { faciopalatal: 0, mesiodistal: 0 } },
      depth: 14,
      press: null,
      speed: 1000,
      irrigated: true,
    }));
    const at = placed(tapered(4, 3, 11));
    const made = contactOf(at, holeOf(ANATOMY.ridge, GENERIC_KIT, passes));
    const plain = contactOf(at, drilled(last?.diameter ?? Number.NaN));
    expect(made.percent).toBeCloseTo(plain.percent, 6);
    expect(made.gapVolume).toBeCloseTo(plain.gapVolume, 6);
    expect(made.percent).toBeGreaterThan(10);
    expect(made.percent).toBeLessThan(90);
  });
});
