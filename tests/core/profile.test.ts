/** The wall profiles as lists (rules M1, M2; model section 4): their levels, their ends, their counting window, what is drawn from them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Placement } from '../../src/core/measure/placement.ts';
import type { ReadingId } from '../../src/core/measure/reading.ts';
import { SideRays } from '../../src/core/measure/wallProfile.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import { anyPlan, runs } from '../support/randomPlans.ts';
import { slabPlan } from '../support/slabs.ts';

const SIDES = ['facial', 'palatal'] as const;

describe('the levels of a profile', () => {
  it('run from the rim of that side to the apical rim, rising, 0.1 mm apart or finer', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { profiles, placement } = evaluate(plan);
        expect(profiles.map((p) => p.side)).toEqual(['facial', 'palatal']);
        for (const { side, samples } of profiles) {
          expect(samples[0].level).toBeCloseTo(placement.rimLevel(side === 'facial' ? 0 : Math.PI), 9);
          expect(samples[samples.length - 1].level).toBeCloseTo(placement.tA, 9);
          for (let i = 1; i < samples.length; i++) {
            const step = samples[i].level - samples[i - 1].level;
            expect(step).toBeGreaterThan(0);
            expect(step).toBeLessThanOrEqual(0.1 + 1e-9);
          }
        }
      }),
      runs(60),
    );
  });

  it('hold the exact ends of the counting window: there the shallower end lies 1 mm below the crest', () => {
    let ends = 0;
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { anatomy } = evaluate(plan);
        const at = new Placement(anatomy, plan.implant, plan.pose, plan.crestMargin);
        for (const side of SIDES) {
          const samples = new SideRays(at, side).profile();
          for (let i = 1; i < samples.length; i++) {
            const [a, b] = [samples[i - 1], samples[i]];
            if (a.counts === b.counts || a.wall === null || b.wall === null) continue;
            const inside = a.counts ? a : b;
            // Either the end itself, or the wall jumps there (a ray that grazes) and no level lies exactly at the margin.
            const depth = Math.min(inside.dIn, inside.dOut);
            const jump = Math.abs(a.dOut - b.dOut) > 0.05;
            if (!jump) expect(Math.abs(depth - plan.crestMargin), plan.title).toBeLessThan(2e-6);
            if (!jump) ends++;
          }
        }
      }),
      runs(100),
    );
    expect(ends).toBeGreaterThan(60);
  });

  it('by hand: upright on a slab both ends are as deep as the level, so counting begins at exactly 1 mm', () => {
    const { profiles } = evaluate(slabPlan({ c: 0.05 }));
    for (const { samples } of profiles) {
      const first = samples.find((s) => s.counts);
      expect(first?.level).toBeCloseTo(1, 5);
    }
  });

  it('by hand: leaning 20° facially the facial ray falls, so its start decides: (1 − r sin 20°)/cos 20°', () => {
    // Envelope's point on e_f at level t: c = −t cos 20° − r sin 20°; at 1 mm deep t = (1 − 1.5 · 0.3420201)/0.9396926 = 0.5182203.
    const { profiles } = evaluate(slabPlan({ width: 12, r: 1.5, fp: 20 }));
    const first = profiles[0].samples.find((s) => s.counts);
    expect(first?.level).toBeCloseTo(0.5182203, 5);
  });

  it('by hand: the palatal ray rises, so where it ends decides', () => {
    // Axis at level t: (−t sin 20°, −t cos 20°); the ray reaches f = −6 after λ = (6 − t sin 20°)/cos 20° and has risen λ sin 20°:
    // t cos 20° − (6 − t sin 20°) tan 20° = 1 → t (cos 20° + sin 20° tan 20°) = 1 + 6 tan 20° → t = 3.1838214 cos 20° = 2.9918135.
    const { profiles } = evaluate(slabPlan({ width: 12, r: 1.5, fp: 20 }));
    const first = profiles[1].samples.find((s) => s.counts);
    expect(first?.level).toBeCloseTo(2.9918135, 5);
  });
});

describe('what the readings take from it', () => {
  it('the thinnest is its least counting value, or a little less between two levels', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { profiles, readings } = evaluate(plan);
        for (const { side, samples } of profiles) {
          const counting = samples.flatMap((s) => (s.counts && s.wall !== null ? [s.wall] : []));
          const { value, reason } = readingOf(readings, `${side}-wall-thinnest`);
          if (counting.length === 0) expect(reason).toBe('nothing-counts');
          else {
            const least = Math.min(...counting);
            expect(value).toBeLessThanOrEqual(least + 1e-7);
            expect(value).toBeGreaterThan(least - 0.1);
          }
        }
      }),
      runs(60),
    );
  });

  it('a fixed level is the profile’s value there', () => {
    let compared = 0;
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { profiles, readings } = evaluate(plan);
        for (const { side, samples } of profiles)
          for (const level of [1, 3, 5]) {
            const { value, status } = readingOf(readings, `${side}-wall-${level}mm` as ReadingId);
            const sample = samples.find((s) => Math.abs(s.level - level) < 1e-9);
            if (value === null || !sample || sample.wall === null) continue;
            expect(value, plan.title).toBeCloseTo(sample.wall, 6);
            // At 1 mm half of the margin is enough; deeper the same margin as for the profile.
            if (level > 1) expect(status !== null).toBe(sample.counts);
            compared++;
          }
      }),
      runs(80),
    );
    expect(compared).toBeGreaterThan(250);
  });

  it('a crest margin of its own moves the window', () => {
    const first = (crestMargin: number) =>
      evaluate({ ...slabPlan(), crestMargin }).profiles[0].samples.find((s) => s.counts)?.level;
    expect(first(0.4)).toBeCloseTo(0.4, 5);
    expect(first(2.5)).toBeCloseTo(2.5, 5);
  });
});
