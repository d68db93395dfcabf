/**
 * What a pose means for the crown, by hand. Sources: the project's collection of published values, 0 (limits), 3.1 (papilla), 6.6 (space budgets), and a crown of
 * simple form, a truncated cone, worked on paper beside each check.
 */
import { describe, expect, it } from 'vitest';
import { meshVolume } from '../../src/core/geometry/mesh.ts';
import { libraryShape } from '../../src/core/implant/library.ts';
import type { Fixing } from '../../src/core/measure/limit.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import { evaluate, readingOf, solidsOf } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { AbutmentInCrown, type ReductionRule } from '../../src/core/restoration/abutmentInCrown.ts';
import { EDGE_HALF } from '../../src/core/restoration/access.ts';
import { coverOf, DEFAULT_CROWN } from '../../src/core/restoration/crownChoices.ts';
import { emergenceAngle, heightFor } from '../../src/core/restoration/emergence.ts';
import type { MATERIALS } from '../../src/core/restoration/material.ts';
import type { PlannedCrown } from '../../src/core/restoration/plannedCrown.ts';
import { groundAbutment } from '../../src/core/restoration/reducedAbutment.ts';
import { reductionOf } from '../../src/core/restoration/reduction.ts';
import { marginReduction, type Restoration, restore } from '../../src/core/restoration/restoration.ts';
import { papillaShare, roomNeeded } from '../../src/core/restoration/room.ts';
import { type ConeCrown, coneCrown, lathedCrown } from '../support/coneCrown.ts';
import { slabSite } from '../support/demoPlans.ts';
import { cylinder, type SlabNumbers, slabPlan } from '../support/slabs.ts';
import { opinionOn } from '../support/solid.ts';

const rule = (material: keyof typeof MATERIALS = DEFAULT_CROWN.material) => ({
  cover: coverOf({ ...DEFAULT_CROWN, material }),
  post: DEFAULT_CROWN.post,
});

const IN_PLACE = { origin: [0, 0, 0], ex: [1, 0, 0], ey: [0, 1, 0], ez: [0, 0, 1] } as const;

const placed = (plan: Plan): Placement =>
  new Placement(solidsOf(plan.site), plan.implant, plan.pose, plan.crestMargin);

/** The crown's readings of a slab plan whose planned crown is a cone. */
function withCone(cone: ConeCrown, slab: SlabNumbers = {}): Restoration {
  const plan = slabPlan(slab);
  return restore({ placement: placed(plan), crown: coneCrown(cone), fixing: plan.fixing, limits: {} });
}

const value = ({ readings }: Restoration, id: Parameters<typeof readingOf>[1]): number => {
  const found = readingOf(readings, id).value;
  if (found === null) throw new Error(`${id} has no value`);
  return found;
};

describe('exit of the axis', () => {
  // The top lies 8 mm over the platform, the edge across its middle: the exit shifts by H tan τ.
  const cone: ConeCrown = { foot: 1, height: 7, footRadius: 3, topRadius: 5 };
  const TABLE = [
    [5, 0.7],
    [10, 1.411],
    [15, 2.144],
    [20, 2.912],
    [25, 3.73],
  ] as const;

  it.each(TABLE)('H tan τ, H = 8: %d° shifts it by %d mm (table 6.6)', (tilt, shift) => {
    const facial = withCone(cone, { fp: tilt });
    expect(value(facial, 'access-exit-to-edge')).toBeCloseTo(-shift, 3);
    expect(value(facial, 'access-exit')).toBe(-1);
    const palatal = withCone(cone, { fp: -tilt });
    expect(value(palatal, 'access-exit-to-edge')).toBeCloseTo(shift, 3);
    expect(value(palatal, 'access-exit')).toBe(1);
    expect(value(palatal, 'access-exit-correction')).toBe(0);
  });

  it.each(TABLE)('%d°: the bent channel turns by τ and what the bend’s place adds', (tilt) => {
    // From the bend at 2 mm along the axis to half a millimetre palatal of the edge's middle.
    const t = (tilt * Math.PI) / 180;
    const [f, c] = [DEFAULT_CROWN.channelBend * Math.sin(t), DEFAULT_CROWN.channelBend * Math.cos(t)];
    const turn = tilt + (Math.atan2(f + EDGE_HALF, 8 - c) * 180) / Math.PI;
    const found = withCone(cone, { fp: tilt });
    expect(value(found, 'access-exit-correction')).toBeCloseTo(turn, 3);
    expect(readingOf(found.readings, 'access-exit-correction').status).toBe(turn > 25 ? 'beyond' : 'near');
  });

  it('half a millimetre about the edge is edge', () => {
    const place = (f: number) => value(withCone(cone, { f }), 'access-exit');
    expect([-0.51, -0.49, 0, 0.49, 0.51].map(place)).toEqual([1, 0, 0, 0, -1]);
  });

  it('leaves through the side where the axis lies so flat, by hand', () => {
    // Wall: r = 3 + 2(c − 1)/7. Axis f = c tan 40°: c (tan 40° − 2/7) = 3 − 2/7.
    const c = (3 - 2 / 7) / (Math.tan((40 * Math.PI) / 180) - 2 / 7);
    const { access } = withCone(cone, { fp: 40 });
    expect(c).toBeLessThan(8);
    expect(access?.exit[2]).toBeCloseTo(c, 3);
    expect(access?.place).toBe('facial');
  });

  it('is not asked of a cemented crown', () => {
    const found = withCone(cone, { plan: { fixing: 'cemented' } });
    for (const id of ['access-exit', 'access-exit-to-edge', 'access-exit-correction'] as const)
      expect(readingOf(found.readings, id)).toMatchObject({ value: null, reason: 'wrong-fixing' });
  });

  it('is not asked of an abutment in one piece with the implant: it takes no screw', () => {
    const implant = libraryShape('tapered-one-piece-30x11');
    if (!implant) throw new Error('no such shape');
    for (const fixing of ['screw-bone', 'screw-gum'] as const) {
      const found = withCone(cone, { plan: { fixing, implant } });
      for (const id of ['access-exit', 'access-exit-to-edge', 'access-exit-correction'] as const)
        expect(readingOf(found.readings, id)).toMatchObject({ value: null, reason: 'one-piece' });
    }
  });

  it('is not found where the axis passes beside the crown', () => {
    const found = withCone({ ...cone, footRadius: 1, topRadius: 1 }, { f: 3 });
    expect(readingOf(found.readings, 'access-exit')).toMatchObject({ value: null, reason: 'misses-crown' });
  });
});

describe('emergence', () => {
  // Slab: cervical line at 2, planned margin at 3. Crown 7 wide at the margin, platform 4.
  const cone: ConeCrown = { foot: 2, height: 8, footRadius: 3.5, topRadius: 3.5 };
  const SIDES = ['emergence-mesial', 'emergence-distal', 'emergence-facial'] as const;

  it.each([
    [3, 26.57, 'within'],
    [2, 36.87, 'near'],
  ] as const)('4 → 7 over %d mm: %d° (table 6.6)', (height, angle, status) => {
    const found = withCone(cone, { r: 2, c: 3 - height });
    for (const id of SIDES) expect(value(found, id), id).toBeCloseTo(angle, 2);
    expect(readingOf(found.readings, 'emergence-mesial').status).toBe(status);
    expect(readingOf(found.readings, 'emergence-facial').status).toBeNull();
    expect(emergenceAngle(2, 3.5, height)).toBeCloseTo(angle, 2);
  });

  it('30° asks for 2.598 mm (table 6.6)', () => {
    expect(heightFor(1.5, 30)).toBeCloseTo(2.598, 3);
  });

  it('off the middle by half a millimetre: one side steeper, the other flatter', () => {
    // 3.5 − 2 ∓ 0.5 over 3 mm.
    const found = withCone(cone, { r: 2, m: 0.5 });
    expect(value(found, 'emergence-mesial')).toBeCloseTo((Math.atan(1 / 3) * 180) / Math.PI, 2);
    expect(value(found, 'emergence-distal')).toBeCloseTo((Math.atan(2 / 3) * 180) / Math.PI, 2);
  });

  it('is judged at shoulders at bone only: at a neck through the gum there was no link', () => {
    const found = withCone(cone, { r: 2, c: 1, shape: { transmucosalLength: 1 } });
    expect(readingOf(found.readings, 'emergence-mesial')).toMatchObject({ status: null, limit: null });
  });

  it('has no answer where the shoulder stands above the margin', () => {
    const found = withCone(cone, { r: 2, c: 3.2 });
    for (const id of SIDES)
      expect(readingOf(found.readings, id)).toMatchObject({ value: null, reason: 'shoulder-shows' });
  });
});

describe('room', () => {
  it.each([
    [3.4, 6.4],
    [4, 7],
    [4.2, 7.2],
  ])('an implant of %d needs %d mesiodistally (table 6.6)', (d, needed) => {
    expect(roomNeeded(cylinder(d / 2, 11))).toBeCloseTo(needed, 9);
    const { restoration } = evaluate(slabPlan({ r: d / 2, site: { gap: 8.5 } }));
    expect(value(restoration, 'mesiodistal-room')).toBeCloseTo(8.5 - needed, 6);
  });

  it('the crown’s height runs along the axis to the level of its edge', () => {
    const cone: ConeCrown = { foot: 2, height: 6, footRadius: 3, topRadius: 3 };
    expect(value(withCone(cone, { c: -1 }), 'crown-height')).toBeCloseTo(9, 9);
    expect(value(withCone(cone, { c: -1, fp: 20 }), 'crown-height')).toBeCloseTo(
      9 / Math.cos((20 * Math.PI) / 180),
      9,
    );
    const status = (c: number) => readingOf(withCone(cone, { c }).readings, 'crown-height').status;
    expect([1, 1.01, 3, 3.01].map(status)).toEqual(['within', 'near', 'near', 'beyond']);
  });

  it('papillae as published: 3, 4, 5, 6, 7 mm → 100, 100, 98, 56, 27 % (Tarnow 1992)', () => {
    expect([3, 4, 5, 6, 7].map(papillaShare)).toEqual([100, 100, 98, 56, 27]);
    expect([2, 9, 12].map(papillaShare)).toEqual([null, null, null]);
  });

  it('contact to bone by hand: upright teeth, contact over the cervical line and the bone under it', () => {
    // Slab at 12: mesially a central's distal contact, 0.72 of 10.5, its cervical line 2.5 high, bone 2 under it; distally a canine's mesial one.
    const { readings } = evaluate(slabPlan());
    expect(readingOf(readings, 'contact-to-crest-mesial')).toMatchObject({
      value: expect.closeTo(0.72 * 10.5 - 2.5 + 2, 9),
      aside: 27,
      status: 'beyond',
    });
    expect(readingOf(readings, 'contact-to-crest-distal')).toMatchObject({
      value: expect.closeTo(0.7 * 10 - 2.5 + 2, 9),
      status: 'near',
    });
  });
});

describe('reduction of a one-piece abutment', () => {
  const abutment = { height: 5, baseDiameter: 4, topDiameter: 4 };
  const cover = coverOf(DEFAULT_CROWN);
  const reduced = (at: Placement, crown: PlannedCrown, by: ReductionRule = rule()) =>
    reductionOf(crown, new AbutmentInCrown(at, crown, abutment, by));

  it('a cylinder in a truncated cone: frustum volumes (table 6.4’s formula) and the deepest place at the rim', () => {
    // Wall: R(c) = 2.875 − c/8 from 1 mm below the platform to 8 above. Inner radius: R − cover / cos α. All of the side is too near; the top is free.
    const crown = coneCrown({ foot: -1, height: 9, footRadius: 3, topRadius: 3 - 9 / 8 });
    const cos = Math.cos(Math.atan(1 / 8));
    const inner = (c: number) => 2.875 - c / 8 - cover / cos;
    const [a, b] = [inner(0), inner(5)];
    const left = (Math.PI * 5 * (a * a + a * b + b * b)) / 3;
    const found = reduced(placed(slabPlan({ r: 2 })), crown, rule());
    expect(found.volume).toBeGreaterThan(10);
    expect(Math.abs(found.volume / (20 * Math.PI - left) - 1)).toBeLessThan(0.005);
    // At the top's rim: (R(5) − 2) cos α of 1.05.
    expect(found.depth).toBeCloseTo(cover - (2.875 - 5 / 8 - 2) * cos, 3);
  });

  it('a plane top too near is taken off level', () => {
    // Wide cylinder, its top 0.45 over the abutment's: 0.6 of height goes, π r² · 0.6.
    const crown = coneCrown({ foot: -1, height: 6.45, footRadius: 6, topRadius: 6 });
    const found = reduced(placed(slabPlan({ r: 2 })), crown, rule());
    expect(found.depth).toBeCloseTo(0.6, 3);
    expect(Math.abs(found.volume / (0.6 * 4 * Math.PI) - 1)).toBeLessThan(0.01);
  });

  it('leaves the least post and says what is lacking over it', () => {
    // A crown of radius 1.5: 0.45 may stay, the post has 0.75. All outside the post goes: π (4 − 0.5625) 3, and all above 3 mm but a core of 0.45.
    const crown = coneCrown({ foot: -2, height: 12, footRadius: 1.5, topRadius: 1.5 });
    const found = reduced(placed(slabPlan({ r: 2 })), crown, rule());
    const volume = Math.PI * ((4 - 0.5625) * 3 + (4 - 0.45 * 0.45) * 2);
    expect(Math.abs(found.volume / volume - 1)).toBeLessThan(0.01);
    // Read off the field, within what it is off in a tube so narrow.
    expect(Math.abs(found.lacking - 0.3)).toBeLessThan(0.02);
  });

  it('takes off nothing where the cover holds, and less for a thinner material', () => {
    const wide = coneCrown({ foot: -1, height: 9, footRadius: 3.2, topRadius: 3.2 });
    expect(reduced(placed(slabPlan({ r: 2 })), wide, rule())).toMatchObject({
      depth: 0,
      volume: 0,
    });
    const crown = coneCrown({ foot: -1, height: 9, footRadius: 2.8, topRadius: 2.8 });
    const depth = (material: keyof typeof MATERIALS) =>
      reduced(placed(slabPlan({ r: 2 })), crown, rule(material)).depth;
    expect(depth('zirconia')).toBe(0);
    expect(depth('lithium-disilicate')).toBeCloseTo(0.25, 3);
    expect(depth('metal-ceramic')).toBeCloseTo(0.45, 3);
  });

  describe('its palatal side in a waisted crown', () => {
    // Radii 3 at the foot 1 mm under the platform, 2.2 at 3 mm over it, 3 at 7: furthest palatally 2.8 at the platform, 2.6 at the abutment's top.
    const crown = lathedCrown(-1, [
      [0, 3],
      [4, 2.2],
      [8, 3],
    ]);
    const post = { diameter: 0.5, height: 1 };
    const of = (radius: number) => {
      const numbers = { height: 5, baseDiameter: 2 * radius, topDiameter: 2 * radius };
      const body = new AbutmentInCrown(placed(slabPlan({ r: 2 })), crown, numbers, { cover, post });
      return { plane: body.palatal, volume: reductionOf(crown, body).volume };
    };
    const length = Math.hypot(5, 0.2);
    // The line through both, moved in to the waist, and by the cover.
    const whole = (5 * 2.2 + 0.2 * 3) / length - cover;

    it('is ground to the plane, to a share of it where less than 0.2 mm is too near, and not at all before', () => {
      // At the waist 2.2 − 1.05 may stay.
      expect(of(1.14).plane).toBeNull();
      expect(of(1.36).plane?.at).toBeCloseTo(whole, 3);
      expect(of(1.36).plane?.normal[1]).toBeCloseTo(0.2 / length, 3);
      // 0.1 too near: half the way from the top's palatal rim, which stands out furthest.
      const touching = (5 * 1.25 + 0.2 * 5) / length;
      expect(of(1.25).plane?.at).toBeCloseTo((touching + whole) / 2, 3);
    });

    it('never jumps: a wider abutment by 0.005 mm loses little more', () => {
      const volumes = Array.from({ length: 57 }, (_, i) => of(1.12 + 0.005 * i).volume);
      const steps = volumes.slice(1).map((v, i) => v - volumes[i]);
      expect(volumes[0]).toBe(0);
      expect(volumes[56]).toBeGreaterThan(3);
      expect(Math.min(...steps)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...steps)).toBeLessThan(0.25);
    });
  });

  it('the ground abutment and what is ground off are the whole abutment; the mesh is closed', async () => {
    const crown = coneCrown({ foot: -1, height: 6.6, footRadius: 3, topRadius: 2.2 });
    const at = placed(slabPlan({ r: 2, f: 0.3, fp: 4 }));
    const found = reduced(at, crown);
    const { left: mesh } = groundAbutment(new AbutmentInCrown(at, crown, abutment, rule()), IN_PLACE);
    expect(found.volume).toBeGreaterThan(5);
    expect(Math.abs(meshVolume(mesh) + found.volume - 20 * Math.PI)).toBeLessThan(0.02 * 20 * Math.PI);
    expect((await opinionOn(mesh)).status).toBe('NoError');
  });

  it('lowers the finishing line until it hides, not nearer to the bone than 1 mm', () => {
    // Slab: bone at 0 (rounded over 0.05), margin at 3. Shoulder at 2.5 hides; at 3.2 it has 0.7 to go; at 1.2 over a margin at 0.6 the bone allows 0.2 of 1.1.
    const at = (c: number, margin = 3) =>
      marginReduction(placed(slabPlan({ c, site: { reference: { kind: 'typed', cej: 0, margin } } })));
    expect(at(3 - DEFAULT_CROWN.belowGum).value).toBeCloseTo(0, 9);
    expect(at(3.2).value).toBeCloseTo(0.7, 9);
    expect(at(1.2, 0.6).value).toBeCloseTo(0.2, 1);
    expect(at(1.2, 0.6).short).toBeCloseTo(0.9, 1);
  });

  it('is not asked of an implant without an abutment of its own', () => {
    const { readings } = evaluate(slabPlan());
    for (const id of ['abutment-reduction-depth', 'abutment-reduction-volume', 'margin-reduction'] as const)
      expect(readingOf(readings, id)).toMatchObject({ value: null, reason: 'no-abutment' });
  });
});

describe('one pose, three fixings', () => {
  // Shoulder at the reference CEJ, 1.5 above the bone, half a millimetre under the margin; axis on the incisal line.
  const site = slabSite(8);
  const base = (fixing: Fixing, f = 0): Plan =>
    slabPlan({
      width: 8,
      r: 1.5,
      f,
      c: 1.5,
      // The last thread a hair below the crest, which is rounded.
      shape: { transmucosalLength: 1.55 },
      site: {
        gap: 8,
        reference: { kind: 'typed', cej: 1.5, margin: 2 },
        mesial: { ...site.mesial, cejAboveBone: 1.5 },
        distal: { ...site.distal, cejAboveBone: 1.5 },
        canal: { ...site.canal, behind: 16 },
      },
      plan: { fixing },
    });
  const offset = readingOf(evaluate(base('cemented')).readings, 'incisal-line-offset').value ?? Number.NaN;
  const of = (fixing: Fixing) => evaluate(base(fixing, -offset));

  it('cemented: nothing beyond', () => {
    const { readings, findings } = of('cemented');
    expect(readingOf(readings, 'incisal-line-offset').value).toBeCloseTo(0, 9);
    expect(readingOf(readings, 'shoulder-to-crest-facial').value).toBeCloseTo(1.5, 1);
    expect(findings.filter(({ status }) => status === 'beyond').map(({ reading }) => reading)).toEqual([]);
  });

  it('a screw through the gum: the depth is right, the channel comes out at the edge', () => {
    const { readings, findings } = of('screw-gum');
    expect(readingOf(readings, 'shoulder-to-cej').status).toBe('within');
    expect(readingOf(readings, 'access-exit').value).toBe(0);
    expect(readingOf(readings, 'access-exit-correction').status).toBe('near');
    expect(findings.filter(({ status }) => status === 'beyond')).toEqual([]);
  });

  it('a screw at bone: the shoulder lies far too shallow', () => {
    const { readings } = of('screw-bone');
    expect(readingOf(readings, 'shoulder-to-gum-margin').status).toBe('beyond');
  });
});
