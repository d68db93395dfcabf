import type { Anatomy } from '../core/anatomy/anatomy.ts';
import { broughtOut } from '../core/geometry/carry.ts';
import { axisFrame, axisOf } from '../core/geometry/pose.ts';
import { add, cross, dot, scale, sub, unit, type Vec3 } from '../core/geometry/vec.ts';
import { gapContact } from '../core/measure/lines.ts';
import { pivotPoint } from '../core/plan/edits.ts';
import type { Plan } from '../core/plan/plan.ts';
import { plannedCrownOf } from '../core/restoration/plannedCrown.ts';
import type { View } from '../state/session.ts';
import { ARC, arcPoint, tiltReach } from './handles.ts';

/** Where the camera stands: direction from the target to it (unit), what is up on screen, and the target; jaw frame, mm. */
export interface Standpoint {
  readonly toward: Vec3;
  readonly up: Vec3;
  readonly target: Vec3;
  readonly distance: number;
}

/** A long lens: little perspective, as in a drawing. Vertical field of view in degrees, distance in mm. */
export const LENS = { fov: 14.9, near: 40, far: 420 } as const;

interface Preset {
  /** From the arch's tangent (patient's left) toward facial, degrees. */
  readonly azimuth: number;
  readonly elevation: number;
}

/** Standpoints of the drawing. Facial is on the right in the first, on the left in the second, on both sides of the arch. */
export const PRESETS: Readonly<Record<Exclude<View, 'axis'>, Preset>> = {
  mesial: { azimuth: 47, elevation: 15 },
  distal: { azimuth: 133, elevation: 15 },
  facial: { azimuth: 90, elevation: 4 },
  palatal: { azimuth: 270, elevation: 22 },
  incisal: { azimuth: 90, elevation: 80 },
};

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

/** Direction from the site to the camera of a view, jaw frame. */
function direction(view: View, { pose }: Plan, anatomy: Anatomy): Vec3 {
  const { toJawDirection, site } = anatomy;
  if (view === 'axis') {
    const a = toJawDirection(axisOf(pose.tilt));
    // Straight from above there is no up on the picture: the eye stands a little facially then.
    return a[2] > 0.9995 ? unit(add(a, scale(toJawDirection([0, 1, 0]), 0.03))) : a;
  }
  const { azimuth, elevation } = PRESETS[view];
  // The tangent that points to the patient's left: mesial on the right side of the arch, distal on the left one.
  const left = scale(toJawDirection([1, 0, 0]), site.tooth >= 20 ? -1 : 1);
  const facial = toJawDirection([0, 1, 0]);
  const flat = add(scale(left, Math.cos(rad(azimuth))), scale(facial, Math.sin(rad(azimuth))));
  return unit(add(scale(flat, Math.cos(rad(elevation))), [0, 0, Math.sin(rad(elevation))]));
}

/** What a view is framed for: the site with its handles, the crown, or the site with a plan gone wrong, which has none. */
export type Subject = 'site' | 'crown' | 'wrong';

/** How much of the implant below its shoulder a view of the crown holds, mm. */
const UNDER_SHOULDER = 4.5;

/** Points that a view of the crown has to hold, jaw frame. */
function crownPoints(plan: Plan, anatomy: Anatomy): Vec3[] {
  const { teeth, toJaw } = anatomy;
  const beside = [teeth.mesial, teeth.distal].map((t) => t.marks.tip);
  const { frame, edge } = plannedCrownOf(anatomy, plan.crown);
  const platform = pivotPoint(plan, 'platform');
  const { a } = axisFrame(axisOf(plan.pose.tilt));
  const under = add(platform, scale(a, -UNDER_SHOULDER));
  const reach = tiltReach(plan, 'entry');
  const arc = [-ARC.half, ARC.half].map((by) => arcPoint(plan, 'entry', reach, 0, by));
  const contacts = [gapContact(teeth.mesial, true), gapContact(teeth.distal, false)];
  const own = [edge[0], edge[edge.length - 1]].map((p) => broughtOut(frame, p));
  const around = [1, -1].map((side) => add(under, [0, side * 4.5, 0]));
  return [
    ...contacts,
    ...beside,
    ...own,
    ...around,
    ...arc,
    add(pivotPoint(plan, 'entry'), scale(a, ARC.radius)),
  ].map(toJaw);
}

/** Points that a view of the site has to hold, jaw frame; the handles among them where there are any. */
function keyPoints(plan: Plan, anatomy: Anatomy, handles: boolean): Vec3[] {
  const { ridge, teeth, toJaw } = anatomy;
  const { a } = axisFrame(axisOf(plan.pose.tilt));
  const entry = pivotPoint(plan, 'entry');
  const beside = [teeth.mesial, teeth.distal].flatMap((t) => [
    t.marks.tip,
    t.marks.mesialContact,
    t.marks.distalContact,
    t.root.apex,
  ]);
  const foot = [1, -1].map((side): Vec3 => {
    const [m, f, c] = ridge.sectionPoint(0, side * 4, Math.min(plan.site.ridge.height, 16));
    return [m, f, Math.max(c, ridge.floor)];
  });
  const reach = tiltReach(plan, 'entry');
  const arc = [-ARC.half, ARC.half].map((by) => arcPoint(plan, 'entry', reach, 0, by));
  const apex = pivotPoint(plan, 'apex');
  const implant = handles ? [apex, add(entry, scale(a, ARC.radius)), ...arc] : [apex];
  return [...beside, ...foot, ...implant].map(toJaw);
}

/** Room at the edges of the picture, px: for the words of the views, the scale and the tags beside the model. */
const ROOM = { top: 72, bottom: 44, side: 84 } as const;

/** Shape of the picture, px. */
export interface Picture {
  readonly width: number;
  readonly height: number;
}

/**
 * The standpoint of a view on a plan's site, or on its planned crown, framed for a picture: everything that matters in it, whatever its shape. It does not follow the pose: ask
 * again only when a view is chosen or the site changes.
 */
export function standpointOf(
  view: View,
  plan: Plan,
  anatomy: Anatomy,
  inMouth: boolean,
  { width, height }: Picture,
  subject: Subject = 'site',
): Standpoint {
  const toward = direction(view, plan, anatomy);
  const upright: Vec3 = [0, 0, inMouth ? -1 : 1];
  const sideways = unit(cross(upright, toward));
  const high = cross(toward, sideways);
  const points =
    subject === 'crown' ? crownPoints(plan, anatomy) : keyPoints(plan, anatomy, subject === 'site');
  const tall = Math.max(80, height - ROOM.top - ROOM.bottom);
  const wide = Math.max(80, width - 2 * ROOM.side);
  const middle = (numbers: readonly number[]) => (Math.min(...numbers) + Math.max(...numbers)) / 2;
  const spread = (numbers: readonly number[]) => Math.max(...numbers) - Math.min(...numbers);
  const lens = height / 2 / Math.tan(rad(LENS.fov / 2));
  let target = add(
    add(
      scale(sideways, middle(points.map((p) => dot(p, sideways)))),
      scale(high, middle(points.map((p) => dot(p, high)))),
    ),
    scale(toward, middle(points.map((p) => dot(p, toward)))),
  );
  let distance = 150;
  // What is nearer the eye looks larger: a few rounds bring size and middle to rest.
  for (let round = 0; round < 6; round++) {
    const seen = points.map((p) => {
      const v = sub(p, target);
      const near = distance / Math.max(20, distance - dot(v, toward));
      return { x: dot(v, sideways) * near, y: dot(v, high) * near };
    });
    const xs = seen.map(({ x }) => x);
    const ys = seen.map(({ y }) => y);
    const millimetre = Math.min(tall / spread(ys), wide / spread(xs));
    distance = lens / millimetre;
    const down = (ROOM.top - ROOM.bottom) / 2 / millimetre;
    target = add(target, add(scale(sideways, middle(xs)), scale(high, middle(ys) + down)));
  }
  return { toward, up: upright, target, distance };
}

/** Where the camera itself stands, jaw frame. */
export const cameraAt = ({ target, toward, distance }: Standpoint): Vec3 =>
  add(target, scale(toward, distance));

/** Part of the way from one standpoint to another: turning about the upright, not cutting the corner. `w` in 0…1. */
export function between(a: Standpoint, b: Standpoint, w: number): Standpoint {
  const angles = ({ toward: [x, y, z] }: Standpoint): [number, number] => [
    Math.atan2(y, x),
    Math.asin(Math.max(-1, Math.min(1, z))),
  ];
  const [a0, e0] = angles(a);
  const [a1, e1] = angles(b);
  const turn = a1 - a0 - 2 * Math.PI * Math.round((a1 - a0) / (2 * Math.PI));
  const [azimuth, elevation] = [a0 + w * turn, e0 + w * (e1 - e0)];
  const flat = Math.cos(elevation);
  return {
    toward: [flat * Math.cos(azimuth), flat * Math.sin(azimuth), Math.sin(elevation)],
    up: b.up,
    target: add(a.target, scale(sub(b.target, a.target), w)),
    distance: a.distance + w * (b.distance - a.distance),
  };
}
