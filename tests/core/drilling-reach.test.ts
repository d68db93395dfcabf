import { describe, expect, it } from 'vitest';
import { roomOf } from '../../src/core/drilling/cylinderRoom.ts';
import { drillingPlan } from '../../src/core/drilling/drillingPlan.ts';
import { type DrillSite, drillSiteOf } from '../../src/core/drilling/drillSite.ts';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import type { Kit } from '../../src/core/drilling/kit.ts';
import { type Reach, reachReport } from '../../src/core/drilling/reach.ts';
import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { unit, type Vec3 } from '../../src/core/geometry/vec.ts';
import { drillingOf } from '../../src/core/plan/drilling.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import { reachNow } from '../../src/core/plan/reachNow.ts';
import { holdAt, takeTool, toPlannedAxis } from '../../src/core/plan/rehearse.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

/** A square of side 40 in the plane `c = level`, as two triangles. */
function plane(level: number, from = -20): TriangleMesh {
  const corners = [from, -20, level, 20, -20, level, 20, 20, level, from, 20, level];
  return { positions: Float64Array.from(corners), triangles: Uint32Array.from([0, 1, 2, 0, 2, 3]) };
}

describe('a head over a flat neighbour, by hand', () => {
  const head = (face: number, a: Vec3 = [0, 0, 1], radius = 5) => ({
    foot: [0, 0, 0] as const,
    a,
    radius,
    face,
  });

  it('stands its own height above the plane', () => {
    // Face 14 above the foot, plane 10 above it.
    expect(roomOf(plane(10), head(14))).toMatchObject({ lift: 0 });
    expect(roomOf(plane(10), head(14)).clearance).toBeCloseTo(4, 9);
  });

  it('leans a rim down to it', () => {
    // At 20° the lowest point of the face is 14 cos 20° − 5 sin 20° = 11.446 above the foot: 1.446 of room.
    const a = unit([0, Math.tan(Math.PI / 9), 1]);
    const { clearance } = roomOf(plane(10), head(14, a));
    expect(Math.abs(clearance - 1.446)).toBeLessThan(0.031);
  });

  it('is met by what stands higher than its face, and wants to be lifted over it', () => {
    const { clearance, lift } = roomOf(plane(10), head(8));
    expect(lift).toBeCloseTo(2, 9);
    expect(clearance).toBeCloseTo(-2, 1);
  });

  it('passes a plane that ends before its side', () => {
    // The plane begins 7 beside the axis, 3 higher than the face: 2 of room sideways.
    const beside = roomOf(plane(10, 7), head(7));
    expect(beside.clearance).toBeCloseTo(2, 1);
    expect(beside.lift).toBe(0);
    // And 2 sideways, 1.5 down: 2.5 in all.
    expect(roomOf(plane(10, 7), head(11.5)).clearance).toBeCloseTo(2.5, 1);
  });

  it('looks for no more than what is nearer than the known', () => {
    expect(roomOf(plane(10), head(14), 3).at).toBeNull();
    expect(roomOf(plane(10), head(14), 5).at).not.toBeNull();
  });
});

/** The reach of one tool at a demo with a kit. */
function reachAt(demo: number, changes: Partial<Kit['handpiece']> & { length?: number }): Reach {
  const { placement } = evaluate(SITES_DEMO[demo].plan);
  const site = drillSiteOf(placement) as DrillSite;
  const { length, ...head } = changes;
  const kit: Kit = {
    ...GENERIC_KIT,
    drills: GENERIC_KIT.drills.map((d) => ({ ...d, length: length ?? d.length })),
    handpiece: { ...GENERIC_KIT.handpiece, ...head },
  };
  const plan = drillingPlan(site, { kit, spare: 0.5, flap: true });
  return reachReport(site, kit, plan.last?.index ?? 0, plan.chain as never).reaches[0];
}

describe('the head between the crowns', () => {
  it('agrees with the crowns’ own points looked at one by one', () => {
    const { placement, anatomy } = evaluate(SITES_DEMO[0].plan);
    const reach = reachAt(0, {});
    const site = drillSiteOf(placement) as DrillSite;
    const { a } = placement;
    const foot = placement.axisPoint(site.entry);
    // Incisal edge ends and tips of the neighbours lie on their crowns: none is nearer than the least.
    for (const tooth of [anatomy.teeth.mesial, anatomy.teeth.distal, ...anatomy.teeth.further]) {
      for (const p of Object.values(tooth.marks)) {
        const r = [p[0] - foot[0], p[1] - foot[1], p[2] - foot[2]];
        const up = r[0] * a[0] + r[1] * a[1] + r[2] * a[2];
        const out = Math.sqrt(r[0] ** 2 + r[1] ** 2 + r[2] ** 2 - up * up) - 5;
        const [beside, below] = [Math.max(0, out), Math.max(0, reach.headAbove - up)];
        expect(Math.hypot(beside, below)).toBeGreaterThan(reach.clearance - 0.03);
      }
    }
    expect(reach.clearance).toBeGreaterThan(0);
    expect(reach.code).toBe('clear');
  });

  it('asks for the extension where it meets a crown, exactly while that is long enough', () => {
    const long = reachAt(0, {});
    // By hand: shortened by its whole clearance below the crown and 3 mm more, the head is met and wants at least those 3 mm.
    const length = 28 - long.clearance - 3;
    const short = reachAt(0, { length });
    expect(short.code).toBe('lengthen');
    expect(short.short).toBeGreaterThan(0);
    expect(reachAt(0, { length, extension: short.short - 0.01 }).code).toBe('too-short');
    expect(reachAt(0, { length: length + short.short + 0.05 }).code).toBe('clear');
  });

  it('is nearer to a crown with a wider head', () => {
    expect(reachAt(0, { headDiameter: 14 }).clearance).toBeLessThan(reachAt(0, {}).clearance);
  });

  it('says what does not fit between the crowns at all', () => {
    const { placement } = evaluate(SITES_DEMO[0].plan);
    const site = drillSiteOf(placement) as DrillSite;
    const drills = [{ ...GENERIC_KIT.drills[0], diameter: 7, length: 60 }];
    const { chain } = drillingPlan(site, { kit: GENERIC_KIT, spare: 0.5, flap: true });
    const [drill] = reachReport(site, { ...GENERIC_KIT, drills }, 0, chain as never).reaches;
    expect(drill.code).toBe('blocked');
    expect(drill.shankClearance).toBeLessThan(0);
  });

  it('needs more of the mouth the longer the drill is, by its own length along the jaw’s vertical', () => {
    const { placement } = evaluate(SITES_DEMO[0].plan);
    const site = drillSiteOf(placement) as DrillSite;
    const { chain, last } = drillingPlan(site, { kit: GENERIC_KIT, spare: 0.5, flap: true });
    const needed = (more: number) => {
      const drills = GENERIC_KIT.drills.map((d) => ({ ...d, length: d.length + more }));
      return reachReport(site, { ...GENERIC_KIT, drills }, last?.index ?? 0, chain as never).opening;
    };
    expect(needed(20).needed - needed(0).needed).toBeCloseTo(20 * placement.a[2], 9);
    expect(needed(0).enough).toBe(true);
    expect(needed(20).enough).toBe(false);
  });
});

describe('the reach of a plan as it stands', () => {
  it('is, for the last drill in the planned place, that of the plan; further from the crowns while it is held higher', () => {
    const { plan } = SITES_DEMO[0];
    const order = drillingOf(plan);
    const index = order?.plan.last?.index ?? 0;
    const taken = toPlannedAxis(takeTool(plan, { kind: 'drill', index }));
    const { hand, planned } = reachNow(holdAt(taken, order?.chain.fullDepth ?? 0));
    const [drill] = planned?.reaches ?? [];
    expect(hand?.tooth).toBe(drill.tooth);
    expect(hand?.clearance).toBeCloseTo(drill.clearance, 6);
    expect(hand?.headAbove).toBeCloseTo(drill.headAbove, 6);
    const higher = reachNow(holdAt(taken, 0)).hand;
    expect(higher?.headAbove).toBeCloseTo(drill.headAbove + (order?.chain.fullDepth ?? 0), 6);
    expect(higher?.clearance).toBeGreaterThan(drill.clearance);
  });
});
