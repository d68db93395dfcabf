import type { Ridge, SideSign } from '../anatomy/ridge.ts';
import { apart, compass, gridMinimum, type Place } from '../geometry/compass.ts';
import type { Revolved } from '../geometry/revolve.ts';
import { along, dot, sub, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from './placement.ts';
import { COUNT_TOLERANCE } from './wallProfile.ts';

/** A distance with its two ends in the site frame, mm. */
export interface Clearance {
  readonly value: number;
  /** On the implant. */
  readonly from: Vec3;
  /** On the other solid. */
  readonly to: Vec3;
}

const COLUMNS = 13;
const ROWS = 21;
/** Fewer where only the apical third is looked at. */
const ROWS_THIRD = 17;
const SLACK = 0.35;
const SHRINK = 1 / 1024;
/** A nearer distance than this is sharply curved about its least place and is polished further, from this step, mm. */
const CLOSE = 1;
const FINE_STEP = 6e-4;
const COARSE_STEP = 0.02;

/**
 * Least signed distance in the half-planes of the axis between a body about it and the wall sheet of a side, the sheet from the crest margin
 * down (rules M3, M10); negative where the sheet enters the body, and then only the sign is meant. `window`: only azimuths within ±45° of the
 * side's direction, and only ends of the body that count. null where no pair counts. Found from the sheet's side: for a sheet point the body's
 * nearest point in its half-plane is closed form.
 */
export function bodyToSheet(
  at: Placement,
  side: SideSign,
  body: Revolved,
  window: boolean,
): Clearance | null {
  const { ridge } = at.anatomy;
  const margin = at.crestMargin;
  const { platform, a, ef, em } = at;
  const foot = { x: 0, r: 0, cos: 1, sin: 0 };
  let least = Infinity;

  const value = (q: number, d: number): number => {
    if (d < margin) return Infinity;
    ridge.sheetAt(side, q, d);
    const rx = ridge.m - platform[0];
    const ry = ridge.f - platform[1];
    const rz = ridge.c - platform[2];
    const x = -(rx * a[0] + ry * a[1] + rz * a[2]);
    const pf = rx * ef[0] + ry * ef[1] + rz * ef[2];
    const pm = rx * em[0] + ry * em[1] + rz * em[2];
    if (window && Math.abs(pm) > side * pf) return Infinity;
    const rho = Math.sqrt(pf * pf + pm * pm);
    let dist = body.signed(x, rho);
    foot.x = body.footX;
    foot.r = body.footR;
    foot.cos = rho > 0 ? pf / rho : side;
    foot.sin = rho > 0 ? pm / rho : 0;
    const collared = window && at.shape.scallop > 0 && x < 0;
    const rim = collared ? at.rimLevel(Math.atan2(foot.sin, foot.cos)) - at.tP : 0;
    if (collared) dist = Math.min(dist, collar(x, rho, rim, dist));
    // A lower bound does for places that cannot compete with the best so far.
    if (!window || dist > least + SLACK || footDepth() >= margin - COUNT_TOLERANCE) {
      if (dist < least) least = dist;
      return dist;
    }
    const start = firstCounting();
    if (start === null) return Infinity;
    let clipped = body.distance(x, rho, start);
    foot.x = body.footX;
    foot.r = body.footR;
    if (collared && start < 0) clipped = Math.min(clipped, Math.abs(collar(x, rho, start, clipped)));
    return dist < 0 ? -clipped : clipped;
  };

  /** Distance to the collar of a scalloped shoulder, which stands coronal of the platform plane up to station `rim`; moves the foot there if it is nearer. */
  const collar = (x: number, rho: number, rim: number, known: number): number => {
    const radius = body.radius(0);
    const near = Math.max(x, rim);
    const gap = Math.sqrt((x - near) ** 2 + (rho - radius) ** 2);
    const value = rho < radius && x > rim ? -gap : gap;
    if (value < known) {
      foot.x = near;
      foot.r = radius;
    }
    return value;
  };

  const depthAt = (x: number, r: number): number => {
    const rf = r * foot.cos;
    const rm = r * foot.sin;
    ridge.locate(
      platform[0] - x * a[0] + rf * ef[0] + rm * em[0],
      platform[1] - x * a[1] + rf * ef[1] + rm * em[1],
      platform[2] - x * a[2] + rf * ef[2] + rm * em[2],
    );
    return ridge.d;
  };
  const footDepth = () => depthAt(foot.x, foot.r);

  /** Station from which the generatrix of the foot's azimuth lies deep enough; null: nowhere. */
  const firstCounting = (): number | null => {
    const over = (x: number) => depthAt(x, body.radius(x)) - margin;
    let lo = foot.x;
    let hi = at.length;
    let h = over(hi);
    if (h < 0) return null;
    let g = over(lo);
    for (let i = 0; i < 40 && hi - lo > 1e-7; i++) {
      let mid = lo - (g * (hi - lo)) / (h - g);
      if (!(mid > lo && mid < hi) || i % 4 === 3) mid = (lo + hi) / 2;
      const v = over(mid);
      if (v >= 0) {
        hi = mid;
        h = v;
        if (v < COUNT_TOLERANCE) break;
      } else {
        lo = mid;
        g = v;
      }
    }
    return hi;
  };

  const frame = gridFrame(at, side, margin, window ? at.tP : at.tA - at.shape.implantedLength / 3 - 1.5);
  if (!frame) return null;
  const rows = window ? ROWS : ROWS_THIRD;
  const rough = gridMinimum(value, COLUMNS, rows, frame.column, frame.row, SLACK, SHRINK);
  if (!rough || rough.value === Infinity) return null;
  const fine = rough.value < CLOSE ? FINE_STEP : COARSE_STEP;
  const best = rough.value >= 0 ? compass(value, rough, fine, fine, 1 / 256) : rough;
  least = Infinity;
  const dist = value(best.x, best.y);
  const across: Vec3 = [
    foot.cos * ef[0] + foot.sin * em[0],
    foot.cos * ef[1] + foot.sin * em[1],
    foot.cos * ef[2] + foot.sin * em[2],
  ];
  const from = along(along(platform, a, -foot.x), across, foot.r);
  return { value: dist, from, to: ridge.sheetPoint(side, best.x, best.y) };
}

/** Sheet parameters worth looking at: depths from the margin past the apex; places along the arch about the axis, as far as 45° reaches. */
function gridFrame(at: Placement, side: SideSign, margin: number, from: number) {
  const { ridge } = at.anatomy;
  const place = (t: number) => {
    const p = at.axisPoint(t);
    ridge.locate(p[0], p[1], p[2]);
    return { q: ridge.q, u: ridge.u, d: ridge.d };
  };
  const top = place(from);
  const end = place(at.tA);
  const radius = Math.max(at.radius(at.tP), at.radius(at.tP + at.shape.transmucosalLength));
  const deepest = Math.max(end.d, top.d) + 2 * radius + 1;
  if (deepest <= margin) return null;
  const slope = (key: 'q' | 'u') => (end.d - top.d > 1 ? (end[key] - top[key]) / (end.d - top.d) : 0);
  const qs = slope('q');
  const us = slope('u');
  const rows = from === at.tP ? ROWS : ROWS_THIRD;
  const shallowest = from === at.tP ? margin : Math.max(margin, Math.min(top.d, end.d) - radius - 1);
  const row = (j: number) => shallowest + ((deepest - shallowest) * j) / (rows - 1);
  const centre: number[] = [];
  const half: number[] = [];
  for (let j = 0; j < rows; j++) {
    const d = row(j);
    const q = top.q + qs * (d - top.d);
    const u = top.u + us * (d - top.d);
    centre.push(q);
    half.push(Math.min(9, 1.1 * Math.abs(side * ridge.half(side, q, d) * ridge.cap(d) - u) + 0.4));
  }
  const column = (i: number, j: number) => centre[j] + half[j] * ((2 * i) / (COLUMNS - 1) - 1);
  return { row, column };
}

/**
 * Nearest point of the sheet (`d ≥ 0`) to a point of the site frame. Gauss–Newton in the sheet's two parameters, from the best places of a coarse grid about
 * the point's own section coordinates: over an undercut, or beside the neighbours' broader ridge, there are several nearest points, and the nearest counts.
 */
export function nearestOnSheet(ridge: Ridge, side: SideSign, p: Vec3): Clearance {
  ridge.locate(p[0], p[1], p[2]);
  const q0 = ridge.q;
  const d0 = Math.max(ridge.d, 0.02);
  const places: Place[] = [];
  for (const dq of [-3, -1.5, 0, 1.5, 3]) {
    for (const dd of [-4.5, -3, -1.5, 0, 1.5, 3, 4.5]) {
      const d = d0 + dd;
      if (d >= 0) places.push({ x: q0 + dq, y: d, value: dist2(ridge.sheetPoint(side, q0 + dq, d), p) });
    }
  }
  let best: Clearance | null = null;
  for (const { x, y } of apart(places, 1.4, 1.4, 3)) {
    const found = descend(ridge, side, p, x, y);
    if (best === null || found.value < best.value) best = found;
  }
  return best ?? { value: Number.NaN, from: p, to: p };
}

/** A near point of the sheet to `p`: the one that a descent from a known foot beside it ends in, so no nearer than the nearest. */
export function footBeside(ridge: Ridge, side: SideSign, p: Vec3, foot: Vec3): Clearance {
  ridge.locate(foot[0], foot[1], foot[2]);
  return descend(ridge, side, p, ridge.q, Math.max(0, ridge.d));
}

/** Depth by a parameter that runs evenly over the rounded crest, where the sheet is flat and depth is not a good one. */
const depthBy = (rho: number, v: number): number =>
  v <= 0 ? 0 : v < Math.PI / 2 ? rho * (1 - Math.cos(v)) : rho * (1 + v - Math.PI / 2);

const parameterOf = (rho: number, d: number): number =>
  d < rho ? Math.acos(1 - d / rho) : d / rho - 1 + Math.PI / 2;

function descend(ridge: Ridge, side: SideSign, p: Vec3, q0: number, d0: number): Clearance {
  const { rho } = ridge;
  const at = (q: number, v: number) => ridge.sheetPoint(side, q, depthBy(rho, v));
  let q = q0;
  let v = parameterOf(rho, d0);
  const step = 1e-4;
  let best = at(q, v);
  let least = dist2(best, p);
  for (let i = 0; i < 40; i++) {
    const s = at(q, v);
    const sq = sub(at(q + step, v), s);
    const sv = sub(at(q, v + step), s);
    const r = sub(p, s);
    const a11 = dot(sq, sq);
    const a12 = dot(sq, sv);
    const a22 = dot(sv, sv);
    const b1 = dot(sq, r);
    const b2 = dot(sv, r);
    const det = a11 * a22 - a12 * a12;
    let dq = (step * (b1 * a22 - b2 * a12)) / det;
    let dv = (step * (b2 * a11 - b1 * a12)) / det;
    let ok = false;
    for (let k = 0; k < 12; k++) {
      const next = at(q + dq, Math.max(0, v + dv));
      const value = dist2(next, p);
      if (value < least) {
        least = value;
        best = next;
        q += dq;
        v = Math.max(0, v + dv);
        ok = true;
        break;
      }
      dq /= 2;
      dv /= 2;
    }
    if (!ok || Math.abs(dq) + Math.abs(dv) < 1e-9) break;
  }
  return { value: Math.sqrt(least), from: p, to: best };
}

function dist2(a: Vec3, b: Vec3): number {
  const r = sub(a, b);
  return dot(r, r);
}
