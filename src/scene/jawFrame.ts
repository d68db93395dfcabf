import type { Placed } from '../core/geometry/carry.ts';
import { dot, sub, type Vec3 } from '../core/geometry/vec.ts';

/** Back from the jaw frame to the site frame. */
export function toSite(frame: Placed, p: Vec3): Vec3 {
  const v = sub(p, frame.origin);
  return [dot(v, frame.ex), dot(v, frame.ey), dot(v, frame.ez)];
}
