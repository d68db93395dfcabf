import { describe, expect, it } from 'vitest';
import { budgetByDepth, evenly, shiftRoom, stepped, tiltRoom } from '../../src/core/drilling/budget.ts';
import { budgetNow } from '../../src/core/plan/budgetNow.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';

const pilot = (depth: number) => ({ radius: 1, depth, point: 1 / Math.tan(Math.PI / 3) });

describe('the correction budget', () => {
  // Source: the model's worked values, section 5: a 2.0 hole under 3.6, turned about its mouth.
  it.each([
    [6, 7.75],
    [8, 5.78],
    [14, 3.28],
  ])('lets a 2.0 hole %d mm deep be turned by %d° under 3.6', (depth, angle) => {
    const room = tiltRoom(pilot(depth), evenly(1.8));
    expect(room.either).toBeCloseTo(angle, 2);
    expect(room.toward).toBeCloseTo(room.away, 12);
  });

  it('lets it be shifted by the difference of the radii, at every depth', () => {
    for (const depth of [2, 6, 14]) expect(shiftRoom(pilot(depth), evenly(1.8))).toBeCloseTo(0.8, 12);
  });

  it('gives less the deeper the pass: why direction comes first', () => {
    const wide = evenly(1.8);
    const coming = { hand: wide, kit: wide, neck: stepped([0, 1, 1, 14], [2.5, 2, 1.8, 1.8]), implant: wide };
    const tilts = budgetByDepth(pilot(0), coming, [2, 4, 6, 8, 10]).map(({ kit }) => kit.tilt.either);
    expect(tilts).toEqual([...tilts].sort((a, b) => b - a));
    expect(new Set(tilts).size).toBe(tilts.length);
  });

  it('stands for a pilot as planned before anything is drilled, down to the planned depth', () => {
    for (const { plan } of DEMO_PLANS) {
      const now = budgetNow(plan);
      if (!now) throw new Error('a demo plan has no hole to be drilled');
      expect(now.drilled).toBe(false);
      expect(Math.hypot(now.circles.apex.facial, now.circles.apex.mesial)).toBeLessThan(1e-9);
      expect(now.circles.apex.ring).toBeCloseTo((now.diameters.last - now.diameters.pass) / 2, 9);
      expect(now.rows.at(-1)?.depth).toBe(now.fullDepth);
      // No tool is narrower than the last drill, so none leaves less room.
      for (const { kit, neck, implant } of now.rows) {
        for (const room of neck ? [neck, implant] : [implant]) {
          expect(room.shift).toBeGreaterThan(kit.shift - 1e-9);
          expect(room.tilt.either).toBeGreaterThan(kit.tilt.either - 1e-9);
        }
      }
    }
  });
});
