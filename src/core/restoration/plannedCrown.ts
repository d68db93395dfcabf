import type { Anatomy } from '../anatomy/anatomy.ts';
import { incisalEdge } from '../anatomy/crown.ts';
import { premolarSolid } from '../anatomy/crownPremolar.ts';
import { FINE_TOOTH } from '../anatomy/section.ts';
import { plannedCrownInPlace, plannedTooth } from '../anatomy/toothMeshes.ts';
import { broughtInto, type Placed, turnedInto } from '../geometry/carry.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { type Loop, type Plane, sliceMesh } from '../geometry/slice.ts';
import type { Vec3 } from '../geometry/vec.ts';
import { WallDistance } from './wallDistance.ts';

/**
 * The planned crown as a solid to be asked. Everything is in the crown's own coordinates (rule S7: `x` mesial, `y` facial, `z` incisal), mm; `frame`
 * says where those stand in the site frame.
 */
export interface PlannedCrown {
  /** Closed, outward; its corners lie on the crown's form. */
  readonly mesh: TriangleMesh;
  readonly frame: Placed;
  /** What tells facial from palatal: a line from distal to mesial, `x` rising. */
  readonly edge: readonly Vec3[];
  /** Height of the cervical line mesially and distally, over the facial one's most apical point. */
  readonly cejCurve: { readonly mesial: number; readonly distal: number };
  readonly wall: WallDistance;
  /** From a point near the surface along a unit direction: the way on to the form itself, where that is known better than by facets. */
  readonly onto?: (p: Vec3, direction: Vec3) => number;
}

const walls = new WeakMap<TriangleMesh, WallDistance>();
const crowns = new WeakMap<Anatomy, PlannedCrown>();

/** The distances of a mesh that is closed by a fan about its last vertex, as crowns' feet are; kept as long as the mesh. */
function wallOf(mesh: TriangleMesh): WallDistance {
  const known = walls.get(mesh);
  if (known) return known;
  const made = new WallDistance(mesh, mesh.positions.length / 3 - 1);
  walls.set(mesh, made);
  return made;
}

/** A crown of any form; `mesh` closed across its foot by a fan about its last vertex. */
export const crownOf = (
  mesh: TriangleMesh,
  frame: Placed,
  edge: readonly Vec3[],
  cejCurve: PlannedCrown['cejCurve'],
): PlannedCrown => ({ mesh, frame, edge, cejCurve, wall: wallOf(mesh) });

/**
 * The planned crown of a site, kept as long as its solids are: the mesh that is drawn is the one that is read. Its facets lie within 0.01 mm of the form, a
 * premolar's within 0.04 down on its wall and 0.1 in its grooves. Cost: a mesh where the crown's numbers are new, else nothing.
 */
export function plannedCrownOf(anatomy: Anatomy): PlannedCrown {
  const known = crowns.get(anatomy);
  if (known) return known;
  const { cls, numbers } = plannedTooth(anatomy);
  const { mesh, frame } = plannedCrownInPlace(anatomy, FINE_TOOTH);
  const cejCurve = { mesial: numbers.cejCurveMesial, distal: numbers.cejCurveDistal };
  const facets = crownOf(mesh, frame, incisalEdge(cls, numbers), cejCurve);
  const made =
    cls === 'premolar1' || cls === 'premolar2'
      ? { ...facets, onto: premolarSolid(cls, numbers).onto }
      : facets;
  crowns.set(anatomy, made);
  return made;
}

/** The crown cut by a plane of the site frame: closed lines in the plane's own coordinates, mm. */
export interface CrownCut {
  readonly plane: Plane;
  readonly loops: readonly Loop[];
}

export const cutCrown = ({ mesh, frame }: PlannedCrown, plane: Plane): CrownCut => ({
  plane,
  loops: sliceMesh(mesh, {
    origin: broughtInto(frame, plane.origin),
    x: turnedInto(frame, plane.x),
    y: turnedInto(frame, plane.y),
  }),
});

/**
 * How far along a ray it first comes out of what the loops enclose, with the ray's start taken as it is, inside or outside. Null: it never comes out.
 * `direction` need not be unit; the answer counts in it.
 */
export function wayOut(
  loops: readonly Loop[],
  from: readonly [number, number],
  direction: readonly [number, number],
): number | null {
  const [dx, dy] = direction;
  const met: number[] = [];
  for (const loop of loops) {
    for (let i = 0; i < loop.length; i++) {
      const [ax, ay] = [loop[i][0] - from[0], loop[i][1] - from[1]];
      const next = loop[i + 1 === loop.length ? 0 : i + 1];
      const [bx, by] = [next[0] - from[0], next[1] - from[1]];
      const sa = dx * ay - dy * ax;
      const sb = dx * by - dy * bx;
      if (sa > 0 === sb > 0) continue;
      const w = sa / (sa - sb);
      met.push(((ax + w * (bx - ax)) * dx + (ay + w * (by - ay)) * dy) / (dx * dx + dy * dy));
    }
  }
  met.sort((a, b) => a - b);
  // From far outside every second crossing comes out.
  for (let i = 1; i < met.length; i += 2) if (met[i] > 0) return met[i];
  return null;
}

/** A place against the edge's line, in the crown's coordinates: the line's point at the same `x` and the distance to it, + palatal. */
export function fromEdge(edge: readonly Vec3[], p: Vec3): { readonly foot: Vec3; readonly distance: number } {
  const foot = edgeAt(edge, p[0]);
  const apart = Math.hypot(p[0] - foot[0], p[1] - foot[1], p[2] - foot[2]);
  return { foot, distance: p[1] < foot[1] ? apart : -apart };
}

function edgeAt(edge: readonly Vec3[], x: number): Vec3 {
  const last = edge.length - 1;
  if (x <= edge[0][0]) return edge[0];
  if (x >= edge[last][0]) return edge[last];
  let i = 0;
  while (edge[i + 1][0] < x) i++;
  const [a, b] = [edge[i], edge[i + 1]];
  const w = (x - a[0]) / (b[0] - a[0]);
  return [x, a[1] + w * (b[1] - a[1]), a[2] + w * (b[2] - a[2])];
}
