import type { Void } from '../drilling/bodies.ts';
import type { Pose } from '../geometry/pose.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
import { envelopePolyline } from '../implant/profile.ts';
import { Placement } from '../measure/placement.ts';
import { isBone, TOUCH } from './contactGrid.ts';

/** The same implant in another pose. */
export const placedAs = (at: Placement, pose: Pose): Placement =>
  new Placement(at.anatomy, at.shape, pose, at.crestMargin);

/** The same implant drawn up along its axis, mm. */
export function raised(at: Placement, above: number): Placement {
  const [m, f, c] = along(at.platform, at.a, above);
  return placedAs(at, { ...at.pose, platform: { m, f, c } });
}

/** Levels and azimuths at which the hole's side is looked at. mm. */
const STEP = 0.05;
const COLUMNS = 24;
/** Nothing of the bone stands higher above the entry than this. */
const HIGHEST = -9;

/**
 * Level of the shoulder above where it is placed, mm, at which the envelope first meets the hole's side or floor when the implant is let down along its axis:
 * from there on it must be turned. Never below 0: an implant that meets nothing falls to its place. Exact but for levels 0.05 mm and azimuths 15° apart.
 */
export function biteLevel(at: Placement, hole: Void): number {
  const { x, r } = envelopePolyline(at.shape);
  let bite = 0;
  for (let t = HIGHEST; t <= at.tA; t += STEP) {
    const station = widerThan(x, r, roomAt(at, hole, t));
    if (station !== null) bite = Math.max(bite, station - (t - at.tP));
  }
  return bite;
}

/** Least distance from the axis at a level to the bone of the hole's side, mm; 0 where the axis itself is in bone; Infinity: no bone meets. */
function roomAt(at: Placement, hole: Void, t: number): number {
  const { anatomy, canalNear } = at;
  const axis = at.axisPoint(t);
  let least = Infinity;
  for (let j = 0; j < COLUMNS / 2; j++) {
    const v = at.across((2 * Math.PI * j) / COLUMNS);
    const inside = hole.stretches(axis, v).find(([from, to]) => from <= 0 && 0 <= to);
    if (!inside) return isBone(anatomy, axis, canalNear) ? 0 : Infinity;
    for (const end of inside) {
      const beyond: Vec3 = along(axis, v, end + Math.sign(end) * 2 * TOUCH);
      if (Math.abs(end) < least && isBone(anatomy, beyond, canalNear)) least = Math.abs(end);
    }
  }
  return least;
}

/** The most apical station at which the envelope is wider than a radius; null: nowhere. */
function widerThan(x: readonly number[], r: readonly number[], radius: number): number | null {
  const last = x.length - 1;
  if (r[last] > radius + TOUCH) return x[last];
  for (let i = last - 1; i >= 0; i--) {
    if (r[i] <= radius + TOUCH) continue;
    return x[i] + ((r[i] - radius) / (r[i] - r[i + 1])) * (x[i + 1] - x[i]);
  }
  return null;
}
