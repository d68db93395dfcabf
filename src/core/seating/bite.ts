import type { Void } from '../drilling/bodies.ts';
import { along } from '../geometry/vec.ts';
import { leadOf } from '../implant/shape.ts';
import { Placement } from '../measure/placement.ts';
import { contactOf } from './contact.ts';

/** The same implant drawn up along its axis, mm. */
export function raised(at: Placement, above: number): Placement {
  const [m, f, c] = along(at.platform, at.a, above);
  return new Placement(at.anatomy, at.shape, { ...at.pose, platform: { m, f, c } }, at.crestMargin);
}

const COARSE = { rows: 24, columns: 24 } as const;

/**
 * Level of the shoulder above where it is placed, mm, at which the thread first meets the hole's side when the implant is let down into it from outside: from
 * there on it must be turned. Never below 0: an implant that meets nothing falls to its place. Halved to a hundredth of a millimetre; a coarse grid.
 */
export function biteLevel(at: Placement, hole: Void): number {
  const meets = (above: number) => contactOf(raised(at, above), hole, COARSE).percent > 0;
  const step = leadOf(at.shape) / 2;
  let low = Math.max(0, at.tA);
  while (low > 0 && !meets(low)) low = Math.max(0, low - step);
  if (low === 0 && !meets(0)) return 0;
  let high = low + step;
  while (high - low > 0.01) {
    const mid = (low + high) / 2;
    if (meets(mid)) low = mid;
    else high = mid;
  }
  return low;
}
