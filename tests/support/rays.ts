/** Rays and nearest points on meshes by three-mesh-bvh, which shares no line with the core. Site frame, mm. */
import { BufferAttribute, BufferGeometry, DoubleSide, Ray, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';
import type { Vec3 } from '../../src/core/geometry/vec.ts';

export class Traced {
  private readonly tree: MeshBVH;

  constructor({ positions, triangles }: TriangleMesh) {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(Float32Array.from(positions), 3));
    geometry.setIndex(new BufferAttribute(new Uint32Array(triangles), 1));
    this.tree = new MeshBVH(geometry);
  }

  /** Distances along `v` (unit) from `p` to the surface, nearest first. */
  hits(p: Vec3, v: Vec3): number[] {
    const found = this.tree.raycast(new Ray(new Vector3(...p), new Vector3(...v)), DoubleSide);
    return found.map((h) => h.distance).sort((a, b) => a - b);
  }

  /** Distance along `v` to the first crossing; Infinity where there is none. */
  reach(p: Vec3, v: Vec3): number {
    return this.hits(p, v)[0] ?? Infinity;
  }

  /** Distance to the last crossing: through everything, however often the surface folds. */
  far(p: Vec3, v: Vec3): number {
    return this.hits(p, v).at(-1) ?? Infinity;
  }

  holds(p: Vec3): boolean {
    return this.hits(p, [0.0123, 0.0077, -1]).length % 2 === 1;
  }

  distance(p: Vec3): number {
    return this.tree.closestPointToPoint(new Vector3(...p))?.distance ?? Infinity;
  }
}
