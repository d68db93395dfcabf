/** The oracle's walls: profile (M1, M2), true wall (M3) and concavity (M10), by marching along rays and sampling the sheet. */
import type { Ground, Placed, Side } from './model.ts';
import {
  between,
  change,
  golden,
  intervalsWhere,
  least,
  minus,
  seeded,
  shrink,
  size,
  toSegment,
  type V,
} from './numbers.ts';

export const COUNT_TOLERANCE = 1e-6;
/** A ray is sampled this densely; a crossing pair closer together than this is a graze. */
const RAY_STEP = 0.1;
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
  const ridge = intervalsWhere(r, end, 0.25, (x) => g.inRidge(point(x)));
  const voids = voidsAlong(g, r, end, point);
  let wall = 0;
  let gap = 0;
  for (const [a, b] of ridge) {
    let empty = 0;
    for (const [lo, hi] of voids) empty += Math.max(0, Math.min(b, hi) - Math.max(a, lo));
    wall += b - a - empty;
    gap += empty;
  }
  return { wall, gap, counts, depth };
}

/** The stretches of a line that lie in a void, each void looked for by itself, so that no thin bone between two is passed over. */
function voidsAlong(g: Ground, a: number, b: number, point: (x: number) => V): [number, number][] {
  const found = [
    ...(g.socket ? intervalsWhere(a, b, RAY_STEP, (x) => g.inSocket(point(x))) : []),
    ...(g.socket ? intervalsWhere(a, b, RAY_STEP, (x) => g.inDehiscence(point(x))) : []),
    ...(g.canal ? intervalsWhere(a, b, RAY_STEP, (x) => g.inCanal(point(x))) : []),
  ].sort((x, y) => x[0] - y[0]);
  const union: [number, number][] = [];
  for (const [lo, hi] of found) {
    const last = union.at(-1);
    if (last && lo <= last[1]) last[1] = Math.max(last[1], hi);
    else union.push([lo, hi]);
  }
  return union;
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
  const n = Math.ceil((to - from) / 0.2);
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
  // Walls change by less than 2 mm per mm of level, so that no dip between samples starts higher than this.
  const near = best + 0.4;
  samples.forEach((s, i) => {
    const own = s.counts && s.wall !== null ? s.wall : Infinity;
    const left = samples[i - 1]?.counts ? (samples[i - 1]!.wall ?? Infinity) : Infinity;
    const right = samples[i + 1]?.counts ? (samples[i + 1]!.wall ?? Infinity) : Infinity;
    if (own > near || own > left || own > right) return;
    const dip = least(levels[Math.max(0, i - 1)]!, levels[Math.min(n, i + 1)]!, 0.05, 0.1, value);
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

/**
 * Nearest point of the sheet of a side to a point outside it, `bound` being a distance that is certainly enough: a grid over
 * everything within it, at most 0.3 mm wide, then every dip of the grid that may be the lowest is narrowed.
 */
export function sheetDistance(g: Ground, side: Side, point: V, bound: number): { value: number; foot: V } {
  const [q, , d] = g.section(point);
  const f = (x: number, y: number): number => size(minus(point, g.sheetPoint(side, x, Math.max(0, y))));
  // Palatally of the arch a millimetre across stands for more along it.
  const e = g.arch.e(point[0], point[1]);
  const stretch = g.arch.radius === Infinity ? 1 : g.arch.radius / (g.arch.radius + Math.min(0, e));
  const wx = bound * 1.1 * stretch + 1e-6;
  const wy = bound * 1.1 + 1e-6;
  const n = Math.max(2, Math.ceil(bound / 0.3));
  const row = 2 * n + 1;
  const grid: number[] = [];
  for (let k = 0; k < row * row; k += 1) {
    grid.push(f(q + wx * (Math.floor(k / row) / n - 1), d + wy * ((k % row) / n - 1)));
  }
  const best = { value: Infinity, x: q, y: d };
  const lowest = Math.min(...grid);
  // A smooth dip of the grid lies no higher over its own bottom than this.
  const slack = Math.min(bound, 0.3) * 0.25;
  for (let i = 0; i < row; i += 1) {
    for (let j = 0; j < row; j += 1) {
      const v = grid[i * row + j]!;
      if (v > lowest + slack) continue;
      const dip = [-1, 0, 1].every((di) =>
        [-1, 0, 1].every((dj) => {
          const [x, y] = [i + di, j + dj];
          return x < 0 || y < 0 || x >= row || y >= row || grid[x * row + y]! >= v;
        }),
      );
      if (!dip) continue;
      const found = shrink(
        q + wx * (i / n - 1),
        d + wy * (j / n - 1),
        (1.2 * wx) / n,
        (1.2 * wy) / n,
        f,
        11,
        0.5,
      );
      if (found.value < best.value) Object.assign(best, found);
    }
  }
  return { value: best.value, foot: g.sheetPoint(side, best.x, Math.max(0, best.y)) };
}

/** Rows of the first look along the generatrix, and columns per quarter turn. */
const ROWS = 50;
const COLUMNS = 24;

/** Greatest distance by which a point of the part stands outside the sheet, 0 if none does (M3). */
function protrusion(g: Ground, p: Placed, part: Part): number {
  const half = Math.min(part.half, Math.PI);
  const columns = half >= Math.PI ? 2.5 * COLUMNS : COLUMNS;
  const outside = (azimuth: number, share: number): { across: number; point: V } | null => {
    const x = between(azimuth, -half, half);
    const top = part.top(x);
    if (Number.isNaN(top)) return null;
    const t = top + between(share, 0, 1) * (p.apex - top);
    const point = p.surface(t, part.centre + x);
    return { across: g.beyond(part.side, point), point };
  };
  const found: { i: number; j: number; across: number }[] = [];
  let most = { i: 0, j: 0, across: -Infinity };
  const azimuthOf = (i: number): number => -half + (2 * half * i) / columns;
  for (let i = 0; i <= columns; i += 1) {
    for (let j = 0; j <= ROWS; j += 1) {
      const across = outside(azimuthOf(i), j / ROWS)?.across ?? Number.NaN;
      if (across > most.across) most = { i, j, across };
      if (across > 0) found.push({ i, j, across });
    }
  }
  if (most.across < -0.1) return 0;
  let best = { azimuth: azimuthOf(most.i), share: most.j / ROWS, value: 0 };
  if (found.length === 0) {
    const { azimuth, share } = best;
    const up = (x: number, y: number): number => -(outside(x, y)?.across ?? -1);
    const top = shrink(azimuth, share, (2 * half) / columns, 1 / ROWS, up);
    if (!(top.value < 0)) return 0;
    best = { azimuth: top.x, share: top.y, value: 0 };
  }
  // No point is further from the sheet than from any sheet point: sideways across the ridge, or a foot found before. Only where
  // none of these rules it out is the nearest point looked for.
  const feet: V[] = [];
  const atMost = (point: V, across: number): number =>
    feet.reduce((least, foot) => Math.min(least, size(minus(point, foot))), across);
  const look = (azimuth: number, share: number): number => {
    const at = outside(azimuth, share);
    if (!at || !(at.across > 0)) return 0;
    const bound = atMost(at.point, at.across);
    if (bound <= best.value) return bound;
    const { value, foot } = sheetDistance(g, part.side, at.point, at.across);
    feet.push(foot);
    if (value > best.value) best = { azimuth, share, value };
    return value;
  };
  found.sort((x, y) => y.across - x.across);
  for (const c of found) look(azimuthOf(c.i), c.j / ROWS);
  // From every hill that may still be the highest, upward. The distance has ridges, where two places of the sheet are equally
  // near, that run across any grid: so the steps are random ones, about the best point so far, ever shorter.
  const hills: { i: number; j: number }[] = [];
  for (const c of found) {
    if (hills.some((h) => Math.abs(h.i - c.i) <= 3 && Math.abs(h.j - c.j) <= 3)) continue;
    const at = outside(azimuthOf(c.i), c.j / ROWS);
    if (at && atMost(at.point, c.across) > best.value - 0.2 && hills.length < 8) hills.push(c);
  }
  const random = seeded(1);
  const climb = (azimuth: number, share: number, rounds: number, steps: number): void => {
    const here = { azimuth, share, value: look(azimuth, share) };
    let w = 2;
    for (let round = 0; round < rounds; round += 1) {
      for (let k = 0; k < steps; k += 1) {
        const x = here.azimuth + (w * (2 * random() - 1) * 2 * half) / columns;
        const y = here.share + (w * (2 * random() - 1)) / ROWS;
        const value = look(x, y);
        if (value > here.value)
          Object.assign(here, { azimuth: between(x, -half, half), share: between(y, 0, 1), value });
      }
      w *= 0.7;
    }
  };
  for (const h of hills) climb(azimuthOf(h.i), h.j / ROWS, 10, 20);
  climb(best.azimuth, best.share, 26, 40);
  return best.value;
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

/** Whether a counting ray of the window meets the socket's void or the dehiscence before the sheet (M3). */
function voidBetween(g: Ground, p: Placed, part: Part, margin: number): boolean {
  if (!g.socket) return false;
  /** Least value of the socket's own equation on the ray, at most 0 where it meets a void; Infinity where it does not count. */
  const nearest = (x: number, t: number): number => {
    const point = (distance: number): V => p.at(t, distance, part.centre + x);
    const inside = (distance: number): boolean => g.beyond(part.side, point(distance)) <= 0;
    const r = p.radius(t);
    if (!inside(r)) return Infinity;
    let end = r;
    while (inside(end + 0.2)) {
      end += 0.2;
      // A ray that runs on within the ridge, along the arch, ends on no sheet and does not count.
      if (end > r + RAY_REACH) return Infinity;
    }
    end = change(end, end + 0.2, inside);
    if (g.depth(point(r)) < margin || g.depth(point(end)) < margin) return Infinity;
    for (let distance = r; distance < end; distance += 0.1) if (g.inDehiscence(point(distance))) return 0;
    return golden(r, end, (distance) => g.socketLevel(point(distance))).value;
  };
  let best = { x: 0, t: 0, value: Infinity };
  const columns = 12;
  for (let i = -columns; i <= columns; i += 1) {
    const x = (part.half * i) / columns;
    const top = part.top(x);
    if (Number.isNaN(top)) continue;
    for (let j = 0; j <= 40; j += 1) {
      const t = top + ((p.apex - top) * j) / 40;
      const value = nearest(x, t);
      if (value <= 0) return true;
      if (value < best.value) best = { x, t, value };
    }
  }
  if (best.value > 0.3) return false;
  const clamped = (x: number, t: number): number => {
    const azimuth = between(x, -part.half, part.half);
    const top = part.top(azimuth);
    return Number.isNaN(top) ? Infinity : nearest(azimuth, between(t, top, p.apex));
  };
  return shrink(best.x, best.t, part.half / columns, 0.3, clamped).value <= 0;
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
