import { along, deg, dot, rad, reject, scale, unit, type Vec3 } from './vec.ts';

/** Two inclinations seen in the true side and front views, degrees from `c`; + the coronal end leans facially / mesially. */
export interface Tilt {
  readonly faciopalatal: number;
  readonly mesiodistal: number;
}

/** Pose of the implant in the site frame (rule F4): mm and degrees. */
export interface Pose {
  /** Where the axis meets the plane through the lowest points of the shoulder's edge. */
  readonly platform: { readonly m: number; readonly f: number; readonly c: number };
  readonly tilt: Tilt;
  /** Turn of the index mark: 0 faces facially, + toward mesial, degrees. */
  readonly roll: number;
}

/** An orthonormal frame about an axis: `a` apex → coronal, `ef` across it facially, `em` across it mesially. */
export interface AxisFrame {
  readonly a: Vec3;
  readonly ef: Vec3;
  readonly em: Vec3;
}

/** Unit axis of a tilt, `(tan md, tan fp, 1)` normalised (rule F4), in the frame the tilt is given in. */
export function axisOf(tilt: Tilt): Vec3 {
  return unit([Math.tan(rad(tilt.mesiodistal)), Math.tan(rad(tilt.faciopalatal)), 1]);
}

/** Projected angles of an axis with a positive coronal part; the inverse of {@link axisOf}. */
export function tiltOf(a: Vec3): Tilt {
  return { faciopalatal: deg(Math.atan2(a[1], a[2])), mesiodistal: deg(Math.atan2(a[0], a[2])) };
}

/** Frame about a unit axis, without any cross product, so that both sides of the arch agree (rule F2). */
export function axisFrame(a: Vec3): AxisFrame {
  const ef = unit(reject([0, 1, 0], a));
  const em = unit(reject(reject([1, 0, 0], a), ef));
  return { a, ef, em };
}

export const platformOf = (pose: Pose): Vec3 => [pose.platform.m, pose.platform.f, pose.platform.c];

/** Entry `E`: where the axis meets the plane `c = 0`. */
export function entryOf(pose: Pose): Vec3 {
  const a = axisOf(pose.tilt);
  const p = platformOf(pose);
  return along(p, a, -p[2] / a[2]);
}

/** Direction of the index mark, perpendicular to the axis. */
export function markOf(pose: Pose): Vec3 {
  const { ef, em } = axisFrame(axisOf(pose.tilt));
  return along(scale(ef, Math.cos(rad(pose.roll))), em, Math.sin(rad(pose.roll)));
}

/** True angle of a tilt from `c`, degrees. */
export const trueTilt = (tilt: Tilt): number => deg(Math.acos(Math.min(1, dot(axisOf(tilt), [0, 0, 1]))));
