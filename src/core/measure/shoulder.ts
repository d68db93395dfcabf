import { along, distance, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from './placement.ts';
import { nearestOnSheet } from './sheetFoot.ts';

/** How far coronal of the highest bone the search begins, and its least step, mm. */
const HEADROOM = 6;
const LEAST_STEP = 0.05;

export interface ShoulderToCrest {
  /** `(rim − K)·a`, + above the bone; null where bone and envelope meet nowhere above the apical rim. */
  readonly value: number | null;
  readonly rim: Vec3;
  readonly bone: Vec3 | null;
  /** Distance from the rim to the ridge where they do not meet. */
  readonly away: number | null;
}

/** Rule M6 at one azimuth about the axis (0 facial, π/2 mesial, π palatal, −π/2 distal). Site frame, mm. */
export function shoulderToCrest(at: Placement, azimuth: number): ShoulderToCrest {
  const { ridge, site } = at.anatomy;
  const rim = at.rimPoint(azimuth);
  const rimLevel = at.rimLevel(azimuth);
  const across = at.across(azimuth);
  const surface = (t: number): Vec3 => along(at.axisPoint(t), across, at.radius(t));
  const highest = Math.max(0, site.mesial.boneLevel, site.distal.boneLevel);
  const start = Math.min(rimLevel, -highest / at.a[2]) - HEADROOM;
  const outside = (t: number) => boneFunction(at, surface(t));
  let t0 = start;
  let f0 = outside(t0);
  const slope = ridge.steepCrest;
  while (t0 < at.tA) {
    const t1 = Math.min(at.tA, t0 + Math.max(LEAST_STEP, f0 / slope));
    const f1 = outside(t1);
    if (f1 <= 0) {
      const t = bracket(outside, t0, t1);
      return { value: t - rimLevel, rim, bone: surface(t), away: null };
    }
    t0 = t1;
    f0 = f1;
  }
  const away = Math.min(
    distance(rim, nearestOnSheet(ridge, 1, rim).to),
    distance(rim, nearestOnSheet(ridge, -1, rim).to),
  );
  return { value: null, rim, bone: null, away };
}

/** > 0 outside bone, ≤ 0 inside (rule S14); outside of voids about the distance to the ridge, mm. */
export function boneFunction(at: Placement, p: Vec3): number {
  const { ridge, socket, canal } = at.anatomy;
  const k = ridge.solid(p[0], p[1], p[2]);
  const solid = Math.max(k, ridge.floor - p[2]);
  if (solid > 0) return solid;
  if (socket?.contains(p)) return 1e-3;
  if (at.canalTouches) {
    const c = -canal.distance(p);
    if (c > 0) return Math.max(c, 1e-3);
  }
  return solid;
}

/** Bisection to 1e-10: `f(lo) > 0 ≥ f(hi)`. */
function bracket(f: (t: number) => number, lo: number, hi: number): number {
  let a = lo;
  let b = hi;
  for (let i = 0; i < 36; i++) {
    const mid = (a + b) / 2;
    if (f(mid) <= 0) b = mid;
    else a = mid;
  }
  return b;
}
