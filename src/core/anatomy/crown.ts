import { withSmoothNormals } from '../geometry/crease.ts';
import { MeshBuilder } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { along, norm, sub, type Vec3 } from '../geometry/vec.ts';
import { FRONT_FORMS, LOWER_INCISOR } from './crownForm.ts';
import { type CrownWall, frontWall } from './crownFront.ts';
import { type PremolarSolid, premolarSolid } from './crownPremolar.ts';
import { landmarksOf, type ToothClass } from './landmarks.ts';
import { type RootOptions, rootMesh } from './root-mesh.ts';
import type { ToothNumbers } from './site.ts';

export interface CrownOptions {
  /** Columns round the crown, even; default 80. */
  readonly columns?: number;
  /** Rings from the CEJ to the edge or the central groove; default 48. */
  readonly rings?: number;
}

const columnsOf = (options: CrownOptions): number => 2 * Math.max(4, Math.round((options.columns ?? 80) / 2));
const ringsOf = (options: CrownOptions): number => Math.max(8, options.rings ?? 48);

/** Close the foot across the CEJ ring and shade the walls only. */
function finish(builder: MeshBuilder, foot: readonly number[], n: ToothNumbers): TriangleMesh {
  const walls = builder.triangleCount;
  builder.capBelow(foot, [0, 0, (n.cejCurveMesial + n.cejCurveDistal) / 4]);
  return withSmoothNormals(builder.build(), walls);
}

/** Rings closer together toward the edge, where the surface turns fastest; the last has shrunk to the line of the edge. */
function frontMesh(wall: CrownWall, n: ToothNumbers, options: CrownOptions): TriangleMesh {
  const columns = columnsOf(options);
  const count = ringsOf(options);
  const builder = new MeshBuilder();
  const angle = (j: number): number => (2 * Math.PI * j) / columns;
  const rings: number[][] = [];
  for (let i = 0; i < count; i++) {
    const v = 1 - (1 - i / count) ** 1.7;
    rings.push(builder.ring(columns, (j) => wall(v, angle(j))));
  }
  const line = Array.from({ length: columns / 2 + 1 }, (_, j) => builder.vertex(wall(1, angle(j))));
  rings.push(Array.from({ length: columns }, (_, j) => line[j <= columns / 2 ? j : columns - j]));
  builder.bands(rings);
  return finish(builder, rings[0], n);
}

/** Direction from inside a premolar at an angle from mesial and an elevation, both in radians. */
const ray = (angle: number, rise: number): Vec3 => [
  Math.cos(rise) * Math.cos(angle),
  Math.cos(rise) * Math.sin(angle),
  Math.sin(rise),
];

/** Elevation of the most coronal point that the rays of one column meet: the cusp's or the marginal ridge. */
function ridgeRise(solid: PremolarSolid, angle: number, start: number): number {
  let best = start;
  let highest = Number.NEGATIVE_INFINITY;
  let distance: number | undefined;
  for (let i = 1; i < 16; i++) {
    const rise = start + ((Math.PI / 2 - start) * i) / 16;
    const d = ray(angle, rise);
    distance = solid.meet(d, distance);
    if (distance * d[2] > highest) [highest, best] = [distance * d[2], rise];
  }
  return best;
}

/** Ridge elevations of all columns: found at every second, straight between, then smoothed round the crown. */
function ridgeRises(solid: PremolarSolid, angles: readonly number[], starts: readonly number[]): number[] {
  const n = angles.length;
  const step = 2;
  const found = angles.map((angle, j) => (j % step === 0 ? ridgeRise(solid, angle, starts[j]) : 0));
  let list = angles.map((_, j) => {
    const low = j - (j % step);
    const high = (low + step) % n < step ? 0 : low + step;
    const share = (j % step) / step;
    return (1 - share) * found[low] + share * found[high];
  });
  for (let i = 0; i < 2; i++)
    list = list.map((v, j) => (list[(j + n - 1) % n] + 2 * v + list[(j + 1) % n]) / 4);
  return list;
}

/**
 * The wall in level rings; above it rays from inside, up to the ridges and from there to the groove, closest together at the
 * ridges, so that one ring of the mesh runs along them.
 */
function premolarMesh(cls: 'premolar1' | 'premolar2', n: ToothNumbers, options: CrownOptions): TriangleMesh {
  const columns = columnsOf(options);
  const count = ringsOf(options);
  const walls = Math.round(0.33 * count);
  const outer = Math.round(0.27 * count);
  const inner = count - walls - outer;
  const solid = premolarSolid(cls, n);
  const builder = new MeshBuilder();
  const all = Array.from({ length: columns }, (_, j) => (2 * Math.PI * j) / columns);
  const rings: number[][] = [];
  for (let i = 0; i <= walls; i++) rings.push(builder.ring(columns, (j) => solid.wall(i / walls, all[j])));
  const tops = all.map((angle) => sub(solid.wall(1, angle), solid.inside));
  const angles = tops.map((d) => Math.atan2(d[1], d[0]));
  const starts = tops.map((d) => Math.atan2(d[2], Math.hypot(d[0], d[1])));
  const ridges = ridgeRises(solid, angles, starts);
  const reached = tops.map(norm);
  const add = (riseAt: (j: number) => number): void => {
    rings.push(
      builder.ring(columns, (j) => {
        const d = ray(angles[j], riseAt(j));
        reached[j] = solid.meet(d, reached[j]);
        return along(solid.inside, d, reached[j]);
      }),
    );
  };
  for (let i = 1; i <= outer; i++) {
    const share = 1 - (1 - i / outer) ** 1.5;
    add((j) => starts[j] + (ridges[j] - starts[j]) * share);
  }
  for (let i = 1; i < inner; i++) {
    const share = (i / inner) ** 1.3;
    add((j) => ridges[j] + (Math.PI / 2 - ridges[j]) * share);
  }
  builder.bands(rings);
  builder.capAbove(rings[rings.length - 1], along(solid.inside, [0, 0, 1], solid.meet([0, 0, 1])));
  return finish(builder, rings[0], n);
}

/**
 * Crown of an upper tooth in tooth coordinates (rule S7: `x` mesial, `y` facial, `z` incisal, `z = 0` the most apical point of
 * the facial CEJ; mm). Closed, outward, with smooth normals; its widths, depth and length are the numbers', and it passes through
 * the class's landmarks (rule S10). The foot is closed across the CEJ. The other side's tooth is its mirror image in `x`.
 */
export function crownMesh(cls: ToothClass, numbers: ToothNumbers, options: CrownOptions = {}): TriangleMesh {
  if (cls === 'premolar1' || cls === 'premolar2') return premolarMesh(cls, numbers, options);
  return frontMesh(frontWall(FRONT_FORMS[cls], numbers), numbers, options);
}

/** Crown of a lower incisor in the same coordinates (`z` toward its edge); it serves as the opponent only. */
export const lowerCrownMesh = (numbers: ToothNumbers, options: CrownOptions = {}): TriangleMesh =>
  frontMesh(frontWall(LOWER_INCISOR, numbers), numbers, options);

/**
 * The line that a crown is told facial from palatal by, in tooth coordinates, from distal to mesial: the incisal edge; of a premolar, the crest of
 * its facial cusp within 0.3 of the crown's width to either side of the tip. mm.
 */
export function incisalEdge(cls: ToothClass, n: ToothNumbers, points = 17): Vec3[] {
  const share = (i: number): number => i / (points - 1);
  if (cls === 'premolar1' || cls === 'premolar2') {
    const { tip } = landmarksOf(cls, n);
    const { height } = premolarSolid(cls, n);
    return Array.from({ length: points }, (_, i): Vec3 => {
      const x = tip[0] + 0.6 * n.crownWidth * (share(i) - 0.5);
      return [x, tip[1], height(x, tip[1])];
    });
  }
  const wall = frontWall(FRONT_FORMS[cls], n);
  return Array.from({ length: points }, (_, i) => wall(1, Math.PI * (1 - share(i))));
}

/** Points all over an incisor's palatal wall above its cingulum, in tooth coordinates: what an opposing edge slides along. mm. */
export function palatalPoints(cls: 'central' | 'lateral', n: ToothNumbers, columns = 13, rows = 24): Vec3[] {
  const wall = frontWall(FRONT_FORMS[cls], n);
  return Array.from({ length: columns * rows }, (_, k) => {
    const v = 0.25 + (0.75 * Math.floor(k / columns)) / (rows - 1);
    return wall(v, -Math.PI * ((1 + (k % columns)) / (columns + 1)));
  });
}

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
