import type { Anatomy } from '../core/anatomy/anatomy.ts';
import type { Placed } from '../core/geometry/carry.ts';
import { dot, sub, type Vec3 } from '../core/geometry/vec.ts';

/** The site frame as it stands in the jaw frame, for carrying whole meshes. On the left side of the arch it is a reflection. */
export function siteInJaw({ toJaw, toJawDirection }: Anatomy): Placed {
  return {
    origin: toJaw([0, 0, 0]),
    ex: toJawDirection([1, 0, 0]),
    ey: toJawDirection([0, 1, 0]),
    ez: toJawDirection([0, 0, 1]),
  };
}

/** Back from the jaw frame to the site frame. */
export function toSite(frame: Placed, p: Vec3): Vec3 {
  const v = sub(p, frame.origin);
  return [dot(v, frame.ex), dot(v, frame.ey), dot(v, frame.ez)];
}
