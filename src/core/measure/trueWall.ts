import type { Socket } from '../anatomy/socket.ts';
import { coveredLength } from '../geometry/interval.ts';
import { apicalThird } from '../implant/profile.ts';
import { furthestOutside } from './furthestOutside.ts';
import type { Placement } from './placement.ts';
import type { Reason, Side } from './reading.ts';
import { bodyToSheet, type Clearance } from './sheetDistance.ts';
import { azimuthOf, COUNT_TOLERANCE, type RaySample, signOf } from './wallProfile.ts';
import { WallRay } from './wallRay.ts';

/** A clearance, or why there is none. */
export type Found =
  | { readonly clearance: Clearance; readonly reason: Reason | null }
  | { readonly clearance: null; readonly reason: Reason };

const WINDOW = Math.PI / 4;

/** True wall of a side (rule M3). `profile`: the same side's wall profile, for what it already knows. */
export function trueWall(at: Placement, side: Side, profile: readonly RaySample[]): Found {
  const counting = profile.filter((s) => s.counts);
  if (
    at.anatomy.socket &&
    (counting.some((s) => s.gap > 1e-6) || voidInWindow(at, side, at.anatomy.socket))
  ) {
    return { clearance: null, reason: 'void-between' };
  }
  const found = bodyToSheet(at, signOf(side), at.envelope, true);
  const outside = counting.some((s) => s.wall !== null && s.wall < 0);
  if (found && found.value >= 0 && !outside) return { clearance: found, reason: null };
  const azimuth = azimuthOf(side);
  const worst = furthestOutside(at, side, {
    from: at.tP,
    rim: true,
    to: at.tA,
    azimuth,
    window: WINDOW,
    margin: at.crestMargin,
  });
  // With the axis itself outside, no half-plane of the window meets the sheet, and yet the envelope stands outside it.
  if (!worst)
    return found ? { clearance: found, reason: null } : { clearance: null, reason: 'nothing-counts' };
  const radius = at.shape.implantedDiameter / 2;
  if (worst.value < -radius) return { clearance: { ...worst, value: -radius }, reason: 'outside' };
  return { clearance: worst, reason: null };
}

/** Smallest distance of the apical third to the facial sheet (rule M10). */
export function apexToConcavity(at: Placement): Found {
  const body = apicalThird(at.shape);
  const found = bodyToSheet(at, 1, body, false);
  if (!found) return { clearance: null, reason: 'nothing-counts' };
  const tip = at.surface(at.tA, 0);
  const crossed = found.value < 0 || at.anatomy.ridge.sheet(1, tip[0], tip[1], tip[2]) > 0;
  if (!crossed) return { clearance: found, reason: null };
  const worst = furthestOutside(at, 'facial', {
    from: at.tA - at.shape.implantedLength / 3,
    rim: false,
    to: at.tA,
    azimuth: 0,
    window: Math.PI,
    margin: Number.NEGATIVE_INFINITY,
  });
  return { clearance: worst ?? found, reason: null };
}

/** Whether any ray of the window that counts meets a void (rule M3). */
function voidInWindow(at: Placement, side: Side, socket: Socket): boolean {
  const ray = new WallRay(at, signOf(side));
  const azimuth = azimuthOf(side);
  const from = at.tP;
  const rows = Math.ceil((at.tA - from) / 0.35);
  for (let j = 0; j <= rows; j++) {
    const t = from + ((at.tA - from) * j) / rows;
    for (let i = -12; i <= 12; i++) {
      const v = at.across(azimuth + (WINDOW * i) / 12);
      const p = at.axisPoint(t);
      const r = at.radius(t);
      if (!ray.cast(p, v, r, Number.NaN)) continue;
      if (coveredLength([socket.rootVoid(p, v), socket.dehiscence(p, v)], r, ray.exit) < 1e-6) continue;
      const least = at.crestMargin - COUNT_TOLERANCE;
      if (ray.dIn >= least && ray.dOut >= least) return true;
    }
  }
  return false;
}
