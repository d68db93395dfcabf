/**
 * The palatal side of a reduction, room for a tray, part-turns for depth, and what the exit means: each worked by hand beside its check, on crowns and ridges of
 * simple form. Circular segment: `r² acos(d/r) − d √(r² − d²)` (any handbook).
 */
import { describe, expect, it } from 'vitest';
import { opposingIncisors } from '../../src/core/anatomy/opposing.ts';
import { along } from '../../src/core/geometry/vec.ts';
import { IMPLANT_LIBRARY } from '../../src/core/implant/library.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import { evaluate, readingOf, solidsOf } from '../../src/core/plan/evaluate.ts';
import { byPartTurns, depthTurns } from '../../src/core/plan/partTurns.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { AbutmentInCrown } from '../../src/core/restoration/abutmentInCrown.ts';
import { coverOf, DEFAULT_CROWN } from '../../src/core/restoration/crownChoices.ts';
import { guidanceOf } from '../../src/core/restoration/guidance.ts';
import { groundOutline } from '../../src/core/restoration/reducedAbutment.ts';
import { reductionOf } from '../../src/core/restoration/reduction.ts';
import { restore } from '../../src/core/restoration/restoration.ts';
import { coneCrown, lathedCrown } from '../support/coneCrown.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { slabPlan } from '../support/slabs.ts';

const placed = (plan: Plan): Placement =>
  new Placement(solidsOf(plan.site), plan.implant, plan.pose, plan.crestMargin);

describe('the palatal side of a reduction', () => {
  const abutment = { height: 5, baseDiameter: 4, topDiameter: 4 };
  const rule = { cover: coverOf(DEFAULT_CROWN), post: DEFAULT_CROWN.post };
  const bodyIn = (crown: ReturnType<typeof coneCrown>): AbutmentInCrown =>
    new AbutmentInCrown(placed(slabPlan({ r: 2 })), crown, abutment, rule);

  it('a waisted crown: a plane upright through the waist less the cover; the segment of a cylinder goes', () => {
    // Radius 3 at the shoulder and 5 over it, 2.6 midway: palatally furthest at the shoulder, 3 again at the abutment's top, so upright, 2.6 − 1.05 from the axis.
    const waist = lathedCrown(-1, [
      [0, 3],
      [1, 3],
      [3.5, 2.6],
      [6, 3],
      [8, 3],
    ]);
    const body = bodyIn(waist);
    const d = 2.6 - rule.cover;
    expect(body.palatal?.normal[0]).toBeCloseTo(-1, 3);
    expect(body.palatal?.at).toBeCloseTo(d, 3);
    // Outline palatally: level with the plane over the whole height; facially it follows the waist.
    const palatal = groundOutline(body, Math.PI).after;
    for (const [rho] of palatal) expect(rho).toBeCloseTo(d, 2);
    const facial = groundOutline(body, 0).after;
    expect(facial[0][0]).toBeGreaterThan(d + 0.2);
    // Each level loses a segment of the circle, and what the ring of the waist takes besides; the plane alone by formula is the least.
    const segment = 4 * Math.acos(d / 2) - d * Math.sqrt(4 - d * d);
    const { volume } = reductionOf(waist, body);
    expect(volume).toBeGreaterThan(5 * segment);
  });

  it('in a cylinder the plane is tangent to what the cover leaves and takes nothing more', () => {
    // Radius 2.8: 0.25 too near all round. What goes is a shell: π (4 − 1.75²) 5.
    const crown = coneCrown({ foot: -1, height: 9, footRadius: 2.8, topRadius: 2.8 });
    const body = bodyIn(crown);
    expect(body.palatal?.at).toBeCloseTo(1.75, 3);
    const { volume } = reductionOf(crown, body);
    expect(Math.abs(volume / (Math.PI * (4 - 1.75 * 1.75) * 5) - 1)).toBeLessThan(0.03);
  });

  it('where less than 0.2 mm is too near, the plane goes only that share of its way', () => {
    // Radius 3: 0.05 too near, a quarter of 0.2; the plane's way from the abutment's side at 2 to 1.95 is 0.05, a quarter of it 0.0125.
    expect(bodyIn(coneCrown({ foot: -1, height: 9, footRadius: 3, topRadius: 3 })).palatal?.at).toBeCloseTo(
      1.9875,
      3,
    );
  });

  it('in a cone the plane leans as the wall does', () => {
    // Wall r = 2.875 − c/8: its normal palatally is (−8, 1)/√65.
    const crown = coneCrown({ foot: -1, height: 9, footRadius: 3, topRadius: 3 - 9 / 8 });
    const { palatal } = bodyIn(crown);
    expect(palatal?.normal[0]).toBeCloseTo(-8 / Math.sqrt(65), 4);
    expect(palatal?.normal[1]).toBeCloseTo(1 / Math.sqrt(65), 4);
    expect(palatal?.at).toBeCloseTo((2.875 * 8) / Math.sqrt(65) - rule.cover, 3);
  });

  it('stays as it is where the cover holds palatally', () => {
    expect(bodyIn(coneCrown({ foot: -1, height: 9, footRadius: 3.2, topRadius: 3.2 })).palatal).toBeNull();
  });
});

describe('room for a clear tray', () => {
  const abutment = { height: 3, baseDiameter: 4, topDiameter: 4 };
  // Under the middle of an opposing lateral's rounded edge, closed: the way straight up to it is the nearest.
  const site = slabPlan().site;
  const anatomy = solidsOf(site);
  const { moves, round } = guidanceOf(anatomy);
  const lateral = opposingIncisors(anatomy).reduce((a, b) =>
    Math.hypot(a.edge[0], a.edge[1]) < Math.hypot(b.edge[0], b.edge[1]) ? a : b,
  );
  const [m, f, c] = along(lateral.edge, lateral.a, -round);
  const roomOf = (shape: Plan['implant']['abutment'], tray: number, level: number) =>
    readingOf(
      evaluate(
        slabPlan({ m, f, c: level, shape: { abutment: shape }, plan: { crown: { ...DEFAULT_CROWN, tray } } }),
      ).readings,
      'tray-room',
    );
  const edge = c + moves[0][2] - round;

  it('over a one-piece abutment: from its top to the edge, less the tray', () => {
    for (const level of [0, 2]) {
      const found = roomOf(abutment, 1, level).value ?? Number.NaN;
      expect(found).toBeCloseTo(edge - (level + 3) - 1, 6);
    }
    expect(roomOf(abutment, 2.5, 0).value).toBeCloseTo(edge - 3 - 2.5, 6);
  });

  it('without an abutment: from the gum over the crest, or from the shoulder where that stands higher', () => {
    // Gum 3 thick over the crest.
    expect(roomOf(null, 1, -2).value).toBeCloseTo(edge - 3 - 1, 6);
    expect(roomOf(null, 1, 3.5).value).toBeCloseTo(edge - 3.5 - 1, 1);
  });

  it('is judged: none is beyond, less than half a millimetre near (ours)', () => {
    const status = (room: number) => roomOf(abutment, 1, edge - 3 - 1 - room).status;
    expect([0.6, 0.3, -0.1].map(status)).toEqual(['within', 'near', 'beyond']);
  });
});

/** Turns as promised and one fewer; how many promises there were to keep. */
function promisesKept(plan: Plan): number {
  const before = evaluate(plan);
  const after = (turns: number) => evaluate(byPartTurns(plan, turns)).readings;
  let kept = 0;
  for (const { reading, change, promise } of depthTurns(before)) {
    const was = readingOf(before.readings, reading).value ?? Number.NaN;
    const one = after(1);
    expect(readingOf(one, reading).value).toBeCloseTo(was + change, 9);
    expect(readingOf(one, 'neck-facing').value).toBe(readingOf(before.readings, 'neck-facing').value);
    if (!promise || promise.turns === 0) continue;
    const found = readingOf(after(promise.turns), reading);
    expect(found.value).toBeCloseTo(promise.after, 9);
    expect(found.status).toBe(promise.status);
    const fewer = after(promise.turns - Math.sign(promise.turns));
    expect(readingOf(fewer, reading).status).not.toBe('within');
    kept++;
  }
  return kept;
}

describe('part-turns for depth', () => {
  it('by hand: a four-fold neck with lead 0.8 goes 0.2 deeper by 90°', () => {
    // Margin at 3. Shoulder at 0.3: depth 2.7, two part-turns to 3.1. At −1.3: 4.3, two back to 3.9. At 0: 3.0 is within.
    const turns = (c: number) => depthTurns(evaluate(slabPlan({ c, shape: { index: 4 } })))[0];
    expect(turns(0.3)).toMatchObject({
      reading: 'shoulder-to-gum-margin',
      degrees: 90,
      change: expect.closeTo(0.2, 9),
      promise: { turns: 2, after: expect.closeTo(3.1, 9), status: 'within' },
    });
    expect(turns(-1.3).promise).toMatchObject({ turns: -2, after: expect.closeTo(3.9, 9) });
    expect(turns(0).promise).toMatchObject({ turns: 0, status: 'within' });
  });

  it('are not asked of a round neck', () => {
    expect(depthTurns(evaluate(slabPlan({ shape: { index: 0 } })))).toEqual([]);
  });

  it('turned, they give what they promise, and one fewer does not: every other shape with an index in every demo site', () => {
    let kept = 0;
    const shapes = IMPLANT_LIBRARY.filter(({ index }) => index > 0).filter((_, i) => i % 2 === 0);
    const fixings = ['screw-bone', 'screw-gum', 'cemented'] as const;
    for (const { plan: demo } of SITES_DEMO)
      shapes.forEach((implant, i) => {
        const { platform } = demo.pose;
        const pose = { ...demo.pose, platform: { ...platform, c: platform.c + 0.9 } };
        kept += promisesKept({ ...demo, implant, fixing: fixings[i % 3], pose });
      });
    expect(kept).toBeGreaterThan(10);
  }, 60_000);
});

describe('what the exit means for the way of fixing', () => {
  // A crown whose top lies 8 mm over the platform, its edge across the middle.
  const crown = coneCrown({ foot: 1, height: 7, footRadius: 3, topRadius: 5 });
  const meaning = (fp: number, plan: Partial<Plan> = {}, f = 0) =>
    restore({
      placement: placed(slabPlan({ fp, f })),
      crown,
      fixing: plan.fixing ?? 'screw-bone',
      limits: plan.limits ?? {},
    }).exit;

  it('palatal: straight; facial or at the edge: bent within 25°, beyond it not; cemented crowns, too', () => {
    expect(meaning(-5)).toMatchObject({ code: 'straight', place: 'palatal', planned: 'screw' });
    expect(meaning(0)).toMatchObject({ code: 'bent', place: 'edge', most: 25 });
    expect(meaning(10)).toMatchObject({ code: 'bent', place: 'facial' });
    expect(meaning(20)).toMatchObject({ code: 'beyond', place: 'facial' });
    expect(meaning(10, { fixing: 'cemented' })).toMatchObject({ code: 'bent', planned: 'cemented' });
  });

  it('goes by the plan’s own limit where it has one', () => {
    const limits = { 'exit-screw': { high: { near: 0, beyond: 10 } } };
    expect(meaning(10, { limits })).toMatchObject({ code: 'beyond', most: 10, source: 'own' });
  });

  it('misses: the axis passes beside the crown', () => {
    const found = restore({
      placement: placed(slabPlan({ f: 3 })),
      crown: coneCrown({ foot: 1, height: 7, footRadius: 1, topRadius: 1 }),
      fixing: 'screw-bone',
      limits: {},
    });
    expect(found.exit).toMatchObject({ code: 'misses', place: null });
  });
});
