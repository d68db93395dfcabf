/** A point or direction: `(m, f, c)` in the site frame or `(x, y, z)` in the jaw frame, mm. The docstring of each user says which. */
export type Vec3 = readonly [number, number, number];

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
/** `a + k b`. */
export const along = (a: Vec3, b: Vec3, k: number): Vec3 => [
  a[0] + k * b[0],
  a[1] + k * b[1],
  a[2] + k * b[2],
];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const norm = (a: Vec3): number => Math.sqrt(dot(a, a));
export const distance = (a: Vec3, b: Vec3): number => norm(sub(a, b));
export const unit = (a: Vec3): Vec3 => scale(a, 1 / norm(a));
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
/** The part of `a` perpendicular to the unit vector `n`. */
export const reject = (a: Vec3, n: Vec3): Vec3 => along(a, n, -dot(a, n));
/** Angle between two directions in degrees, 0…180, accurate near 0 (atan2 of cross and dot). */
export const angleBetween = (a: Vec3, b: Vec3): number => deg(Math.atan2(norm(cross(a, b)), dot(a, b)));

export const rad = (degrees: number): number => (degrees * Math.PI) / 180;
export const deg = (radians: number): number => (radians * 180) / Math.PI;
export const clamp = (x: number, lo: number, hi: number): number => (x < lo ? lo : x > hi ? hi : x);

/** Quintic smoothstep: 0 up to `from`, 1 from `to` on, first and second derivatives 0 at both. */
export function smoothstep(x: number, from: number, to: number): number {
  if (x <= from) return 0;
  if (x >= to) return 1;
  const w = (x - from) / (to - from);
  return w * w * w * (w * (6 * w - 15) + 10);
}
