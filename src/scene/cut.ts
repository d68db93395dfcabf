import { Plane, ShapeUtils, Vector2, Vector3 } from 'three';
import type { Anatomy } from '../core/anatomy/anatomy.ts';
import { archDirections, fromArch } from '../core/anatomy/arch.ts';
import { sectionOutline } from '../core/anatomy/section.ts';
import { carved } from '../core/drilling/carve.ts';
import { bodiesInPlane } from '../core/drilling/outline.ts';
import type { PassBody } from '../core/drilling/passBody.ts';
import { type Loop, loopArea, onPlane, type Plane as Section } from '../core/geometry/slice.ts';
import { dot, norm, scale, sub, type Vec3 } from '../core/geometry/vec.ts';
import { envelopePolyline } from '../core/implant/profile.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { cutCrown } from '../core/restoration/plannedCrown.ts';
import type { Body } from './materials.ts';

/** The cut through the implant's axis, as it stands in the jaw frame. */
export interface Cut {
  /** Keeps the half that stays. */
  readonly keep: Plane;
  /** Keeps the half that is taken away. */
  readonly drop: Plane;
  /** Keep what lies no further along the arch than the teeth beside the gap. */
  readonly ends: readonly [Plane, Plane];
}

export const newCut = (): Cut => ({ keep: new Plane(), drop: new Plane(), ends: [new Plane(), new Plane()] });

/** Lays the ends of what is drawn of the part that is taken away: past the teeth beside the gap. */
export function layEnds({ ends }: Cut, { arch, teeth, toJaw, toJawDirection }: Anatomy): void {
  for (const [i, tooth] of [teeth.mesial, teeth.distal].entries()) {
    const way = tooth.station > 0 ? 1 : -1;
    const q = tooth.station + way * (tooth.numbers.crownWidth / 2 + 0.6);
    const { tangent } = archDirections(arch, q);
    ends[i].setFromNormalAndCoplanarPoint(
      new Vector3(...toJawDirection(scale(tangent, -way))),
      new Vector3(...toJaw(fromArch(arch, q, 0, 0))),
    );
  }
}

/** Writes the implant's outline in the plane of the cut. */
export function layBody(body: Body, { placement, plan }: Evaluation): void {
  const { x, r } = envelopePolyline(plan.implant);
  const { abutment } = plan.implant;
  const above = abutment
    ? [
        [abutment.height - placement.tP, abutment.topDiameter / 2],
        [-placement.tP, abutment.baseDiameter / 2],
      ]
    : [
        [-placement.tP, r[0]],
        [-placement.tP, r[0]],
      ];
  const below = x.map((station, i) => [-placement.tP - station, r[i]]);
  for (const [i, [height, radius]] of [...above, ...below].entries()) body[i].set(height, radius);
}

/** No implant stands in the cut: the faces have its hole already. */
export function clearBody(body: Body): void {
  for (const corner of body) corner.set(0, 0);
}

/** The plane through the axis and `e_f` (site frame): `x` facial, `y` coronal. */
export const sectionPlane = ({ placement }: Evaluation): Section => ({
  origin: placement.entry,
  x: placement.ef,
  y: placement.a,
});

/** Which part of the arch is taken away: that with this sign of its arch places; 0: none, the plane is seen from its edge. */
export type Removed = 1 | -1 | 0;

/** Sine of the angle between the view and the plane below which the cut closes, and over which it opens again; the crown is whole from facial and palatal. */
const CLOSES = { site: 0.3, crown: 0.46 } as const;
const HYSTERESIS = 0.06;

/** Turns the cut so that the half beyond the plane, as seen from the eye (jaw frame), stays. `was`: what it took away before. */
export function layCut(
  cut: Cut,
  { anatomy, placement }: Evaluation,
  eye: Vec3,
  was: Removed,
  subject: keyof typeof CLOSES = 'site',
): Removed {
  const p = anatomy.toJaw(placement.entry);
  const n = anatomy.toJawDirection(placement.em);
  const toward = sub(eye, p);
  const sine = dot(n, toward) / norm(toward);
  const near = sine > 0 ? -1 : 1;
  cut.keep.setFromNormalAndCoplanarPoint(new Vector3(...n).multiplyScalar(near), new Vector3(...p));
  cut.drop.copy(cut.keep).negate();
  if (Math.abs(sine) < CLOSES[subject] + (was === 0 ? HYSTERESIS : 0)) return 0;
  return near > 0 ? -1 : 1;
}

/** A face of the cut, in triangles: corners in the jaw frame and in the plane. */
export interface Face {
  readonly points: Vec3[];
  readonly flat: (readonly [number, number])[];
  readonly index: number[];
}

export interface CutFaces {
  readonly bone: Face;
  readonly marrow: Face;
  readonly gum: Face;
  readonly canal: Face;
  /** Outlines in the jaw frame, closed. */
  readonly outlines: {
    readonly bone: Vec3[][];
    readonly marrow: Vec3[][];
    readonly gum: Vec3[][];
    readonly canal: Vec3[][];
  };
}

/** Fills loops: those that run the way of the largest are outer ones, the others holes in the one that holds them. */
function faceOf(loops: readonly Loop[], place: (x: number, y: number) => Vec3): Face {
  if (loops.length === 0) return { points: [], flat: [], index: [] };
  const areas = loops.map(loopArea);
  const way = Math.sign(areas.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0));
  const holes = loops.filter((_, i) => Math.sign(areas[i]) !== way);
  const face: Face = { points: [], flat: [], index: [] };
  loops.forEach((outer, i) => {
    if (Math.sign(areas[i]) !== way) return;
    const own = holes.filter((hole) => contains(outer, hole[0]));
    const base = face.points.length;
    const corners = [outer, ...own];
    const vectors = corners.map((loop) => loop.map(([x, y]) => new Vector2(x, y)));
    for (const triangle of ShapeUtils.triangulateShape(vectors[0], vectors.slice(1))) {
      for (const k of triangle) face.index.push(base + k);
    }
    for (const [x, y] of corners.flat()) {
      face.flat.push([x, y]);
      face.points.push(place(x, y));
    }
  });
  return face;
}

function contains(loop: Loop, [x, y]: readonly [number, number]): boolean {
  let inside = false;
  loop.forEach(([x0, y0], i) => {
    const [x1, y1] = loop[(i + 1) % loop.length];
    if (y0 > y !== y1 > y && x < x0 + ((x1 - x0) * (y - y0)) / (y1 - y0)) inside = !inside;
  });
  return inside;
}

/** The face at which the planned crown is cut, and its outline; jaw frame. */
export function crownFace(evaluation: Evaluation): { readonly face: Face; readonly outline: Vec3[][] } {
  const { anatomy } = evaluation;
  const plane = sectionPlane(evaluation);
  const crown = cutCrown(evaluation.restoration.crown, plane).loops.filter(
    (l) => Math.abs(loopArea(l)) > 0.01,
  );
  const place = (x: number, y: number): Vec3 => anatomy.toJaw(onPlane(plane, x, y));
  return { face: faceOf(crown, place), outline: crown.map((loop) => loop.map(([x, y]) => place(x, y))) };
}

/** The faces and outlines of the cut at an evaluation, less what `bodies` have taken out of bone and gum. About 2 ms, 2 more with a hole. */
export function cutFaces(evaluation: Evaluation, bodies: readonly PassBody[] = []): CutFaces {
  const { anatomy } = evaluation;
  const plane = sectionPlane(evaluation);
  const whole = sectionOutline(anatomy, plane);
  const holes = bodiesInPlane(bodies, plane);
  const outline = {
    bone: carved(whole.bone, holes),
    marrow: carved(whole.marrow, holes),
    gum: carved(whole.gum, holes),
    canal: carved(whole.canal, holes),
  };
  const place = (x: number, y: number): Vec3 => anatomy.toJaw(onPlane(plane, x, y));
  const lines = (loops: readonly Loop[]) => loops.map((loop) => loop.map(([x, y]) => place(x, y)));
  return {
    bone: faceOf(outline.bone, place),
    marrow: faceOf(outline.marrow, place),
    gum: faceOf(outline.gum, place),
    canal: faceOf(outline.canal, place),
    outlines: {
      bone: lines(outline.bone),
      marrow: lines(outline.marrow),
      gum: lines(outline.gum),
      canal: lines(outline.canal),
    },
  };
}
