/** The oracle's walls: profile (M1, M2), true wall (M3) and concavity (M10), by marching along rays and sampling the sheet. */
import type { Ground, Placed, Side } from './model.ts';
import {
  between,
  change,
  intervalsWhere,
  least,
  lengthWhere,
  minus,
  shrink,
  size,
  toSegment,
  type V,
} from './numbers.ts';

export const COUNT_TOLERANCE = 1e-6;
/** A ray is sampled this densely; a crossing pair closer together than this is a graze. */
const RAY_STEP = 0.08;
const RAY_REACH = 30;

export interface WallSample {
  /** Bone, negative outside, null where the ray does not end on the sheet. */
  readonly wall: number | null;
  readonly gap: number;
  readonly counts: boolean;
  /** The lesser depth of the two ends below the crest; null where there is no wall. */
  readonly depth: number | null;
}

const NONE: WallSample = { wall: null, gap: 0, counts: false, depth: null };
const centreOf = (side: Side): number => (side === 'facial' ? 0 : Math.PI);

/** The wall of a side at one level (M1). */
export function wallAt(g: Ground, p: Placed, side: Side, t: number, margin: number): WallSample {
  const azimuth = centreOf(side);
  const r = p.radius(t);
  const point = (x: number): V => p.at(t, x, azimuth);
  const beyond = (x: number): number => g.beyond(side, point(x));
  const inside = (x: number): boolean => beyond(x) <= 0;
  let end: number;
  if (inside(r)) {
    let x = r;
    while (inside(x + RAY_STEP)) {
      x += RAY_STEP;
      if (x > r + RAY_REACH) return NONE;
    }
    end = change(x, x + RAY_STEP, inside);
    if (Number.isNaN(beyond(end + 1e-8))) return NONE;
  } else {
    const ahead = firstCrossing(beyond, r, 1);
    const behind = firstCrossing(beyond, r, -1);
    if (ahead === null && behind === null) return NONE;
    end = behind === null || (ahead !== null && ahead - r < r - behind) ? ahead! : behind;
  }
  const depth = Math.min(g.depth(point(r)), g.depth(point(end)));
  const counts = depth >= margin - COUNT_TOLERANCE;
  if (end < r) return { wall: end - r, gap: 0, counts, depth };
  const ridge = intervalsWhere(r, end, RAY_STEP, (x) => g.inRidge(point(x)));
  let wall = 0;
  let gap = 0;
  for (const [a, b] of ridge) {
    const empty = g.socket || g.canal ? lengthWhere(a, b, RAY_STEP, (x) => g.inVoid(point(x))) : 0;
    wall += b - a - empty;
    gap += empty;
  }
  return { wall, gap, counts, depth };
}

/** First crossing of the sheet on a line, going one way from `x0`; the sheet exists only at `d ≥ 0`. */
function firstCrossing(beyond: (x: number) => number, x0: number, way: 1 | -1): number | null {
  const exists = (x: number): boolean => !Number.isNaN(beyond(x));
  const inside = (x: number): boolean => beyond(x) <= 0;
  for (let i = 0; i < RAY_REACH / RAY_STEP; i += 1) {
    let a = x0 + way * i * RAY_STEP;
    let b = x0 + way * (i + 1) * RAY_STEP;
    const ea = exists(a);
    const eb = exists(b);
    if (!ea && !eb) continue;
    if (ea !== eb) {
      const edge = change(a, b, exists);
      if (ea) b = edge - way * 1e-9;
      else a = edge + way * 1e-9;
    }
    if (inside(a) !== inside(b)) return change(a, b, inside);
  }
  return null;
}

/** Levels of one side: from the rim on that side to the apical rim (M1). */
export function levelRange(p: Placed, side: Side): [number, number] {
  return [p.rim(centreOf(side)), p.apex];
}

/** The least counting value of the profile (M2), its level, or null where nothing counts. */
export function thinnest(
  g: Ground,
  p: Placed,
  side: Side,
  margin: number,
): { value: number; level: number } | null {
  const [from, to] = levelRange(p, side);
  const n = Math.ceil((to - from) / 0.1);
  const levels = Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n);
  const sample = (t: number): WallSample => wallAt(g, p, side, t, margin);
  const samples = levels.map(sample);
  const value = (t: number): number => {
    const s = sample(t);
    return s.counts && s.wall !== null ? s.wall : Infinity;
  };
  let best = Infinity;
  let level = from;
  const take = (t: number, v: number): void => {
    if (v < best) {
      best = v;
      level = t;
    }
  };
  samples.forEach((s, i) => {
    if (s.counts && s.wall !== null) take(levels[i]!, s.wall);
    const next = samples[i + 1];
    if (!next || next.counts === s.counts) return;
    // An end of the counting window: the last level that still counts.
    const edge = change(levels[i]!, levels[i + 1]!, (t) => sample(t).counts);
    for (const t of [edge - 2e-9, edge + 2e-9]) take(t, value(t));
  });
  if (best === Infinity) return null;
  const near = best + 0.1;
  samples.forEach((s, i) => {
    const own = s.counts && s.wall !== null ? s.wall : Infinity;
    const left = samples[i - 1]?.counts ? (samples[i - 1]!.wall ?? Infinity) : Infinity;
    const right = samples[i + 1]?.counts ? (samples[i + 1]!.wall ?? Infinity) : Infinity;
    if (own > near || own > left || own > right) return;
    const dip = least(levels[Math.max(0, i - 1)]!, levels[Math.min(n, i + 1)]!, 0.05, 0.02, value);
    take(dip.at, dip.value);
  });
  return { value: best, level };
}

// ---------------------------------------------------------------- true distances

/** The part of the envelope that takes part: azimuths within `half` of `centre`, and per azimuth the levels from `top` to `apex`. */
interface Part {
  readonly side: Side;
  readonly centre: number;
  readonly half: number;
  readonly top: (azimuth: number) => number;
  /** Least depth of the sheet's points. */
  readonly depth: number;
}

const turned = (azimuth: number, centre: number): number => {
  let x = azimuth - centre;
  while (x > Math.PI) x -= 2 * Math.PI;
  while (x < -Math.PI) x += 2 * Math.PI;
  return x;
};

/** Distance in the half-plane of an azimuth from `(t, distance)` to the generatrix from `top` down, with the end face. */
function toProfile(p: Placed, top: number, t: number, distance: number): number {
  let best = Infinity;
  let [t0, r0] = p.corners[0]!;
  if (top < t0) best = toSegment(t, distance, top, r0, t0, r0).distance;
  for (let i = 1; i < p.corners.length; i += 1) {
    const [t1, r1] = p.corners[i]!;
    if (t1 >= top) {
      const cut = t0 < top && t1 > t0 ? (top - t0) / (t1 - t0) : 0;
      const d = toSegment(t, distance, t0 + cut * (t1 - t0), r0 + cut * (r1 - r0), t1, r1).distance;
      if (d < best) best = d;
    }
    t0 = t1;
    r0 = r1;
  }
  return best;
}

/** Least distance between the part and the sheet over pairs in one half-plane (M3); Infinity if there is no pair. */
function separation(g: Ground, p: Placed, part: Part): number {
  const middle = p.at((p.platform + p.apex) / 2, 0, 0);
  const q0 = g.arch.q(middle[0], middle[1]);
  const deepest = Math.max(g.depth(p.surface(p.apex, 0)), g.depth(p.surface(p.apex, Math.PI))) + 4;
  const swing = (q: number, d: number): number =>
    Math.abs(turned(p.cylindrical(g.sheetPoint(part.side, q, d))[2], part.centre));
  const value = (q: number, d: number): number => {
    const [t, distance, azimuth] = p.cylindrical(g.sheetPoint(part.side, q, d));
    if (Math.abs(turned(azimuth, part.centre)) > part.half) return Infinity;
    const top = part.top(turned(azimuth, part.centre));
    return Number.isNaN(top) ? Infinity : toProfile(p, top, t, distance);
  };
  const atDepth = (d: number): number => {
    let best = Infinity;
    const allowed =
      part.half >= Math.PI
        ? [[q0 - 7, q0 + 7] as [number, number]]
        : intervalsWhere(q0 - 7, q0 + 7, 0.5, (q) => swing(q, d) <= part.half);
    for (const [a, b] of allowed) {
      // The ends stand a hair inside, so that rounding does not throw the edge itself out.
      const v = least(a + 1e-9, b - 1e-9, 0.5, 0.4, (q) => value(q, d)).value;
      if (v < best) best = v;
    }
    return best;
  };
  if (deepest <= part.depth) return Infinity;
  return least(part.depth, deepest, 0.3, 0.3, atDepth).value;
}

/** Distance from a point outside the sheet of a side to that sheet; `bound`: a distance that is certainly enough. */
export function sheetDistance(g: Ground, side: Side, point: V, bound: number): number {
  const [q, , d] = g.section(point);
  const f = (x: number, y: number): number => size(minus(point, g.sheetPoint(side, x, Math.max(0, y))));
  const w = bound * 1.2 + 1e-6;
  // A first look at nine places, so that a concave kink does not hide the nearer side.
  let best = { x: q, y: Math.max(0, d), value: f(q, d) };
  for (const i of [-1, 0, 1]) {
    for (const j of [-1, -0.5, 0, 0.5, 1]) {
      const v = f(q + i * w * 0.7, d + j * w);
      if (v < best.value) best = { x: q + i * w * 0.7, y: Math.max(0, d + j * w), value: v };
    }
  }
  return shrink(best.x, best.y, w, w, f, 18).value;
}

const ROWS = 50;

/** Greatest distance by which a point of the part stands outside the sheet, 0 if none does (M3). */
function protrusion(g: Ground, p: Placed, part: Part): number {
  const half = Math.min(part.half, Math.PI);
  const outside = (azimuth: number, share: number): { across: number; point: V } | null => {
    const x = between(azimuth, -half, half);
    const top = part.top(x);
    if (Number.isNaN(top)) return null;
    const t = top + between(share, 0, 1) * (p.apex - top);
    const point = p.surface(t, part.centre + x);
    return { across: g.beyond(part.side, point), point };
  };
  const found: { azimuth: number; share: number; across: number }[] = [];
  const columns = half >= Math.PI ? 60 : 24;
  let most = { azimuth: 0, share: 0, across: -Infinity };
  for (let i = 0; i <= columns; i += 1) {
    const azimuth = -half + (2 * half * i) / columns;
    for (let j = 0; j <= ROWS; j += 1) {
      const across = outside(azimuth, j / ROWS)?.across ?? Number.NaN;
      if (across > most.across) most = { azimuth, share: j / ROWS, across };
      if (across > 0) found.push({ azimuth, share: j / ROWS, across });
    }
  }
  if (most.across === -Infinity) return 0;
  if (found.length === 0) {
    if (most.across < -0.1) return 0;
    const top = shrink(
      most.azimuth,
      most.share,
      half / columns,
      1 / ROWS,
      (x, y) => -(outside(x, y)?.across ?? 0),
    );
    if (!(top.value < 0)) return 0;
    found.push({ azimuth: top.x, share: top.y, across: -top.value });
  }
  // Across is never less than the distance, so that most candidates are settled without looking for the nearest point.
  found.sort((x, y) => y.across - x.across);
  const distance = (azimuth: number, share: number): number => {
    const at = outside(azimuth, share);
    return at && at.across > 0 ? sheetDistance(g, part.side, at.point, at.across) : 0;
  };
  let best = { azimuth: 0, share: 0, value: 0 };
  for (const c of found) {
    if (c.across <= best.value) break;
    const value = distance(c.azimuth, c.share);
    if (value > best.value) best = { azimuth: c.azimuth, share: c.share, value };
  }
  const refined = shrink(
    best.azimuth,
    best.share,
    (2 * half) / columns,
    2 / ROWS,
    (x, y) => -distance(x, y),
    10,
  );
  return Math.max(best.value, -refined.value);
}

/** Topmost level from which the generatrix counts down to the apical rim; NaN where the apical rim itself does not. */
function countingTop(g: Ground, p: Placed, azimuth: number, margin: number): number {
  const counts = (t: number): boolean => g.depth(p.surface(t, azimuth)) >= margin - COUNT_TOLERANCE;
  if (!counts(p.apex)) return Number.NaN;
  const rim = p.rim(azimuth);
  let t = p.apex;
  while (t > rim) {
    const next = Math.max(rim, t - 0.25);
    if (!counts(next)) return change(t, next, counts);
    t = next;
  }
  return rim;
}

/** A function of the azimuth on `[-half, half]`, tabled at every degree and read off in straight lines. */
function tabled(half: number, f: (azimuth: number) => number): (azimuth: number) => number {
  const n = Math.ceil((half * 180) / Math.PI);
  const table = Array.from({ length: n * 2 + 1 }, (_, i) => f((half * (i - n)) / n));
  return (azimuth) => {
    const x = between((azimuth / half) * n + n, 0, 2 * n);
    const i = Math.min(2 * n - 1, Math.floor(x));
    return table[i]! + (x - i) * (table[i + 1]! - table[i]!);
  };
}

export type TrueWall =
  | { readonly kind: 'value'; readonly value: number }
  | { readonly kind: 'void-between' | 'nothing-counts' };

export function trueWall(g: Ground, p: Placed, side: Side, margin: number): TrueWall {
  const centre = centreOf(side);
  const half = Math.PI / 4;
  const part: Part = {
    side,
    centre,
    half,
    top: tabled(half, (x) => countingTop(g, p, centre + x, margin)),
    depth: margin,
  };
  if (voidBetween(g, p, part, margin)) return { kind: 'void-between' };
  const out = protrusion(g, p, part);
  // Further outside than the implant's radius it is just "outside", and the value stops there.
  if (out > 0) return { kind: 'value', value: -Math.min(out, p.shape.implantedDiameter / 2) };
  const value = separation(g, p, part);
  return value === Infinity ? { kind: 'nothing-counts' } : { kind: 'value', value };
}

/** Whether a ray across the axis, anywhere in the window and with both ends counting, meets the socket's void or the dehiscence (M3). */
function voidBetween(g: Ground, p: Placed, part: Part, margin: number): boolean {
  if (!g.socket) return false;
  for (let i = -12; i <= 12; i += 1) {
    const x = (part.half * i) / 12;
    const top = part.top(x);
    if (Number.isNaN(top)) continue;
    for (let t = top; t <= p.apex; t += 0.2) {
      let met = false;
      let distance = p.radius(t);
      for (; distance < 15; distance += 0.1) {
        const point = p.at(t, distance, part.centre + x);
        if (!(g.beyond(part.side, point) <= 0)) break;
        met ||= g.inSocket(point) || g.inDehiscence(point);
      }
      if (met && g.depth(p.at(t, distance, part.centre + x)) >= margin) return true;
    }
  }
  return false;
}

/** Apical third against the facial sheet, all round the axis (M10). */
export function concavity(g: Ground, p: Placed, margin: number): number | null {
  const top = p.apex - p.shape.implantedLength / 3;
  const part: Part = { side: 'facial', centre: 0, half: Math.PI, top: () => top, depth: margin };
  const out = protrusion(g, p, part);
  if (out > 0) return -out;
  const value = separation(g, p, part);
  return value === Infinity ? null : value;
}
