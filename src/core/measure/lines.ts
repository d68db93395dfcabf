import type { PlacedTooth } from '../anatomy/teeth.ts';
import { tiltOf } from '../geometry/pose.ts';
import { along, deg, dot, sub, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from './placement.ts';

/** The incisal line and what the axis makes of it (rule M8); site frame, mm and degrees. */
export interface IncisalLine {
  readonly mesialEnd: Vec3;
  readonly distalEnd: Vec3;
  /** Where the line crosses the plane through the axis parallel to `f`. */
  readonly x: Vec3;
  /** Aim point: where the axis meets the plane of the line and `f`. */
  readonly q: Vec3;
  readonly offset: number;
  readonly place: number;
  readonly angle: number;
}

/** The end of a neighbour's incisal edge that faces the gap. */
const gapEnd = (tooth: PlacedTooth, mesialNeighbour: boolean): Vec3 => {
  const towardDistal = mesialNeighbour === (tooth.turn === 1);
  return towardDistal ? tooth.marks.distalEnd : tooth.marks.mesialEnd;
};

/** The contact point of a neighbour that faces the gap. */
export const gapContact = (tooth: PlacedTooth, mesialNeighbour: boolean): Vec3 =>
  mesialNeighbour === (tooth.turn === 1) ? tooth.marks.distalContact : tooth.marks.mesialContact;

export function incisalLine(at: Placement): IncisalLine {
  const { teeth } = at.anatomy;
  const mesialEnd = gapEnd(teeth.mesial, true);
  const distalEnd = gapEnd(teeth.distal, false);
  // Seen along f everything is flat: line and axis cross in the (m, c) plane.
  const { platform: p, a } = at;
  const l = sub(distalEnd, mesialEnd);
  const w = sub(mesialEnd, p);
  const den = a[0] * l[2] - a[2] * l[0];
  const place = (a[2] * w[0] - a[0] * w[2]) / den;
  const reach = (l[2] * w[0] - l[0] * w[2]) / den;
  const x = along(mesialEnd, l, place);
  const q = along(p, a, reach);
  const toX = sub(x, p);
  // In the plane of the axis and f: angle from platform → X to the axis, + facial.
  const flat = Math.hypot(a[0], a[2]);
  const along0 = (toX[0] * a[0] + toX[2] * a[2]) / flat;
  const angle = deg(Math.atan2(a[1], flat) - Math.atan2(toX[1], along0));
  return { mesialEnd, distalEnd, x, q, offset: q[1] - x[1], place, angle };
}

/** Mean of the neighbours' root axes in the true front view, degrees from `c`, + coronal end mesial. */
export function rootBisector(at: Placement): number {
  const { mesial, distal } = at.anatomy.teeth;
  return (tiltOf(mesial.root.a).mesiodistal + tiltOf(distal.root.a).mesiodistal) / 2;
}

/** Half the difference of the distances along `m` from a point to the two contacts, + must shift mesially (rule M5). */
export function contactCentring(at: Placement, q: Vec3): { value: number; mesial: Vec3; distal: Vec3 } {
  const { teeth } = at.anatomy;
  const mesial = gapContact(teeth.mesial, true);
  const distal = gapContact(teeth.distal, false);
  const value = (mesial[0] - q[0] - (q[0] - distal[0])) / 2;
  return { value, mesial, distal };
}

export const axialPart = (at: Placement, v: Vec3): number => dot(v, at.a);
