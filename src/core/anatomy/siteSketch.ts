import { convexHull } from '../geometry/convexHull.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import type { Loop, Plane } from '../geometry/slice.ts';
import { dot, sub, type Vec3 } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { archDirections, fromArch } from './arch.ts';
import { planeIn, sectionOutline, sectionSolids, shownRange } from './section.ts';
import type { SketchView } from './siteMeasures.ts';

/** A small drawing of a site from one side, in the plane's coordinates, mm. */
export interface SiteSketch {
  readonly plane: Plane;
  readonly bone: readonly Loop[];
  readonly marrow: readonly Loop[];
  readonly gum: readonly Loop[];
  readonly roots: readonly Loop[];
  readonly crowns: readonly Loop[];
  readonly planned: readonly Loop[];
}

const NOTHING = { marrow: [], gum: [], planned: [] } as const;
/** Points along the crest in the views from the front and from the chewing side. */
const STEPS = 60;

/** Coordinates in a plane of a point of the site frame, mm. */
export function inPlane({ origin, x, y }: Plane, p: Vec3): readonly [number, number] {
  const v = sub(p, origin);
  return [dot(v, x), dot(v, y)];
}

/** Outline of a nearly convex solid as it is seen across a plane. */
function seen(mesh: TriangleMesh, plane: Plane): Loop {
  const { positions: p } = mesh;
  const points = Array.from({ length: p.length / 3 }, (_, i) =>
    inPlane(plane, [p[3 * i], p[3 * i + 1], p[3 * i + 2]]),
  );
  return convexHull(points);
}

function acrossAt(anatomy: Anatomy, q: number): SiteSketch {
  const plane: Plane = {
    origin: fromArch(anatomy.arch, q, 0, 0),
    x: archDirections(anatomy.arch, q).normal,
    y: [0, 0, 1],
  };
  const { bone, marrow, gum, teeth, crown } = sectionOutline(anatomy, plane);
  return {
    plane,
    bone,
    marrow,
    gum,
    roots: teeth.flatMap((t) => t.root),
    crowns: teeth.flatMap((t) => t.crown),
    planned: q === 0 ? crown : [],
  };
}

/** Along the crest, with the floor below it. */
function fromTheFront(anatomy: Anatomy): SiteSketch {
  const plane: Plane = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 0, 1] };
  const { from, to } = shownRange(anatomy);
  const crest = Array.from({ length: STEPS + 1 }, (_, i) => {
    const q = from + ((to - from) * i) / STEPS;
    return inPlane(plane, fromArch(anatomy.arch, q, 0, anatomy.ridge.crest(q)));
  });
  const { floor } = anatomy.ridge;
  const [first, last] = [crest[0], crest[STEPS]];
  const { teeth, crown } = sectionSolids(anatomy);
  return {
    ...NOTHING,
    plane,
    bone: [[...crest, [last[0], floor], [first[0], floor]]],
    roots: teeth.map((t) => seen(t.root, planeIn(t.frame, plane))),
    crowns: teeth.map((t) => seen(t.crown, planeIn(t.frame, plane))),
    planned: [seen(crown.mesh, planeIn(crown.frame, plane))],
  };
}

/** The arch with its crowns; the crest's middle line stands for the bone. */
function fromBelow(anatomy: Anatomy): SiteSketch {
  const plane: Plane = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0] };
  const { teeth, crown } = sectionSolids(anatomy);
  const { arch } = anatomy;
  const half = 0.62 * anatomy.site.arch.width;
  const crest = Array.from({ length: STEPS + 1 }, (_, i) =>
    inPlane(plane, fromArch(arch, anatomy.teeth.midline - half + (2 * half * i) / STEPS, 0, 0)),
  );
  return {
    ...NOTHING,
    plane,
    bone: [[...crest, ...[...crest].reverse()]],
    roots: [],
    crowns: teeth.map((t) => seen(t.crown, planeIn(t.frame, plane))),
    planned: [seen(crown.mesh, planeIn(crown.frame, plane))],
  };
}

/** The outlines of a site in one view. Cost after the first drawing of a site: about a millisecond. */
export function siteSketch(anatomy: Anatomy, view: SketchView): SiteSketch {
  if (view === 'front') return fromTheFront(anatomy);
  if (view === 'arch') return fromBelow(anatomy);
  return acrossAt(anatomy, view === 'section' ? 0 : anatomy.teeth[view].station);
}
