/** Readings of passes, worked by hand on a slab 7.5 wide and 18 high. */
import { describe, expect, it } from 'vitest';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { passBody } from '../../src/core/drilling/passBody.ts';
import {
  BODY_IDS,
  HOLE_IDS,
  holeReadings,
  type PassMeasureInput,
  POINT_IDS,
  passReadings,
} from '../../src/core/drilling/passReadings.ts';
import type { Reading, ReadingId } from '../../src/core/measure/reading.ts';
import { readingOf, solidsOf } from '../../src/core/plan/evaluate.ts';
import { seeded } from '../oracle/plans.ts';
import { type PassNumbers, passOf, randomPasses } from '../support/drilling.ts';
import { seriesPlan } from '../support/randomPlans.ts';
import { slabPlan } from '../support/slabs.ts';

const anatomy = solidsOf(slabPlan({}).site);
const input: PassMeasureInput = { anatomy, fixing: 'screw-bone', crestMargin: 1, limits: {} };
const RAD = Math.PI / 180;
const readings = (n: PassNumbers): Reading[] =>
  passReadings(input, passBody(anatomy.ridge, GENERIC_KIT, passOf(n))!);
const value = (list: readonly Reading[], id: ReadingId): number => readingOf(list, id).value!;

describe('one pass', () => {
  it('2.0 in the middle: walls 2.75, true 2.75, centred; the tip stops 18 − 10.577 over the floor', () => {
    const list = readings({});
    for (const id of [
      'facial-wall-1mm',
      'facial-wall-5mm',
      'facial-wall-thinnest',
      'palatal-wall-true',
    ] as const)
      expect(value(list, id)).toBeCloseTo(2.75, 6);
    expect(value(list, 'centring-crest')).toBeCloseTo(0, 6);
    expect(value(list, 'apex-to-floor')).toBeCloseTo(18 - 10.57735, 4);
  });

  it('off by 0.5 and leaning 10°: (W/2 − f(s)) / cos τ − r at level s, floor from the tip', () => {
    const list = readings({ f: 0.5, fp: 10, depth: 9 });
    for (const t of [1, 3, 5] as const) {
      const f = 0.5 - t * Math.sin(10 * RAD);
      expect(value(list, `facial-wall-${t}mm`)).toBeCloseTo((3.75 - f) / Math.cos(10 * RAD) - 1, 3);
      expect(value(list, `palatal-wall-${t}mm`)).toBeCloseTo((3.75 + f) / Math.cos(10 * RAD) - 1, 3);
    }
    const tip = 9.57735 * Math.cos(10 * RAD);
    expect(Math.abs(value(list, 'apex-to-floor') - (18 - tip))).toBeLessThan(0.003);
    expect(value(list, 'axis-to-crown-faciopalatal')).toBeCloseTo(10, 9);
  });

  it('a wide drill leans so far that the edge of its full diameter, not its tip, is the lowest', () => {
    const list = readings({ drill: 6, fp: 45, depth: 6, f: 1 });
    const rim = 6 * Math.cos(45 * RAD) + 2.2 * Math.sin(45 * RAD);
    const tip = (6 + 2.2 / Math.sqrt(3)) * Math.cos(45 * RAD);
    expect(rim).toBeGreaterThan(tip);
    expect(Math.abs(value(list, 'apex-to-floor') - (18 - rim))).toBeLessThan(0.01);
  });

  it('a press is read at its worse end: 0.5 to the facial side leaves 2.25 there and 2.75 palatally', () => {
    const list = readings({ press: { toward: 0, mouth: 0.5, bottom: 0.5 } });
    expect(value(list, 'facial-wall-3mm')).toBeCloseTo(2.25, 6);
    expect(value(list, 'palatal-wall-3mm')).toBeCloseTo(2.75, 6);
    expect(value(list, 'centring-crest')).toBeCloseTo(-0.5, 6);
  });

  it('a neck cutter is read where it is wide', () => {
    const list = readings({ neck: 2, depth: 2 });
    // Neck 3.5 to 4.5 over 1.5 mm: 1 mm below the crest its radius is 1.75 + 0.5 · (2 − 1)/1.5.
    expect(value(list, 'facial-wall-1mm')).toBeCloseTo(3.75 - 1.75 - 0.5 / 1.5, 5);
  });
});

describe('a hole', () => {
  it('has the worst of its passes, for the closed list of ids', () => {
    const first = readings({ f: 0.8, depth: 8 });
    const second = readings({ drill: 2, depth: 10 });
    const list = holeReadings([first, second]);
    expect(list.map((r) => r.id).sort()).toEqual([...HOLE_IDS].sort());
    expect(value(list, 'facial-wall-3mm')).toBeCloseTo(1.95, 6);
    expect(value(list, 'palatal-wall-3mm')).toBeCloseTo(2.35, 6);
    expect(value(list, 'apex-to-floor')).toBeCloseTo(18 - 10 - 1.4 / Math.sqrt(3), 4);
    expect(holeReadings([])).toEqual([]);
  });

  it('every pass gives each id once; sites 11 and 21 the same numbers', () => {
    const random = seeded(6);
    for (let n = 0; n < 12; n++) {
      const plan = seriesPlan(700 + n, 0);
      const passes = randomPasses(random, plan);
      const both = ([11, 21] as const).map((tooth) => {
        const own = solidsOf({ ...plan.site, tooth });
        return passes.flatMap((pass) => {
          const one = passBody(own.ridge, GENERIC_KIT, pass);
          return one ? passReadings({ ...input, anatomy: own }, one) : [];
        });
      });
      expect(both[0].length % (BODY_IDS.length + POINT_IDS.length)).toBe(0);
      expect(both[1].map((r) => [r.id, r.value])).toEqual(both[0].map((r) => [r.id, r.value]));
    }
  });
});
