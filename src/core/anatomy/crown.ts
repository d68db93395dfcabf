import { withSmoothNormals } from '../geometry/crease.ts';
import { MeshBuilder } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import type { Vec3 } from '../geometry/vec.ts';
import { FRONT_FORMS, LOWER_INCISOR } from './crownForm.ts';
import { type CrownWall, frontWall } from './crownFront.ts';
import { premolarWall } from './crownPremolar.ts';
import type { ToothClass } from './landmarks.ts';
import { type RootOptions, rootMesh } from './root-mesh.ts';
import type { ToothNumbers } from './site.ts';

export interface CrownOptions {
  /** Columns round the crown, even; default 80. */
  readonly columns?: number;
  /** Rings from the CEJ to the edge or the central groove; default 48. */
  readonly rings?: number;
}

/** Ring heights: closer together toward the edge, where the surface turns fastest. */
const frontShare = (i: number, rings: number): number => 1 - (1 - i / rings) ** 1.7;
const evenShare = (i: number, rings: number): number => i / rings;

/** Close a wall whose last ring has shrunk to a line from mesial to distal, and close its foot at the CEJ. */
function closeWall(
  wall: CrownWall,
  share: (i: number, rings: number) => number,
  options: CrownOptions,
): TriangleMesh {
  const columns = 2 * Math.max(4, Math.round((options.columns ?? 80) / 2));
  const count = Math.max(6, options.rings ?? 48);
  const builder = new MeshBuilder();
  const angle = (j: number): number => (2 * Math.PI * j) / columns;
  const rings: number[][] = [];
  for (let i = 0; i < count; i++) rings.push(builder.ring(columns, (j) => wall(share(i, count), angle(j))));
  const line = Array.from({ length: columns / 2 + 1 }, (_, j) => builder.vertex(wall(1, angle(j))));
  rings.push(Array.from({ length: columns }, (_, j) => line[j <= columns / 2 ? j : columns - j]));
  builder.bands(rings);
  const walls = builder.triangleCount;
  const foot = [wall(0, 0), wall(0, Math.PI / 2), wall(0, Math.PI), wall(0, -Math.PI / 2)];
  builder.capBelow(rings[0], [0, 0, foot.reduce((sum, p: Vec3) => sum + p[2], 0) / 4]);
  return withSmoothNormals(builder.build(), walls);
}

/**
 * Crown of an upper tooth in tooth coordinates (rule S7: `x` mesial, `y` facial, `z` incisal, `z = 0` the most apical point of
 * the facial CEJ; mm). Closed, outward, with smooth normals; its widths, depth and length are the numbers', and it passes through
 * the class's landmarks (rule S10). The foot is closed across the CEJ. The other side's tooth is its mirror image in `x`.
 */
export function crownMesh(cls: ToothClass, numbers: ToothNumbers, options: CrownOptions = {}): TriangleMesh {
  if (cls === 'premolar1' || cls === 'premolar2')
    return closeWall(premolarWall(cls, numbers), evenShare, options);
  return closeWall(frontWall(FRONT_FORMS[cls], numbers), frontShare, options);
}

/** Crown of a lower incisor in the same coordinates (`z` toward its edge); it serves as the opponent only. */
export const lowerCrownMesh = (numbers: ToothNumbers, options: CrownOptions = {}): TriangleMesh =>
  closeWall(frontWall(LOWER_INCISOR, numbers), frontShare, options);

/** Crown and root of one tooth: two closed meshes that share the CEJ ring, in tooth coordinates. */
export interface ToothMeshes {
  readonly crown: TriangleMesh;
  readonly root: TriangleMesh;
}

export const toothMesh = (
  cls: ToothClass,
  numbers: ToothNumbers,
  options: CrownOptions & RootOptions = {},
): ToothMeshes => ({ crown: crownMesh(cls, numbers, options), root: rootMesh(numbers, options) });
