import { carried } from '../geometry/carry.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { dot, type Vec3 } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { type CrownOptions, type ToothMeshes, toothMesh } from './crown.ts';
import type { RootOptions } from './root-mesh.ts';
import { type PlacedTooth, placeTooth } from './teeth.ts';

/** Crown and root of a placed tooth in the site frame, mm: closed, outward. Tooth coordinates are rule S7's. */
export function placedToothMeshes(tooth: PlacedTooth, options: CrownOptions & RootOptions = {}): ToothMeshes {
  const { ex, ey, a, root, origin } = tooth;
  const own = (v: Vec3): Vec3 => [dot(v, ex), dot(v, ey), dot(v, a)];
  const rootAxes = { ex: own(root.ex), ey: own(root.ey), a: own(root.a) };
  const made = toothMesh(tooth.cls, tooth.numbers, { ...options, rootAxes });
  const to = { origin, ex, ey, ez: a };
  return { crown: carried(made.crown, to), root: carried(made.root, to) };
}

/** The planned crown's tooth in its place in the gap: its axis through the crest point, its CEJ at the reference level. */
export function plannedTooth({ arch, site }: Anatomy): PlacedTooth {
  const numbers = {
    ...site.crown,
    rootTilt: { faciopalatal: 0, mesiodistal: 0 },
    boneLevel: 0,
    cejAboveBone: site.reference.cej,
    ridge: { widths: site.ridge.widths, inclination: site.ridge.inclination },
  };
  return placeTooth(arch, site.tooth, numbers, 0, 1);
}

/** Mesh of the planned crown in the site frame, mm. */
export const plannedCrownMesh = (anatomy: Anatomy, options: CrownOptions = {}): TriangleMesh =>
  placedToothMeshes(plannedTooth(anatomy), { ...options, columns: options.columns ?? 64 }).crown;
