import type { RootSolid } from '../anatomy/teeth.ts';
import { apart, compass, gridMinimum, type Place } from '../geometry/compass.ts';
import { halfEllipsoidDistance, halfEllipsoidFoot, insideHalfEllipsoid } from '../geometry/ellipsoid.ts';
import { Revolved } from '../geometry/revolve.ts';
import { along, dot, scale, sub, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from './placement.ts';
import type { Clearance } from './sheetDistance.ts';

/** A coarse look for a start: both bodies are convex, so there is one least place to run down to. */
const COLUMNS = 10;
const ROWS = 7;

/** Point of a root's curved surface: azimuth `θ` from `ex` toward `ey`, polar angle `ψ` from the apex, radians. Site frame, mm. */
export function rootPoint(root: RootSolid, theta: number, psi: number): Vec3 {
  const s = Math.sin(psi);
  const x = root.semi[0] * s * Math.cos(theta);
  const y = root.semi[1] * s * Math.sin(theta);
  const z = -root.semi[2] * Math.cos(psi);
  const { centre, ex, ey, a } = root;
  return [
    centre[0] + x * ex[0] + y * ey[0] + z * a[0],
    centre[1] + x * ex[1] + y * ey[1] + z * a[1],
    centre[2] + x * ex[2] + y * ey[2] + z * a[2],
  ];
}

/** Coordinates of a point in a root's own frame. */
export function inRoot(root: RootSolid, p: Vec3): Vec3 {
  const r = sub(p, root.centre);
  return [dot(r, root.ex), dot(r, root.ey), dot(r, root.a)];
}

/** Distance from a point to a root's curved surface, ≥ 0. */
export function pointToRoot(root: RootSolid, p: Vec3): number {
  const [x, y, z] = inRoot(root, p);
  return halfEllipsoidDistance(root.semi[0], root.semi[1], root.semi[2], x, y, z);
}

/** The root's surface point nearest to a point. */
function rootFoot(root: RootSolid, p: Vec3): Vec3 {
  const [x, y, z] = inRoot(root, p);
  const [u, v, w] = halfEllipsoidFoot(root.semi[0], root.semi[1], root.semi[2], x, y, z);
  return along(along(along(root.centre, root.ex, u), root.ey, v), root.a, w);
}

const isInside = (root: RootSolid, p: Vec3): boolean => {
  const [x, y, z] = inRoot(root, p);
  return insideHalfEllipsoid(root.semi[0], root.semi[1], root.semi[2], x, y, z);
};

/** Envelope to root (rule M9), negative: greatest depth inside. Ends in the site frame, mm. */
export function envelopeToRoot(at: Placement, root: RootSolid): Clearance {
  const near = at.parts
    .map((part) => bodyToRoot(at, root, part))
    .reduce((a, b) => (b.value < a.value ? b : a));
  if (near.value > 0) return near;
  return (
    deepest(
      at,
      (p) => (isInside(root, p) ? pointToRoot(root, p) : -1),
      (p) => rootFoot(root, p),
    ) ?? {
      ...near,
      value: Math.min(near.value, 0),
    }
  );
}

/** The shoulder's rim circle (in the platform plane) to the root, negative: greatest depth of a rim point inside. */
export function shoulderToRoot(at: Placement, root: RootSolid): Clearance {
  const radius = at.radius(at.tP);
  const near = bodyToRoot(at, root, new Revolved([0, 0], [radius, radius]));
  const inside = (degrees: number) => isInside(root, at.surface(at.tP, (degrees * Math.PI) / 180));
  let meets = near.value < 0.2;
  for (let i = 0; i < 360 && !meets; i += 15) meets = inside(i);
  let worst: Clearance | null = null;
  for (let i = 0; i < 360 && meets; i++) {
    const p = at.surface(at.tP, (i * Math.PI) / 180);
    if (!isInside(root, p)) continue;
    const depth = pointToRoot(root, p);
    if (worst === null || -depth < worst.value) worst = { value: -depth, from: p, to: rootFoot(root, p) };
  }
  return worst ?? near;
}

/** A direction as station along the axis (apical), and across it on `ef` and `em`. */
export const inAxis = (at: Placement, v: Vec3): Vec3 => [-dot(v, at.a), dot(v, at.ef), dot(v, at.em)];

/** Least signed distance from the root's surface to a convex body about the axis; closed form per surface point. */
function bodyToRoot(at: Placement, root: RootSolid, body: Revolved): Clearance {
  // The root's frame in the axis' own coordinates: station, and the two across.
  const c = inAxis(at, sub(root.centre, at.platform));
  const u = inAxis(at, scale(root.ex, root.semi[0]));
  const v = inAxis(at, scale(root.ey, root.semi[1]));
  const w = inAxis(at, scale(root.a, -root.semi[2]));
  const value = (theta: number, psi: number): number => {
    if (psi < 0 || psi > Math.PI / 2) return Infinity;
    const s = Math.sin(psi);
    const x = s * Math.cos(theta);
    const y = s * Math.sin(theta);
    const z = Math.cos(psi);
    const f = c[1] + x * u[1] + y * v[1] + z * w[1];
    const m = c[2] + x * u[2] + y * v[2] + z * w[2];
    return body.signed(c[0] + x * u[0] + y * v[0] + z * w[0], Math.sqrt(f * f + m * m));
  };
  const best = gridMinimum(
    value,
    COLUMNS,
    ROWS,
    (i) => (2 * Math.PI * i) / COLUMNS,
    (j) => (Math.PI * (j + 1)) / (2 * ROWS),
    0.02,
    1 / 2048,
  );
  const place = best ?? { x: 0, y: 0, value: value(0, 0) };
  const to = rootPoint(root, place.x, place.y);
  const dist = value(place.x, place.y);
  return { value: dist, from: at.footOf(body, to), to };
}

/** The envelope's point (side and end face) at which `depth` is greatest and positive; value = minus that. `foot`: the surface's point nearest to it. */
export function deepest(
  at: Placement,
  depth: (p: Vec3) => number,
  foot: (p: Vec3) => Vec3,
): Clearance | null {
  const end = at.radius(at.tA);
  const surface = (s: number, phi: number): Vec3 => {
    if (s <= at.length) return at.surface(at.tP + s, phi);
    return along(at.axisPoint(at.tA), at.across(phi), end - (s - at.length));
  };
  const last = at.length + end;
  const f = (s: number, phi: number) => (s < 0 || s > last ? Infinity : -depth(surface(s, phi)));
  const columns = 72;
  const { transmucosalLength, taperLength } = at.shape;
  const corners = [0, transmucosalLength, at.length - taperLength, at.length];
  const rows = [...corners, ...Array.from({ length: 49 }, (_, j) => (last * j) / 48)];
  const seeds: Place[] = [];
  for (const x of rows) {
    for (let i = 0; i < columns; i++) {
      const y = (2 * Math.PI * i) / columns;
      const value = f(x, y);
      if (value < 0) seeds.push({ x, y, value });
    }
  }
  if (seeds.length === 0) return null;
  // Some along the axis, some about it, and the end face by itself: depths are nearly even about a narrow tube.
  const face = seeds.filter((seed) => seed.x > at.length);
  const found = [...apart(seeds, 0.5, 7, 5), ...apart(seeds, 0.25, 0.3, 5), ...apart(face, 0.25, 0.3, 4)]
    .map((seed) => compass(f, seed, last / 200, Math.PI / columns / 4, 1 / 256, true))
    .reduce((a, b) => (b.value < a.value ? b : a));
  const from = surface(found.x, found.y);
  return { value: found.value, from, to: foot(from) };
}
