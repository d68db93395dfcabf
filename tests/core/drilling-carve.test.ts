import { describe, expect, it } from 'vitest';
import { sectionOutline } from '../../src/core/anatomy/section.ts';
import { carved } from '../../src/core/drilling/carve.ts';
import { Hole } from '../../src/core/drilling/hole.ts';
import { bodiesInPlane } from '../../src/core/drilling/outline.ts';
import { type Loop, loopArea, onPlane, type Plane } from '../../src/core/geometry/slice.ts';
import { evaluate, solidsOf } from '../../src/core/plan/evaluate.ts';
import { handOf, passBodies, planInHand, withHand } from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { drillTo, pressAgainst, takeTool } from '../../src/core/plan/rehearse.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';

/** Repeatable chance (mulberry32). */
function chance(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A few passes near the plan, some leaning, some on the very same axis, some pressed. */
function wild(plan: Plan, random: () => number): Plan {
  let now = plan;
  for (let i = 0; i < 2 + Math.floor(random() * 4); i++) {
    now = takeTool(now, { kind: 'drill', index: Math.floor(random() * 4) });
    const hand = handOf(now);
    const { faciopalatal, mesiodistal } = plan.pose.tilt;
    const off = () => (random() < 0.3 ? 0 : 4 * (random() - 0.5));
    now = withHand(now, {
      ...hand,
      pose: { ...hand.pose, tilt: { faciopalatal: faciopalatal + off(), mesiodistal: mesiodistal + off() } },
    });
    now = drillTo(now, 4 + 9 * random());
    if (random() < 0.3)
      now = pressAgainst(now, {
        toward: 360 * random() - 180,
        mouth: 0.6 * random(),
        bottom: random() < 0.5 ? 0 : 0.3,
      });
  }
  return now;
}

/** Even-odd rule: a ray to the right. */
function within(loops: readonly Loop[], x: number, y: number): boolean {
  let inside = false;
  for (const loop of loops)
    loop.forEach(([x0, y0], i) => {
      const [x1, y1] = loop[(i + 1) % loop.length];
      if (y0 > y !== y1 > y && x < x0 + ((x1 - x0) * (y - y0)) / (y1 - y0)) inside = !inside;
    });
  return inside;
}

/** Nearest corner or edge of loops, mm. */
function edgeDistance(loops: readonly Loop[], x: number, y: number): number {
  let least = Infinity;
  for (const loop of loops)
    loop.forEach(([x0, y0], i) => {
      const [x1, y1] = loop[(i + 1) % loop.length];
      const [dx, dy] = [x1 - x0, y1 - y0];
      const long = dx * dx + dy * dy;
      const w = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / long));
      least = Math.min(least, Math.hypot(x - x0 - w * dx, y - y0 - w * dy));
    });
  return least;
}

describe('the hole in a drawn section', () => {
  it('a square less a square, by hand: 4 − 1, in two when a bar goes through', () => {
    const square: Loop = [
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
    ];
    const corner: Loop = [
      [1, 1],
      [3, 1],
      [3, 3],
      [1, 3],
    ];
    const left = carved([square], [corner]);
    expect(left).toHaveLength(1);
    expect(Math.abs(loopArea(left[0]))).toBeCloseTo(3, 9);
    const bar: Loop = [
      [0.8, -1],
      [0.8, 3],
      [1.2, 3],
      [1.2, -1],
    ];
    expect(carved([square], [bar, bar, bar]).map((loop) => Math.abs(loopArea(loop)))).toEqual([
      expect.closeTo(1.6, 9),
      expect.closeTo(1.6, 9),
    ]);
    expect(carved([square], [])).toEqual([square]);
  });

  it('is where the passes are, over 120 rehearsals: points of the plane, asked of the bodies themselves', () => {
    const random = chance(20261125);
    let looked = 0;
    for (let k = 0; k < 120; k++) {
      const plan = wild(DEMO_PLANS[k % DEMO_PLANS.length].plan, random);
      const { placement } = evaluate(planInHand(plan));
      const plane: Plane = {
        origin: placement.entry,
        x: k % 2 ? placement.ef : placement.em,
        y: placement.a,
      };
      const { bone } = sectionOutline(solidsOf(plan.site), plane);
      const bodies = passBodies(plan);
      const outlines = bodiesInPlane(bodies, plane);
      const left = carved(bone, outlines);
      const hole = new Hole(bodies);
      for (let i = 0; i < 60; i++) {
        const [x, y] = [5 * (random() - 0.5), 2 - 15 * random()];
        // Outlines are drawn within 0.01 mm: nearer than that nothing is said.
        if (edgeDistance([...bone, ...outlines], x, y) < 0.02) continue;
        looked += 1;
        expect(within(left, x, y), `rehearsal ${k} at ${x} ${y}`).toBe(
          within(bone, x, y) && !hole.contains(onPlane(plane, x, y)),
        );
      }
    }
    expect(looked).toBeGreaterThan(5000);
  });
});
