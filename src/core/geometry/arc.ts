import { add, angleBetween, cross, rad, scale, unit, type Vec3 } from './vec.ts';

/** Points of the circular arc of a radius about `centre` from direction `u` to direction `v`, both unit; the shorter way. Empty where they are one. */
export function arcBetween(centre: Vec3, u: Vec3, v: Vec3, radius: number, steps = 12): Vec3[] {
  const whole = rad(angleBetween(u, v));
  const normal = cross(u, v);
  if (whole < 1e-6 || whole > Math.PI - 1e-6) return [];
  const across = unit(cross(normal, u));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const turn = (whole * i) / steps;
    return add(centre, add(scale(u, radius * Math.cos(turn)), scale(across, radius * Math.sin(turn))));
  });
}
