import type { BufferGeometry } from 'three';
import type { Anatomy } from '../core/anatomy/anatomy.ts';
import { gumMesh } from '../core/anatomy/gumMesh.ts';
import { type RidgeMesh, ridgeMesh } from '../core/anatomy/ridgeMesh.ts';
import { sectionSolids, shownRange, shownTeeth } from '../core/anatomy/section.ts';
import type { PlacedTooth } from '../core/anatomy/teeth.ts';
import { placedToothMeshes, plannedCrownMesh, plannedTooth } from '../core/anatomy/toothMeshes.ts';
import { carried } from '../core/geometry/carry.ts';
import type { TriangleMesh } from '../core/geometry/mesh.ts';
import { dot, type Vec3 } from '../core/geometry/vec.ts';
import { geometryOf, paint } from './geometry.ts';
import { gumGeometry } from './gumLook.ts';
import { siteInJaw } from './jawFrame.ts';

export interface ToothSolids {
  readonly tooth: PlacedTooth;
  /** The two beside the gap, not those further on. */
  readonly beside: boolean;
  readonly crown: BufferGeometry;
  readonly root: BufferGeometry;
  /** The root in the jaw frame, for its outline. */
  readonly rootMesh: TriangleMesh;
}

/** Everything solid of a site but the implant, in the jaw frame, mm. */
export interface SiteSolids {
  readonly anatomy: Anatomy;
  readonly bone: BufferGeometry;
  /** The same with fewer triangles, for its ink edge and for the part that is taken away. */
  readonly boneLight: BufferGeometry;
  /** A lighter mesh of the bone in the jaw frame, for the outline of the part that is taken away. */
  readonly boneMesh: RidgeMesh;
  readonly gum: BufferGeometry;
  readonly teeth: readonly ToothSolids[];
  readonly crown: BufferGeometry;
  readonly canal: BufferGeometry;
  readonly triangles: number;
}

/** Porcelain from the neck over the body to the edge; sRGB turned linear. */
const NECK = [0.875, 0.806, 0.694] as const;
const BODY = [0.93, 0.921, 0.896] as const;
const EDGE = [0.79, 0.823, 0.839] as const;

function porcelain(height: number, out: Float32Array, at: number): void {
  const low = Math.min(1, Math.max(0, height / 0.4));
  const high = Math.min(1, Math.max(0, (height - 0.7) / 0.3));
  for (let k = 0; k < 3; k++) {
    const body = NECK[k] + (BODY[k] - NECK[k]) * low * (2 - low);
    out[at + k] = body + (EDGE[k] - body) * high * high;
  }
}

function crownGeometry(mesh: TriangleMesh, tooth: PlacedTooth, anatomy: Anatomy): BufferGeometry {
  const { positions: p } = mesh;
  const off = dot(tooth.origin, tooth.a);
  const heights = new Float64Array(p.length / 3);
  for (let i = 0; i < heights.length; i++) {
    const point: Vec3 = [p[3 * i], p[3 * i + 1], p[3 * i + 2]];
    heights[i] = (dot(point, tooth.a) - off) / tooth.numbers.crownLength;
  }
  const geometry = geometryOf(carried(mesh, siteInJaw(anatomy)));
  paint(geometry, heights, porcelain);
  return geometry;
}

/** A root of a further tooth drawn into the bone where it would come through its side: nothing is measured to it. */
function tucked(mesh: TriangleMesh, { ridge }: Anatomy): TriangleMesh {
  const positions = mesh.positions.slice();
  for (let i = 0; i < positions.length; i += 3) {
    ridge.locate(positions[i], positions[i + 1], positions[i + 2]);
    const { q, u, d } = ridge;
    if (d < 0.4) continue;
    const room = Math.max(0, ridge.half(u > 0 ? 1 : -1, q, d) * ridge.cap(d) - 0.15);
    if (Math.abs(u) > room) positions.set(ridge.sectionPoint(q, Math.sign(u) * room, d), i);
  }
  return { ...mesh, positions };
}

/** Builds the solids of a site; about 100 ms. Dispose of them with {@link disposeSolids}. */
export function siteSolids(anatomy: Anatomy, light: boolean): SiteSolids {
  const frame = siteInJaw(anatomy);
  const cut = sectionSolids(anatomy);
  const range = shownRange(anatomy);
  const sparse = ridgeMesh(anatomy, { ...range, density: 0.5 });
  const solid = ({ mesh, walls }: RidgeMesh) => geometryOf(carried(mesh, frame), walls);
  const fine = light ? { columns: 44, rings: 26, rootRings: 14 } : { columns: 80, rings: 48, rootRings: 28 };
  const { mesial, distal } = anatomy.teeth;
  const teeth = shownTeeth(anatomy).map((tooth): ToothSolids => {
    const made = placedToothMeshes(tooth, fine);
    const beside = tooth === mesial || tooth === distal;
    const rootMesh = carried(made.root, frame);
    return {
      tooth,
      beside,
      crown: crownGeometry(made.crown, tooth, anatomy),
      root: geometryOf(beside ? rootMesh : carried(tucked(made.root, anatomy), frame)),
      rootMesh,
    };
  });
  const planned = plannedTooth(anatomy);
  const made = {
    anatomy,
    bone: solid(light ? ridgeMesh(anatomy, { ...range, density: 0.7 }) : cut.bone),
    boneLight: solid(sparse),
    boneMesh: { mesh: carried(sparse.mesh, frame), walls: sparse.walls },
    gum: gumGeometry(light ? gumMesh(anatomy, { ...range, density: 0.8 }) : cut.gum, frame),
    teeth,
    canal: geometryOf(carried(cut.canal, frame)),
    crown: crownGeometry(plannedCrownMesh(anatomy, fine), planned, anatomy),
  };
  const count = [made.bone, made.gum, made.crown, ...teeth.flatMap((t) => [t.crown, t.root])];
  return { ...made, triangles: count.reduce((sum, g) => sum + (g.getIndex()?.count ?? 0) / 3, 0) };
}

export function disposeSolids(solids: SiteSolids): void {
  for (const g of [solids.bone, solids.boneLight, solids.gum, solids.crown, solids.canal]) g.dispose();
  for (const { crown, root } of solids.teeth) {
    crown.dispose();
    root.dispose();
  }
}
