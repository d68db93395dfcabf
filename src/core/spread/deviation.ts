import { axisFrame, axisOf, type Pose, platformOf } from '../geometry/pose.ts';
import { along, angleBetween, distance, dot, norm, scale, sub, type Vec3 } from '../geometry/vec.ts';

/** Where a placed point lies against the planned one, mm: `lateral² + depth² = global²`. */
export interface Offset {
  readonly global: number;
  /** Along the planned axis, + too deep. */
  readonly depth: number;
  /** Across the planned axis: `|(B − A) − ((B − A)·u) u|`, with `u` the planned axis toward the apex. */
  readonly lateral: number;
  /** Signed parts of `lateral` along the planned `e_m` and `e_f`: + mesially, + facially. */
  readonly mesiodistal: number;
  readonly faciopalatal: number;
}

/** Deviation of a placed implant from the planned one. mm and degrees. */
export interface Deviation {
  /** Between the centres of the platforms. */
  readonly coronal: Offset;
  /** Between the apices. */
  readonly apical: Offset;
  /** Between the axes, 0…180. */
  readonly angle: number;
  /** Turn of the placed mark against the planned one, modulo the neck's 360/n, in (−180/n, 180/n]; null for a round neck. */
  readonly roll: number | null;
}

/**
 * Two poses of one implant compared (definitions of the placement studies: coronal and apical, global, lateral, depth, angle). `length`: shoulder
 * to apex, mm; `index`: the neck looks the same every 360/n degrees, 0 for round. Both poses in one site frame.
 */
export function deviation(planned: Pose, placed: Pose, length: number, index: number): Deviation {
  const a = platformOf(planned);
  const b = platformOf(placed);
  const u = scale(axisOf(planned.tilt), -1);
  const v = scale(axisOf(placed.tilt), -1);
  return {
    coronal: offset(a, b, planned),
    apical: offset(along(a, u, length), along(b, v, length), planned),
    angle: angleBetween(u, v),
    roll: index === 0 ? null : rollBetween(planned.roll, placed.roll, 360 / index),
  };
}

function offset(a: Vec3, b: Vec3, planned: Pose): Offset {
  const { a: axis, ef, em } = axisFrame(axisOf(planned.tilt));
  const w = sub(b, a);
  const depth = -dot(w, axis);
  return {
    global: norm(w),
    depth,
    lateral: norm(along(w, axis, depth)),
    mesiodistal: dot(w, em),
    faciopalatal: dot(w, ef),
  };
}

function rollBetween(planned: number, placed: number, period: number): number {
  const over = period / 2 - (placed - planned);
  return period / 2 - (over - period * Math.floor(over / period));
}

/**
 * The other definition of the lateral deviation at the shoulder: from the planned platform's centre to where the placed axis meets the planned
 * shoulder plane, mm. It differs from {@link Offset.lateral} by about `depth · tan(angle)`.
 */
export function lateralInShoulderPlane(planned: Pose, placed: Pose): number {
  const u = axisOf(planned.tilt);
  const v = axisOf(placed.tilt);
  const a = platformOf(planned);
  const b = platformOf(placed);
  const reach = dot(sub(a, b), u) / dot(v, u);
  return distance(a, along(b, v, reach));
}
