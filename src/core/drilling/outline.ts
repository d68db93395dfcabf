import { type Loop, onPlane, type Plane } from '../geometry/slice.ts';
import { along, dot, sub, type Vec3 } from '../geometry/vec.ts';
import { radiusAt } from './convexBody.ts';
import type { PassBody } from './passBody.ts';

/** How far a drawn outline may stand off the body's, mm. */
const FINENESS = 0.004;
const FIRST_RAYS = 48;
const DEEPEST_HALVING = 12;
/** Places along the axis from which an outline may be looked for. */
const LOOKED_FROM = 80;

/** How far coronal of the crest point what was drilled is taken away, mm: beyond every bone and gum. */
const ABOVE = 14;
/** A point of the plane within the body and below the top, from which the outline is drawn: near the place where a pressed axis turns, else near its middle. */
function centreIn(body: PassBody, plane: Plane, top: number): readonly [number, number] | null {
  const { bottom, a } = body.axisAt(0.5);
  const end = (top - bottom[2]) / a[2];
  const { sweep } = body;
  const turn = sweep && sweep.kappa !== 0 ? -sweep.bottom / sweep.kappa : Number.NaN;
  const wanted = turn > 0 && turn < end ? turn : end / 2;
  let best: readonly [number, number] | null = null;
  let nearest = Infinity;
  for (let i = 1; i < LOOKED_FROM; i++) {
    const h = body.lowest + ((end - body.lowest) * i) / LOOKED_FROM;
    const q = sub(along(bottom, a, h), plane.origin);
    const [x, y] = [dot(q, plane.x), dot(q, plane.y)];
    const p = onPlane(plane, x, y);
    if (Math.abs(h - wanted) >= nearest || p[2] >= top || !body.contains(p)) continue;
    nearest = Math.abs(h - wanted);
    best = [x, y];
  }
  return best;
}

/**
 * Where a plane cuts the body of a pass below the level `top` (site frame `c`, mm): a closed line in the plane's coordinates, within 0.01 mm of the body's;
 * nothing where the plane passes it by.
 */
export function outlineInPlane(body: PassBody, plane: Plane, top: number): Loop[] {
  const centre = centreIn(body, plane, top);
  if (!centre) return [];
  const from = onPlane(plane, centre[0], centre[1]);
  const at = (angle: number): readonly [number, number] => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const v = onPlane({ ...plane, origin: [0, 0, 0] }, c, s);
    const inside = body.stretches(from, v).find(([lo, hi]) => lo <= 1e-9 && hi >= -1e-9);
    const reach = Math.min(inside ? inside[1] : 0, v[2] > 1e-12 ? (top - from[2]) / v[2] : Infinity);
    return [centre[0] + reach * c, centre[1] + reach * s];
  };
  const loop: (readonly [number, number])[] = [];
  const fill = (
    a0: number,
    p0: readonly [number, number],
    a1: number,
    p1: readonly [number, number],
    depth: number,
  ): void => {
    const mid = (a0 + a1) / 2;
    const p = at(mid);
    const chord = Math.hypot(p1[0] - p0[0], p1[1] - p0[1]);
    const off =
      Math.abs((p[0] - p0[0]) * (p1[1] - p0[1]) - (p[1] - p0[1]) * (p1[0] - p0[0])) / Math.max(chord, 1e-12);
    if (depth >= DEEPEST_HALVING || (depth > 0 && off < FINENESS)) {
      loop.push(p1);
      return;
    }
    fill(a0, p0, mid, p, depth + 1);
    fill(mid, p, a1, p1, depth + 1);
  };
  for (let i = 0; i < FIRST_RAYS; i++) {
    const [a0, a1] = [(2 * Math.PI * i) / FIRST_RAYS, (2 * Math.PI * (i + 1)) / FIRST_RAYS];
    fill(a0, at(a0), a1, at(a1), 0);
  }
  return [loop];
}

/** Stations of a body's rings from its lowest point up to `above` mm coronal of the bone entry. */
const stationsOf = (body: PassBody, above: number): number[] => {
  const top = body.depth + above;
  return [...body.profile.x.filter((x) => x < top), top];
};

const ring = (body: PassBody, s: number, station: number, segments: number): Vec3[] => {
  const r = radiusAt(body.profile, station);
  const count = r === 0 ? 1 : segments;
  return Array.from({ length: count }, (_, i) => body.surface(s, station, r, (2 * Math.PI * i) / count));
};

/**
 * Points whose convex hulls together are the body of a pass up to `above` mm coronal of its bone entry: one set where it was not pressed or pressed as a
 * shift; where it tipped, two sets for each step (below and above the point where the axis turns). Circles have `segments` corners. Site frame, mm.
 */
export function sweptHull(body: PassBody, segments: number, above: number): Vec3[][] {
  const { places, sweep } = body;
  const stations = stationsOf(body, above);
  const all = (s: number, keep: readonly number[]) => keep.flatMap((x) => ring(body, s, x, segments));
  if (!sweep || sweep.kappa === 0) return [places.flatMap(({ s }) => all(s, stations))];
  const turn = -sweep.bottom / sweep.kappa;
  const out: Vec3[][] = [];
  for (let i = 0; i + 1 < places.length; i++) {
    const pair = [places[i], places[i + 1]];
    const split = pair.map(({ s, cos }) => ({ s, turn: turn / cos }));
    const below = split.flatMap((p) => all(p.s, cutAt(stations, p.turn, -1)));
    const over = split.flatMap((p) => all(p.s, cutAt(stations, p.turn, 1)));
    out.push(...[below, over].filter((points) => points.length > 0));
  }
  return out;
}

/** Stations on one side of the place where an axis turns, with that place itself if it lies between them. */
function cutAt(stations: readonly number[], turn: number, side: 1 | -1): number[] {
  const kept = stations.filter((x) => side * (x - turn) > 1e-9);
  const within = turn > stations[0] && turn < stations[stations.length - 1];
  if (kept.length === 0 || !within) return kept;
  return [...kept, turn];
}

/** Outlines of bodies in a plane, one by one. */
export const bodiesInPlane = (bodies: readonly PassBody[], plane: Plane): Loop[] =>
  bodies.flatMap((body) => outlineInPlane(body, plane, ABOVE));
