import type { Anatomy } from '../anatomy/anatomy.ts';
import { incisalEdge } from '../anatomy/crown.ts';
import { premolarSolid } from '../anatomy/crownPremolar.ts';
import { FINE_TOOTH } from '../anatomy/section.ts';
import type { PlacedTooth } from '../anatomy/teeth.ts';
import { plannedCrownInPlace, plannedTooth } from '../anatomy/toothMeshes.ts';
import { broughtInto, type Placed, turnedInto } from '../geometry/carry.ts';
import { type CutOff, cutOff } from '../geometry/cutOff.ts';
import { Kept } from '../geometry/kept.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { axisFrame, axisOf } from '../geometry/pose.ts';
import { type Loop, type Plane, sliceMesh } from '../geometry/slice.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
import { type CrownForm, plannedTilt, UNCHANGED } from './crownChoices.ts';
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

/** The distances of a mesh that is closed by a fan about its last vertex, as crowns' feet are; kept as long as the mesh. */
function wallOf(mesh: TriangleMesh, worn: boolean): WallDistance {
  const known = walls.get(mesh);
  if (known) return known;
  const made = new WallDistance(mesh, mesh.positions.length / 3 - 1, worn);
  walls.set(mesh, made);
  return made;
}

/** A crown of any form; `mesh` closed across its foot by a fan about its last vertex. `worn`: it has a lid of long triangles. */
export const crownOf = (
  mesh: TriangleMesh,
  frame: Placed,
  edge: readonly Vec3[],
  cejCurve: PlannedCrown['cejCurve'],
  worn = false,
): PlannedCrown => ({ mesh, frame, edge, cejCurve, wall: wallOf(mesh, worn) });

const isPremolar = ({ cls }: PlacedTooth): boolean => cls === 'premolar1' || cls === 'premolar2';

/** A worn crown's form, kept as long as the unworn mesh is. */
const worn = new WeakMap<TriangleMesh, Kept<CutOff>>();

function wornForm(mesh: TriangleMesh, height: number): CutOff {
  const kept = worn.get(mesh) ?? new Kept<CutOff>(4);
  worn.set(mesh, kept);
  return kept.get(String(height), () => cutOff(mesh, height));
}

/** The edge of a worn crown: level where it has been taken off, and there an incisor's or canine's runs along the middle of the facet. */
function wornEdge(edge: readonly Vec3[], height: number, rims: CutOff['rims'] | null): Vec3[] {
  return edge.map(([x, y, z]) => {
    if (z <= height) return [x, y, z];
    const sides = (rims ?? []).flatMap((rim) => crossings(rim, x));
    return [x, sides.length < 2 ? y : (Math.min(...sides) + Math.max(...sides)) / 2, height];
  });
}

/** Where a closed line crosses a given `x`. */
function crossings(rim: CutOff['rims'][number], x: number): number[] {
  return rim.flatMap(([x0, y0], i) => {
    const [x1, y1] = rim[(i + 1) % rim.length];
    return x0 <= x === x1 <= x ? [] : [y0 + ((x - x0) / (x1 - x0)) * (y1 - y0)];
  });
}

/** Where a crown stands that is turned about the facial middle of its CEJ (rule C1). */
export function crownFrame(anatomy: Anatomy, form: CrownForm): Placed {
  const { origin, ex, ey, a, numbers } = plannedTooth(anatomy);
  const { faciopalatal, mesiodistal } = form.tilt;
  if (faciopalatal === 0 && mesiodistal === 0) return { origin, ex, ey, ez: a };
  const turned = axisFrame(axisOf(plannedTilt(anatomy.site.crown.tilt, form)));
  const facial = along(origin, ey, numbers.cervixDepth / 2);
  const stands = along(facial, turned.ef, -numbers.cervixDepth / 2);
  return { origin: stands, ex: turned.em, ey: turned.ef, ez: turned.a };
}

/** Facets stand off the form by less than this; nearer to a worn facet's level than this, the form that was there is none, mm. */
const FACETS = 0.15;

function made(anatomy: Anatomy, form: CrownForm): PlannedCrown {
  const tooth = plannedTooth(anatomy);
  const { cls, numbers } = tooth;
  const { mesh } = plannedCrownInPlace(anatomy, FINE_TOOTH);
  const frame = crownFrame(anatomy, form);
  const cejCurve = { mesial: numbers.cejCurveMesial, distal: numbers.cejCurveDistal };
  const edge = incisalEdge(cls, numbers);
  const height = numbers.crownLength - form.wear;
  const cut = form.wear > 0 ? wornForm(mesh, height) : null;
  const facets = cut
    ? crownOf(cut.mesh, frame, wornEdge(edge, height, isPremolar(tooth) ? null : cut.rims), cejCurve, true)
    : crownOf(mesh, frame, edge, cejCurve);
  if (!isPremolar(tooth)) return facets;
  const { onto } = premolarSolid(cls as 'premolar1' | 'premolar2', numbers);
  return {
    ...facets,
    onto: (p, direction) => (cut && p[2] > height - FACETS ? 0 : onto(p, direction)),
  };
}

/** Forms of a crown that a site keeps: a hand that turns it goes back and forth. */
const FORMS = 6;
const crowns = new WeakMap<Anatomy, Kept<PlannedCrown>>();

/**
 * The planned crown of a site in a form, kept as long as its solids are: the mesh that is drawn is the one that is read. Its facets lie within 0.01 mm of the
 * form, a premolar's within 0.04 down on its wall and 0.1 in its grooves. Cost: a mesh where the crown's numbers are new, a cut where its wear is, else nothing.
 */
export function plannedCrownOf(anatomy: Anatomy, form: CrownForm = UNCHANGED): PlannedCrown {
  const kept = crowns.get(anatomy) ?? new Kept<PlannedCrown>(FORMS);
  crowns.set(anatomy, kept);
  const { wear, tilt } = form;
  return kept.get(`${wear} ${tilt.faciopalatal} ${tilt.mesiodistal}`, () => made(anatomy, form));
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
