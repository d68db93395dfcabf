import { arcBetween } from '../geometry/arc.ts';
import { broughtInto, broughtOut } from '../geometry/carry.ts';
import { onPlane } from '../geometry/slice.ts';
import { along, distance, dot, scale, sub, unit, type Vec3 } from '../geometry/vec.ts';
import type { AccessExit } from '../restoration/access.ts';
import { cutCrown, type PlannedCrown, wayOut } from '../restoration/plannedCrown.ts';
import { type Evaluation, readingOf } from './evaluate.ts';

export const CONTOUR_SIDES = ['mesial', 'distal', 'facial'] as const;
export type ContourSide = (typeof CONTOUR_SIDES)[number];

/** An angle as it is drawn: two legs from one point and the arc between them; jaw frame, mm. */
export interface AngleMark {
  readonly apex: Vec3;
  /** End of the leg along the axis, and of the other. */
  readonly onAxis: Vec3;
  readonly to: Vec3;
  readonly arc: readonly Vec3[];
}

/** Where the axis comes out, with the crown's outward normal there and the way the axis goes; jaw frame, mm. */
export interface ExitMark {
  readonly at: Vec3;
  readonly normal: Vec3;
  readonly way: Vec3;
}

/** A screw's channel from the shoulder to where it comes out of the crown, by way of its bend; jaw frame, mm. */
export interface ChannelMark {
  readonly middle: readonly Vec3[];
  /** Its walls in the plane of axis and `e_f`, each to the crown's surface: palatal, facial. */
  readonly walls: readonly [readonly Vec3[], readonly Vec3[]];
}

/** What is drawn of the crown group beside the lines of its readings; jaw frame, mm. */
export interface CrownMarks {
  /** Null: no channel. */
  readonly channel: ChannelMark | null;
  readonly exit: ExitMark | null;
  /** The turn at the channel's bend; null where the channel runs straight. */
  readonly correction: AngleMark | null;
  readonly contours: readonly (AngleMark & { readonly side: ContourSide })[];
  /** The finishing line as it is: the shoulder's rim, closed, from facial toward mesial. */
  readonly finish: readonly Vec3[];
  /** The facial part of the finishing line, lowered; null where it may stay. */
  readonly lowered: readonly Vec3[] | null;
  /** The deepest place of what is ground off: from the abutment's surface to where the ground one has it. */
  readonly ground: { readonly from: Vec3; readonly to: Vec3 } | null;
  /** The planned incisal edge, distal to mesial. */
  readonly edge: readonly Vec3[];
}

/** Radii of the arcs of angles, mm. */
const CONTOUR_ARC = 1.7;
const CORRECTION_ARC = 3.4;

const COLUMNS = 48;
/** How far to both sides of facial a lowered finishing line is drawn, columns. */
const FACIAL = 7;

const marks = new WeakMap<Evaluation['restoration'], CrownMarks>();

/** The marks of an evaluation; made once. */
export function crownMarks(evaluation: Evaluation): CrownMarks {
  const { restoration } = evaluation;
  const known = marks.get(restoration);
  if (known) return known;
  const made = marksOf(evaluation);
  marks.set(restoration, made);
  return made;
}

function marksOf(evaluation: Evaluation): CrownMarks {
  const { placement: at, anatomy, restoration, plan } = evaluation;
  const { toJaw } = anatomy;
  const { crown } = restoration;
  // A one-piece abutment takes no screw.
  const access = plan.fixing === 'cemented' || plan.implant.abutment ? null : restoration.access;
  const rim = Array.from({ length: COLUMNS }, (_, i) => at.rimPoint((2 * Math.PI * i) / COLUMNS));
  const bent = access?.bent ?? null;
  return {
    channel: access && channelOf(evaluation, access),
    exit: access && exitMark(evaluation, access.exit),
    correction:
      access && bent && bent.angle > 0
        ? angleMark(evaluation, toJaw(access.bend), toJaw(bent.exit), CORRECTION_ARC)
        : null,
    contours: CONTOUR_SIDES.flatMap((side) => {
      const { from, to } = readingOf(evaluation.readings, `emergence-${side}`);
      return from && to ? [{ side, ...angleMark(evaluation, from, to, CONTOUR_ARC) }] : [];
    }),
    finish: rim.map(toJaw),
    lowered: lowered(evaluation, rim),
    ground: groundOf(evaluation),
    edge: crown.edge.map((p) => toJaw(broughtOut(crown.frame, p))),
  };
}

/** Half the width at which a channel is drawn, mm; nothing is measured to it. */
export const CHANNEL_HALF = 0.85;

type Flat = readonly [number, number];

/** A channel in the plane of axis and `e_f`: its middle line, and the two walls beside it up to where each leaves the crown. */
function channelOf({ placement, anatomy, restoration }: Evaluation, access: AccessExit): ChannelMark {
  const plane = { origin: placement.platform, x: placement.ef, y: placement.a };
  const { loops } = cutCrown(restoration.crown, plane);
  const place = ([u, v]: Flat): Vec3 => anatomy.toJaw(onPlane(plane, u, v));
  const flat = (p: Vec3): Flat => {
    const r = sub(p, plane.origin);
    return [dot(r, plane.x), dot(r, plane.y)];
  };
  const { bent } = access;
  const bends = bent !== null && bent.angle > 0;
  const end = flat(bends ? bent.exit : access.exit);
  const corner: Flat = bends ? flat(access.bend) : [0, 0];
  const length = Math.hypot(end[0] - corner[0], end[1] - corner[1]);
  const way: Flat = [(end[0] - corner[0]) / length, (end[1] - corner[1]) / length];
  const wall = (side: 1 | -1): Vec3[] => {
    const w = side * CHANNEL_HALF;
    // Both parts' walls meet on the line that halves the bend.
    const mitre = w / (1 + way[1]);
    const turn: Flat = [corner[0] + mitre * (1 + way[1]), corner[1] - mitre * way[0]];
    const out = wayOut(loops, turn, way) ?? length;
    const last: Flat = [turn[0] + out * way[0], turn[1] + out * way[1]];
    return [[w, 0] as Flat, turn, last].map(place);
  };
  return {
    middle: (bends ? [[0, 0] as Flat, corner, end] : [corner, end]).map(place),
    walls: [wall(-1), wall(1)],
  };
}

/** The angle at `apex` (jaw frame) between the axis and the way to `to`. */
function angleMark({ anatomy, placement }: Evaluation, apex: Vec3, to: Vec3, radius: number): AngleMark {
  const a = anatomy.toJawDirection(placement.a);
  const length = distance(apex, to);
  const arc = length > 0 ? arcBetween(apex, a, unit(sub(to, apex)), radius) : [];
  return { apex, to, onAxis: along(apex, a, radius + 0.5), arc };
}

const STEP = 0.02;

/** The crown's outward normal near a place of its wall: the slope of the distance to it; site frame. */
function normalAt({ wall, frame }: PlannedCrown, p: Vec3): Vec3 {
  const [x, y, z] = broughtInto(frame, p);
  const across = (dx: number, dy: number, dz: number): number =>
    wall.signed(x + dx, y + dy, z + dz) - wall.signed(x - dx, y - dy, z - dz);
  const slope = unit([across(STEP, 0, 0), across(0, STEP, 0), across(0, 0, STEP)]);
  return sub(broughtOut(frame, slope), frame.origin);
}

function exitMark({ anatomy, placement, restoration }: Evaluation, exit: Vec3): ExitMark {
  const { toJaw, toJawDirection } = anatomy;
  return {
    at: toJaw(exit),
    normal: toJawDirection(normalAt(restoration.crown, exit)),
    way: toJawDirection(placement.a),
  };
}

function lowered(evaluation: Evaluation, rim: readonly Vec3[]): Vec3[] | null {
  const by = readingOf(evaluation.readings, 'margin-reduction').value;
  if (by === null || by <= 0) return null;
  const { placement, anatomy } = evaluation;
  const facial = [...rim.slice(-FACIAL), ...rim.slice(0, FACIAL + 1)];
  return facial.map((p) => anatomy.toJaw(along(p, placement.a, -by)));
}

/** From the deepest place along the shortest way to the crown's wall, inward, as deep as is ground. */
function groundOf({ restoration, anatomy }: Evaluation): CrownMarks['ground'] {
  const { reduction, crown } = restoration;
  if (!reduction?.from || !reduction.to || reduction.depth <= 0) return null;
  const { from, to, depth } = reduction;
  const inside = crown.wall.signed(...broughtInto(crown.frame, from)) < 0;
  const apart = distance(from, to);
  const inward =
    apart > 1e-6 ? scale(sub(to, from), (inside ? -1 : 1) / apart) : scale(normalAt(crown, from), -1);
  return { from: anatomy.toJaw(from), to: anatomy.toJaw(along(from, inward, depth)) };
}
