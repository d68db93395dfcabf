import type { Vec3 } from './vec.ts';

/**
 * Distance from a point to the curved surface of a half-ellipsoid `z ≤ 0` with semi-axes `(a, b, l)` about the origin, in its own frame; mm,
 * ≥ 0 on both sides. Newton on the one-parameter form of the closest point of an ellipsoid (Hart, "Distance to an ellipsoid", Graphics
 * Gems IV, 1994), kept between its bounds by bisection; where the closest point of the whole ellipsoid has `z > 0`, the rim ellipse counts.
 */
export function halfEllipsoidDistance(
  a: number,
  b: number,
  l: number,
  x: number,
  y: number,
  z: number,
): number {
  const [qx, qy, qz] = halfEllipsoidFoot(a, b, l, x, y, z);
  return Math.hypot(x - qx, y - qy, z - qz);
}

/** The closest point itself. */
export function halfEllipsoidFoot(a: number, b: number, l: number, x: number, y: number, z: number): Vec3 {
  const rim = z > 0;
  const t = closestParameter(a, b, rim ? 1 : l, Math.abs(x), Math.abs(y), rim ? 0 : -z);
  return [(a * a * x) / (t + a * a), (b * b * y) / (t + b * b), rim ? 0 : (l * l * z) / (t + l * l)];
}

/** Whether a point of the ellipsoid's frame lies inside the half-ellipsoid. */
export function insideHalfEllipsoid(
  a: number,
  b: number,
  l: number,
  x: number,
  y: number,
  z: number,
): boolean {
  return z <= 0 && (x / a) ** 2 + (y / b) ** 2 + (z / l) ** 2 < 1;
}

/** Root `t` of `Σ (aᵢ pᵢ / (t + aᵢ²))² = 1` greater than `−min aᵢ²`, for `p ≥ 0`. */
function closestParameter(a: number, b: number, l: number, x: number, y: number, z: number): number {
  // A zero coordinate is nudged: the limit of the closest point from a generic one.
  const tiny = 1e-9;
  const px = a * Math.max(x, tiny);
  const py = b * Math.max(y, tiny);
  const pz = l * (z > 0 ? z : 0);
  const a2 = a * a;
  const b2 = b * b;
  const l2 = l * l;
  let lo = Math.max(px - a2, py - b2, pz > 0 ? pz - l2 : -Infinity);
  let hi = Math.sqrt(px * px + py * py + pz * pz) - Math.min(a2, b2, l2);
  if (hi < lo) hi = lo;
  let t = lo;
  for (let i = 0; i < 60; i++) {
    const u = px / (t + a2);
    const v = py / (t + b2);
    const w = pz / (t + l2);
    const g = u * u + v * v + w * w - 1;
    if (g > 0) lo = t;
    else hi = t;
    const slope = -2 * ((u * u) / (t + a2) + (v * v) / (t + b2) + (w * w) / (t + l2));
    let next = t - g / slope;
    if (!(next > lo && next < hi)) next = (lo + hi) / 2;
    if (Math.abs(next - t) <= 1e-13 * (1 + Math.abs(next))) return next;
    t = next;
  }
  return t;
}
