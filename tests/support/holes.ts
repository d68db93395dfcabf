import type { Void } from '../../src/core/drilling/bodies.ts';
import { halfLine, intersect, quadraticInterval } from '../../src/core/geometry/interval.ts';
import { along, dot, reject, sub, type Vec3 } from '../../src/core/geometry/vec.ts';

/** A hole: a cylinder about the axis through `p` along the unit vector `a`, from `top` to `-bottom` along it, site frame, mm. */
export function cylinderHole(p: Vec3, a: Vec3, radius: number, top: number, bottom: number): Void {
  const stretch = (q: Vec3, v: Vec3) => {
    const r = sub(q, p);
    const side = reject(r, a);
    const across = reject(v, a);
    const round = quadraticInterval(
      dot(across, across),
      2 * dot(across, side),
      dot(side, side) - radius * radius,
    );
    const x = dot(r, a);
    const xv = dot(v, a);
    return intersect(round, intersect(halfLine(-xv, top - x), halfLine(xv, bottom + x)));
  };
  return {
    contains: (q) => {
      const r = sub(q, p);
      const x = dot(r, a);
      const side = along(r, a, -x);
      return x <= top && x >= -bottom && dot(side, side) <= radius * radius;
    },
    stretches: (q, v) => {
      const found = stretch(q, v);
      return found ? [found] : [];
    },
  };
}
