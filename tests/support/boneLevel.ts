import { type AxisFrame, axisFrame } from '../../src/core/geometry/pose.ts';
import { along, type Vec3 } from '../../src/core/geometry/vec.ts';
import type { Placement } from '../../src/core/measure/placement.ts';

/**
 * Level of the most coronal crossing of an implant's axis with the ridge (sockets as filled), by a fine march from well above it; null: none. Slow and
 * plain, apart from the core's own search.
 */
export function boneLevel({ anatomy, entry, a }: Pick<Placement, 'anatomy' | 'entry' | 'a'>): number | null {
  const { ridge } = anatomy;
  const inside = (t: number): boolean => {
    const p = along(entry, a, -t);
    return ridge.solid(p[0], p[1], p[2]) <= 0 && p[2] >= ridge.floor;
  };
  const step = 0.01;
  for (let t = -15; t < 25; t += step) {
    if (!inside(t)) continue;
    let [lo, hi] = [t - step, t];
    for (let i = 0; i < 40; i++) {
      const mid = (lo + hi) / 2;
      if (inside(mid)) hi = mid;
      else lo = mid;
    }
    return hi;
  }
  return null;
}

/** Points of a drill's solid: its point, and rings of its wall from the full diameter's end up. Site frame, mm. */
export function drillPoints(bottom: Vec3, a: Vec3, radius: number, point: number, up: number): Vec3[] {
  const { ef, em }: AxisFrame = axisFrame(a);
  const out: Vec3[] = [along(bottom, a, -point)];
  for (let k = 0; k <= 10; k++) {
    for (let i = 0; i < 360; i++) {
      const phi = (2 * Math.PI * i) / 360;
      const at = along(bottom, a, (up * k) / 10);
      out.push(along(along(at, ef, radius * Math.cos(phi)), em, radius * Math.sin(phi)));
    }
  }
  return out;
}
