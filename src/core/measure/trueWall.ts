import type { Socket } from '../anatomy/socket.ts';
import { apart, compass, type Place } from '../geometry/compass.ts';
import { coveredLength } from '../geometry/interval.ts';
import { distance, type Vec3 } from '../geometry/vec.ts';
import { apicalThird } from '../implant/profile.ts';
import type { Placement } from './placement.ts';
import type { Reason, Side } from './reading.ts';
import { bodyToSheet, type Clearance, footBeside, nearestOnSheet } from './sheetDistance.ts';
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

interface Patch {
  readonly from: number;
  /** It begins at the shoulder's rim, wherever that is at an azimuth. */
  readonly rim: boolean;
  readonly to: number;
  readonly azimuth: number;
  readonly window: number;
  /** Least depth of an envelope point to count. */
  readonly margin: number;
}

/** The envelope point in a patch that stands furthest outside the sheet; its distance negative. null: none stands outside. */
function furthestOutside(at: Placement, side: Side, patch: Patch): Clearance | null {
  const { ridge } = at.anatomy;
  const sign = signOf(side);
  const end = patch.to;
  /** Level at a share of the way from the first counting level of an azimuth to the patch's end, so that both edges are straight. */
  const starts = new Map<number, number>();
  const levelAt = (w: number, phi: number): number => {
    const start = starts.get(phi) ?? firstCounting(at, patch.azimuth + phi, patch);
    starts.set(phi, start);
    return start > end ? Number.NaN : start + w * (end - start);
  };
  const placeOf = (w: number, phi: number): Vec3 => at.surface(levelAt(w, phi), patch.azimuth + phi);
  const out = (w: number, phi: number): number => {
    if (w < 0 || w > 1 || Math.abs(phi) > patch.window) return Infinity;
    const t = levelAt(w, phi);
    if (Number.isNaN(t)) return Infinity;
    const p = at.surface(t, patch.azimuth + phi);
    const h = ridge.sheet(sign, p[0], p[1], p[2]);
    return ridge.d < 0 || h <= 0 ? Infinity : -h;
  };
  const rows = 48;
  const columns = patch.window > 2 ? 48 : 19;
  const seeds: Place[] = [];
  for (let j = 0; j <= rows; j++) {
    for (let i = 0; i < columns; i++) {
      const phi = patch.window * ((2 * i) / (columns - 1) - 1);
      const value = out(j / rows, phi);
      if (value < Infinity) seeds.push({ x: j / rows, y: phi, value });
    }
  }
  if (seeds.length === 0) return null;
  // What is no further outside than the place the climb stands on is passed over at once: any point of the sheet bounds the distance from above.
  let highest = Number.NEGATIVE_INFINITY;
  let foot: Vec3 | null = null;
  const exact = (w: number, phi: number): number => {
    if (out(w, phi) === Infinity) return Infinity;
    const p = placeOf(w, phi);
    if (foot) {
      const bound = distance(p, foot);
      if (bound <= highest) return -bound;
      const near = footBeside(ridge, sign, p, foot).value;
      if (near <= highest) return -near;
    }
    const found = nearestOnSheet(ridge, sign, p);
    if (found.value > highest) {
      highest = found.value;
      foot = found.to;
    }
    return -found.value;
  };
  let best: Place | null = null;
  // Sideways across the ridge is only a bound of the distance: the places to climb from are chosen by the distance itself.
  const places = apart(seeds, 0.08, 0.3, 14).map(({ x, y }) => ({
    x,
    y,
    value: -nearestOnSheet(ridge, sign, placeOf(x, y)).value,
  }));
  for (const start of apart(places, 0.08, 0.3, 4)) {
    foot = null;
    highest = -start.value;
    const found = compass(exact, start, 1 / rows, (2 * patch.window) / columns, 1 / 512, true);
    if (best === null || found.value < best.value) best = found;
  }
  if (!best) return null;
  const from = placeOf(best.x, best.y);
  const near = nearestOnSheet(ridge, sign, from);
  return { value: -near.value, from, to: near.to };
}

/** The first level of a patch at an azimuth whose envelope point lies deep enough to count; past the patch's end where none does. */
function firstCounting(at: Placement, azimuth: number, patch: Patch): number {
  const { ridge } = at.anatomy;
  const over = (t: number) => ridge.depth(at.surface(t, azimuth)) - patch.margin;
  let lo = patch.rim ? at.rimLevel(azimuth) : patch.from;
  let g = over(lo);
  if (g >= 0 || patch.margin === Number.NEGATIVE_INFINITY) return lo;
  let hi = patch.to;
  let h = over(hi);
  if (h < 0) return hi + 1;
  for (let i = 0; i < 40 && h > COUNT_TOLERANCE / 2; i++) {
    let mid = lo - (g * (hi - lo)) / (h - g);
    if (i % 4 === 3 || !(mid > lo && mid < hi)) mid = (lo + hi) / 2;
    const v = over(mid);
    if (v >= 0) {
      hi = mid;
      h = v;
    } else {
      lo = mid;
      g = v;
    }
  }
  return hi;
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
