/** What is handed over of the crown to be drawn: it must be what is read, mirrored where the site is; solids are judged by manifold-3d. */
import { describe, expect, it } from 'vitest';
import type { SiteCode } from '../../src/core/anatomy/site.ts';
import { broughtInto, carried } from '../../src/core/geometry/carry.ts';
import { meshVolume } from '../../src/core/geometry/mesh.ts';
import { distance, type Vec3 } from '../../src/core/geometry/vec.ts';
import { libraryShape } from '../../src/core/implant/library.ts';
import type { ReadingId } from '../../src/core/measure/reading.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { type Evaluation, evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import { planAlongCrown } from '../../src/core/plan/newPlan.ts';
import {
  crownDrawing,
  crownInPlane,
  crownSolid,
  groundAbutmentOf,
  groundOutlineOf,
} from '../../src/core/restoration/drawing.ts';
import { opinionOn } from '../support/solid.ts';

const shape = libraryShape('tapered-one-piece-30x11');
if (!shape) throw new Error('no such shape');

/** A one-piece implant half a millimetre palatal of the crown's axis, its crown worn and turned a little. */
function evaluated(tooth: SiteCode): Evaluation {
  const crown = { wear: 0.4, tilt: { faciopalatal: 3, mesiodistal: -2 } };
  const plan = planAlongCrown(defaultSite(tooth), shape as NonNullable<typeof shape>, 'screw-gum', '');
  const { platform } = plan.pose;
  return evaluate({
    ...plan,
    crown: { ...plan.crown, ...crown },
    pose: { ...plan.pose, platform: { ...platform, f: platform.f - 0.5 } },
  });
}

describe.each([11, 12, 22, 13] as const)('site %d', (tooth) => {
  const scene = evaluated(tooth);
  const { anatomy, placement, restoration, readings } = scene;
  const ends = (id: ReadingId, of = readings): [Vec3, Vec3] => {
    const { from, to } = readingOf(of, id);
    if (!from || !to) throw new Error(id);
    return [from, to];
  };

  it('draws the channel where it is read, none through an abutment in one piece with the implant', () => {
    const { plan } = scene;
    const screwed = evaluate({ ...plan, implant: { ...plan.implant, abutment: null } });
    const { channel } = crownDrawing(screwed);
    if (!channel) throw new Error('no channel');
    expect(channel.exit).toEqual(ends('access-exit', screwed.readings)[1]);
    expect([channel.edge, channel.exit]).toEqual(ends('access-exit-to-edge', screwed.readings));
    expect(distance(channel.from, channel.bend)).toBeCloseTo(plan.crown.channelBend, 9);
    const { value } = readingOf(screwed.readings, 'access-exit-correction');
    expect(channel.corrected?.angle ?? null).toBe(value);
    expect(crownDrawing(scene).channel).toBeNull();
  });

  it('draws the contours and the contacts where they are read', () => {
    const { contours, contacts } = crownDrawing(scene);
    for (const side of ['mesial', 'distal', 'facial'] as const) {
      const contour = contours[side];
      if (contour) expect([contour.rim, contour.margin]).toEqual(ends(`emergence-${side}`));
      else expect(readingOf(readings, `emergence-${side}`).value).toBeNull();
    }
    expect([contacts.mesial, contacts.distal]).toEqual(
      (['mesial', 'distal'] as const).map((side) => ends(`contact-to-crest-${side}`)[0]),
    );
  });

  it('has the CEJ and the margin on the crown, the margin coronal of the CEJ', () => {
    const { frame, cej, margin } = crownSolid(scene);
    expect(cej).toHaveLength(margin.length);
    cej.forEach((p, i) => {
      const [low, high] = [p, margin[i]].map((q) => broughtInto(frame, q));
      expect(Math.abs(restoration.crown.wall.signed(...low))).toBeLessThan(1e-6);
      expect(Math.abs(restoration.crown.wall.signed(...high))).toBeLessThan(1e-6);
      expect(high[2]).toBeGreaterThan(low[2]);
    });
    // The facial middle of the CEJ lies at the reference level, whatever the crown's tilt.
    const level = anatomy.toJaw([0, 0, anatomy.site.reference.cej])[2];
    const facial = cej.reduce((a, b) => (broughtInto(frame, b)[1] > broughtInto(frame, a)[1] ? b : a));
    expect(facial[2]).toBeCloseTo(level, 2);
  });

  it('cuts the same crown in the section', () => {
    const plane = { origin: placement.platform, x: placement.ef, y: placement.a };
    const loops = crownInPlane(scene, plane);
    expect(loops).toHaveLength(1);
    const { frame } = restoration.crown;
    for (const [u, v] of loops[0]) {
      const p = [0, 1, 2].map((k) => plane.origin[k] + u * plane.x[k] + v * plane.y[k]);
      const q = broughtInto(frame, [p[0], p[1], p[2]]);
      // Across the foot the outline runs inside the wall.
      if (q[2] > 2) expect(Math.abs(restoration.crown.wall.signed(...q))).toBeLessThan(0.1);
    }
  });

  it('grinds the abutment: what is left is closed, and with what is taken off it is the whole', async () => {
    const ground = groundAbutmentOf(scene);
    const { abutment } = scene.plan.implant;
    if (!ground || !abutment) throw new Error('no abutment');
    expect((await opinionOn(ground.left)).status).toBe('NoError');
    // A frustum 3 to 2 across, 5 high (table 6.4’s formula), less what is read.
    const whole = (Math.PI * 5 * (1.5 * 1.5 + 1.5 + 1)) / 3;
    const taken = readingOf(readings, 'abutment-reduction-volume').value ?? 0;
    expect(abutment).toMatchObject({ height: 5, baseDiameter: 3, topDiameter: 2 });
    expect(Math.abs(meshVolume(ground.left) + taken - whole)).toBeLessThan(0.05 * whole);
    expect(ground.wedge.triangles.length > 0).toBe(taken > 0.05);
    const { before, after } = groundOutlineOf(scene, Math.PI) ?? { before: [], after: [] };
    expect(before[0]).toEqual([1.5, 0]);
    for (const [rho, x] of after) expect(rho).toBeLessThanOrEqual(1.5 - x / 10 + 1e-9);
  });
});

describe('both sides of the arch', () => {
  it('are mirror images in the jaw', () => {
    const [right, left] = ([12, 22] as const).map((tooth) => crownSolid(evaluated(tooth)));
    right.margin.forEach(([x, y, z], i) => {
      for (const [k, wanted] of [-x, y, z].entries()) expect(left.margin[i][k]).toBeCloseTo(wanted, 9);
    });
    expect(meshVolume(carried(right.mesh, right.frame))).toBeCloseTo(
      meshVolume(carried(left.mesh, left.frame)),
      6,
    );
  });
});
