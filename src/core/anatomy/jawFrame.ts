import type { Placed } from '../geometry/carry.ts';
import type { Anatomy } from './anatomy.ts';

/** The site frame as it stands in the jaw frame, for carrying whole meshes. On the left side of the arch it is a reflection. */
export function siteInJaw({ toJaw, toJawDirection }: Anatomy): Placed {
  return {
    origin: toJaw([0, 0, 0]),
    ex: toJawDirection([1, 0, 0]),
    ey: toJawDirection([0, 1, 0]),
    ez: toJawDirection([0, 0, 1]),
  };
}
