import type { SideSign } from '../anatomy/ridge.ts';
import { compass, gridMinimum } from '../geometry/compass.ts';
import type { Revolved } from '../geometry/revolve.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
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
