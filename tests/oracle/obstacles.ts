/** The oracle's distances to roots (M9) and to the canal (M10), and what the implant exposes (M11), all by sampling. */
import type { Canal, Ground, Placed, PlacedTooth } from './model.ts';
import {
  across,
  between,
  inner,
  intervalsWhere,
  least,
  minus,
  plus,
  size,
  toSegment,
  type V,
} from './numbers.ts';

export interface Nearest {
  /** Negative: the greatest depth inside. */
  readonly distance: number;
  /** Level of the envelope's point. */
  readonly level: number;
}

/** Distance from a point, given by level and distance from the axis, to the envelope with its end face up to the platform plane. */
function toEnvelope(p: Placed, t: number, distance: number): Nearest {
  let best: Nearest = { distance: Infinity, level: 0 };
  for (let i = 1; i < p.corners.length; i += 1) {
    const [t0, r0] = p.corners[i - 1]!;
    const [t1, r1] = p.corners[i]!;
    const s = toSegment(t, distance, t0, r0, t1, r1);
    if (s.distance < best.distance) best = { distance: s.distance, level: t0 + s.share * (t1 - t0) };
  }
  return best;
}

const nearestTo = (p: Placed, point: V): Nearest => {
  const [t, distance] = p.cylindrical(point);
  return toEnvelope(p, t, distance);
};

// ---------------------------------------------------------------- roots

export class Root {
  private readonly tooth: PlacedTooth;
  readonly semi: V;
  constructor(tooth: PlacedTooth) {
    this.tooth = tooth;
    const n = tooth.numbers;
    this.semi = [n.cervixWidth / 2, n.cervixDepth / 2, n.rootLength];
  }

  /** A point of the curved surface: `z` from 0 at the origin to 1 at the apex, `w` round the axis. */
  point(z: number, w: number): V {
    const belt = Math.sqrt(Math.max(0, 1 - z * z));
    const { em, ef, a } = this.tooth.rootAxis;
    const [A, B, L] = this.semi;
    const rim = plus(plus(this.tooth.origin, em, A * belt * Math.cos(w)), ef, B * belt * Math.sin(w));
    return plus(rim, a, -L * z);
  }

  own(p: V): V {
    const v = minus(p, this.tooth.origin);
    const { em, ef, a } = this.tooth.rootAxis;
    return [inner(v, em), inner(v, ef), inner(v, a)];
  }

  contains(p: V): boolean {
    const [x, y, z] = this.own(p);
    const [A, B, L] = this.semi;
    return z <= 0 && (x / A) ** 2 + (y / B) ** 2 + (z / L) ** 2 < 1;
  }

  /**
   * Distance from a point to the curved surface, never signed. The nearest point of an ellipsoid is `a² p / (a² + k)`, and `k` is
   * found by halving (Eberly, "Distance from a point to an ellipse, an ellipsoid"); above the origin by sampling the half that exists.
   */
  toSurface(p: V): number {
    const own = this.own(p);
    if (own[2] > 0) return this.sampled(own);
    const [x, y, z] = own;
    const [A, B, L] = [this.semi[0] ** 2, this.semi[1] ** 2, this.semi[2] ** 2];
    const excess = (k: number): number => {
      const u = x / (A + k);
      const v = y / (B + k);
      const w = z / (L + k);
      return A * u * u + B * v * v + L * w * w - 1;
    };
    let lo = -Math.min(A, B, L);
    let hi = size(own) * Math.max(...this.semi);
    if (!(excess(lo + 1e-9) > 0)) return this.sampled(own);
    while (hi - lo > 1e-7) {
      const k = (lo + hi) / 2;
      if (excess(k) > 0) lo = k;
      else hi = k;
    }
    return size([(x * hi) / (A + hi), (y * hi) / (B + hi), (z * hi) / (L + hi)]);
  }

  private sampled([x, y, z]: V): number {
    const [A, B, L] = this.semi;
    const f = (polar: number, w: number): number => {
      const v = between(polar, 0, Math.PI / 2);
      const s = Math.sin(v);
      return size([x - A * s * Math.cos(w), y - B * s * Math.sin(w), z + L * Math.cos(v)]);
    };
    const belt = (v: number): number => least(0, 2 * Math.PI, 0.3, 0.3, (w) => f(v, w)).value;
    return least(0, Math.PI / 2, 0.08, 0.3, belt).value;
  }

  signed(p: V): number {
    return this.contains(p) ? -this.toSurface(p) : this.toSurface(p);
  }
}

/** Smallest distance from the envelope to the root's curved surface (M9). */
export function rootDistance(p: Placed, root: Root): Nearest {
  const value = (v: number, w: number): number => nearestTo(p, root.point(Math.cos(v), w)).distance;
  let bestW = 0;
  const belt = (v: number): number => {
    const dip = least(0, 2 * Math.PI, 0.3, 0.3, (w) => value(v, w));
    bestW = dip.at;
    return dip.value;
  };
  const found = least(0, Math.PI / 2, 0.06, 0.5, belt);
  belt(found.at);
  const touch = nearestTo(p, root.point(Math.cos(found.at), bestW));
  if (found.value > 0.1) return { distance: found.value, level: touch.level };
  return deepest(p, (x) => root.signed(x)) ?? { distance: found.value, level: touch.level };
}

/** Least signed distance of an envelope point to a solid if it is negative (the greatest depth), or null where none is inside. */
function deepest(p: Placed, signed: (x: V) => number): Nearest | null {
  // `way` runs down the generatrix and on across the end face to its middle.
  const side = p.apex - p.platform;
  const face = p.radius(p.apex);
  const at = (way: number, azimuth: number): V =>
    way <= side ? p.surface(p.platform + way + 1e-12, azimuth) : p.at(p.apex, face - (way - side), azimuth);
  const ring = (way: number): number =>
    least(0, 2 * Math.PI, 0.25, 0.3, (azimuth) => signed(at(way, azimuth))).value;
  const parts = [least(0, side, 0.3, 0.3, ring), least(side, side + face, 0.1, 0.3, ring)];
  const found = parts[0]!.value <= parts[1]!.value ? parts[0]! : parts[1]!;
  return found.value < 0 ? { distance: found.value, level: p.platform + Math.min(found.at, side) } : null;
}

/** Least signed distance of the envelope's ring at one level (at the apex: of the end face) to a solid. */
export function ringDistance(p: Placed, level: number, signed: (x: V) => number): number {
  const ring = (distance: number): number =>
    least(0, 2 * Math.PI, 0.15, 0.3, (azimuth) => signed(p.at(level, distance, azimuth))).value;
  const r = p.radius(level);
  return level < p.apex - 1e-9 ? ring(r) : least(0, r, 0.1, 0.3, ring).value;
}

/** From the platform's rim circle to the root (M9). */
export function rootAtShoulder(p: Placed, root: Root): number {
  const r = p.shape.platformDiameter / 2;
  const toCircle = (v: number, w: number): number => {
    const [t, distance] = p.cylindrical(root.point(Math.cos(v), w));
    return across(t - p.platform, distance - r);
  };
  const belt = (v: number): number => least(0, 2 * Math.PI, 0.3, 0.3, (w) => toCircle(v, w)).value;
  const near = least(0, Math.PI / 2, 0.06, 0.5, belt).value;
  if (near > 0.1) return near;
  const inside = least(0, 2 * Math.PI, 0.05, 0.1, (azimuth) =>
    root.signed(p.at(p.platform, r, azimuth)),
  ).value;
  return inside < 0 ? inside : near;
}

// ---------------------------------------------------------------- canal

export function canalDistance(p: Placed, tube: Canal): Nearest {
  const helper: V = Math.abs(tube.into[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const k = inner(helper, tube.into);
  const raw = plus(helper, tube.into, -k);
  const x = plus([0, 0, 0], raw, 1 / Math.hypot(...raw));
  const i = tube.into;
  const y: V = [i[1] * x[2] - i[2] * x[1], i[2] * x[0] - i[0] * x[2], i[0] * x[1] - i[1] * x[0]];
  const point = (s: number, w: number): V => {
    const r = tube.radius(s);
    return plus(plus(plus(tube.start, i, s), x, r * Math.cos(w)), y, r * Math.sin(w));
  };
  let bestW = 0;
  const ring = (s: number): number => {
    const dip = least(0, 2 * Math.PI, 0.3, 0.3, (w) => nearestTo(p, point(s, w)).distance);
    bestW = dip.at;
    return dip.value;
  };
  const found = least(0, tube.length, 0.3, 0.3, ring);
  ring(found.at);
  const touch = { distance: found.value, level: nearestTo(p, point(found.at, bestW)).level };
  if (found.value > 0.1) return touch;
  return deepest(p, (q) => toTube(tube, q)) ?? touch;
}

/** Signed distance from a point to the wall of the tube, negative inside. */
export function toTube(tube: Canal, q: V): number {
  const v = minus(q, tube.start);
  const s = inner(v, tube.into);
  const r = Math.sqrt(Math.max(0, inner(v, v) - s * s));
  const half = tube.length / 2;
  const upper = toSegment(s, r, 0, tube.radius(0), half, tube.radius(half)).distance;
  const lower = toSegment(s, r, half, tube.radius(half), tube.length, tube.radius(tube.length)).distance;
  const inside = s >= 0 && s <= tube.length && r < tube.radius(s);
  return Math.min(upper, lower) * (inside ? -1 : 1);
}

// ---------------------------------------------------------------- exposure

export interface Exposure {
  readonly socket: number;
  readonly dehiscence: number;
  readonly fenestration: number;
  readonly whole: number;
  /** Greatest length outside bone along one generatrix, mm. */
  readonly longest: number;
}

type Kind = 'socket' | 'canal' | 'open';

/** One generatrix: what lies outside bone on it, in order down the axis. */
interface Strip {
  readonly azimuth: number;
  readonly pieces: { readonly kind: Kind; readonly from: number; readonly to: number; joined: boolean }[];
}

/**
 * Azimuths to begin with; between neighbours that differ by more than `RESTLESS` mm in any kind of length, halves are put in,
 * at most `HALVINGS` deep. The areas then stand within 0.02 mm² of those from ten times as many.
 */
const STRIPS = 160;
const RESTLESS = 0.25;
const HALVINGS = 5;

/** Areas of the threaded envelope outside bone (M11): strips along the generatrix, joined where neighbours overlap. */
export function exposure(g: Ground, p: Placed, begin = STRIPS): Exposure {
  const from = p.lastThread;
  const to = p.apex;
  const strip = (azimuth: number): Strip => {
    const at = (t: number): V => p.surface(t, azimuth);
    const kindAt = (t: number): Kind => {
      const x = at(t);
      if (g.inSocket(x) || g.inDehiscence(x)) return 'socket';
      return g.inCanal(x) ? 'canal' : 'open';
    };
    const pieces: Strip['pieces'] = [];
    for (const [a, b] of intervalsWhere(from, to, 0.12, (t) => !g.inBone(at(t)))) {
      if (!g.socket && !g.canal) {
        pieces.push({ kind: 'open', from: a, to: b, joined: a <= from });
        continue;
      }
      for (const kind of ['socket', 'canal', 'open'] as const) {
        for (const [x, y] of intervalsWhere(a, b, 0.1, (t) => kindAt(t) === kind)) {
          pieces.push({ kind, from: x, to: y, joined: kind === 'open' && x <= from });
        }
      }
    }
    return { azimuth, pieces };
  };
  const strips = adaptive(strip, begin);
  spread(strips);
  const n = strips.length;
  const areaFrom = areaAbove(p);
  const sums = { socket: 0, dehiscence: 0, fenestration: 0 };
  strips.forEach(({ pieces }, i) => {
    const before = strips[i - 1]?.azimuth ?? strips[n - 1]!.azimuth - 2 * Math.PI;
    const after = strips[i + 1]?.azimuth ?? strips[0]!.azimuth + 2 * Math.PI;
    const share = (after - before) / 2;
    for (const piece of pieces) {
      const name = piece.kind === 'socket' ? 'socket' : piece.joined ? 'dehiscence' : 'fenestration';
      sums[name] += share * (areaFrom(piece.to) - areaFrom(piece.from));
    }
  });
  return { ...sums, whole: 2 * Math.PI * areaFrom(to), longest: longestOutside(strips, strip) };
}

const lengthOf = (s: Strip, kind?: Kind): number =>
  s.pieces.reduce((sum, x) => sum + (kind === undefined || x.kind === kind ? x.to - x.from : 0), 0);

function adaptive(strip: (azimuth: number) => Strip, begin: number): Strip[] {
  const restless = (a: Strip, b: Strip): boolean =>
    (['socket', 'canal', 'open'] as const).some((k) => Math.abs(lengthOf(a, k) - lengthOf(b, k)) > RESTLESS);
  const between = (a: Strip, b: Strip, left: number): Strip[] => {
    if (left === 0 || !restless(a, b)) return [];
    const middle = strip((a.azimuth + b.azimuth) / 2);
    return [...between(a, middle, left - 1), middle, ...between(middle, b, left - 1)];
  };
  const first = Array.from({ length: begin }, (_, i) => strip((2 * Math.PI * i) / begin));
  return first.flatMap((s, i) => {
    const next = first[i + 1] ?? { ...first[0]!, azimuth: 2 * Math.PI };
    return [s, ...between(s, next, HALVINGS)];
  });
}

/** What is joined to the last thread's level passes this on to open pieces that it overlaps on the next generatrix. */
function spread(strips: readonly Strip[]): void {
  const n = strips.length;
  const waiting = strips.flatMap((s, i) => s.pieces.filter((x) => x.joined).map((piece) => ({ i, piece })));
  for (let o = waiting.pop(); o; o = waiting.pop()) {
    for (const i of [(o.i + 1) % n, (o.i + n - 1) % n]) {
      for (const piece of strips[i]!.pieces) {
        if (piece.kind !== 'open' || piece.joined) continue;
        if (piece.to < o.piece.from || piece.from > o.piece.to) continue;
        piece.joined = true;
        waiting.push({ i, piece });
      }
    }
  }
}

/** The greatest length outside bone along one generatrix, narrowed between the strips. */
function longestOutside(strips: readonly Strip[], strip: (azimuth: number) => Strip): number {
  const longest = strips.reduce((a, b) => (lengthOf(b) > lengthOf(a) ? b : a));
  if (lengthOf(longest) === 0) return 0;
  const w = (2 * Math.PI) / STRIPS;
  const finer = least(longest.azimuth - w, longest.azimuth + w, w / 5, 0.01, (x) => -lengthOf(strip(x)));
  return Math.max(lengthOf(longest), -finer.value);
}

/** Area per radian of azimuth from the last thread down to a level: cones and cylinder in closed form. */
function areaAbove(p: Placed): (t: number) => number {
  const bend = p.apex - p.shape.taperLength;
  const ri = p.radius(p.lastThread);
  const lean = p.shape.taperLength > 0 ? (ri - p.radius(p.apex)) / p.shape.taperLength : 0;
  const slant = Math.sqrt(1 + lean * lean);
  return (t) => {
    const straight = ri * (Math.min(t, bend) - p.lastThread);
    const x = Math.max(0, t - bend);
    return straight + slant * (ri * x - (lean * x * x) / 2);
  };
}
