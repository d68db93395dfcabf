import { BufferAttribute, BufferGeometry, Matrix4, type Vector3 } from 'three';
import { type ExtendedTriangle, MeshBVH } from 'three-mesh-bvh';
import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';

/** Touching is not crossing: ends of an edge nearer to a triangle's plane than this, and places nearer to its rim, do not count; mm, share. */
const NEAR = 1e-6;
const RIM = 1e-6;

/** Whether the segment from `p` to `q` passes through the inside of triangle `a b c` from one side of its plane to the other. */
function pierces(p: Vector3, q: Vector3, a: Vector3, b: Vector3, c: Vector3): boolean {
  const [ux, uy, uz] = [b.x - a.x, b.y - a.y, b.z - a.z];
  const [vx, vy, vz] = [c.x - a.x, c.y - a.y, c.z - a.z];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const area = Math.sqrt(nx * nx + ny * ny + nz * nz);
  if (area < 1e-9) return false;
  const sp = (nx * (p.x - a.x) + ny * (p.y - a.y) + nz * (p.z - a.z)) / area;
  const sq = (nx * (q.x - a.x) + ny * (q.y - a.y) + nz * (q.z - a.z)) / area;
  if (sp * sq >= 0 || Math.min(Math.abs(sp), Math.abs(sq)) < NEAR) return false;
  const w = sp / (sp - sq);
  const [x, y, z] = [p.x + w * (q.x - p.x) - a.x, p.y + w * (q.y - p.y) - a.y, p.z + w * (q.z - p.z) - a.z];
  const share = (ex: number, ey: number, ez: number, fx: number, fy: number, fz: number): number =>
    (nx * (ey * fz - ez * fy) + ny * (ez * fx - ex * fz) + nz * (ex * fy - ey * fx)) / (area * area);
  const s = share(x, y, z, vx, vy, vz);
  const t = share(ux, uy, uz, x, y, z);
  return s > RIM && t > RIM && s + t < 1 - RIM;
}

const crossing = (s: ExtendedTriangle, t: ExtendedTriangle): boolean =>
  pierces(s.a, s.b, t.a, t.b, t.c) ||
  pierces(s.b, s.c, t.a, t.b, t.c) ||
  pierces(s.c, s.a, t.a, t.b, t.c) ||
  pierces(t.a, t.b, s.a, s.b, s.c) ||
  pierces(t.b, t.c, s.a, s.b, s.c) ||
  pierces(t.c, t.a, s.a, s.b, s.c);

/** Where triangles of a mesh that share no corner go through each other; their pairs are found by three-mesh-bvh. */
export function selfCrossings(mesh: TriangleMesh): (readonly [number, number, number])[] {
  const geometry = new BufferGeometry();
  const t = Uint32Array.from(mesh.triangles);
  geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3));
  geometry.setIndex(new BufferAttribute(t, 1));
  const bvh = new MeshBVH(geometry);
  const share = (a: number, b: number): boolean => {
    for (let i = 3 * a; i < 3 * a + 3; i++)
      if (t[i] === t[3 * b] || t[i] === t[3 * b + 1] || t[i] === t[3 * b + 2]) return true;
    return false;
  };
  const found: (readonly [number, number, number])[] = [];
  bvh.bvhcast(bvh, new Matrix4(), {
    intersectsTriangles: (one: ExtendedTriangle, two: ExtendedTriangle, i: number, j: number) => {
      if (i < j && !share(i, j) && crossing(one, two)) found.push([one.a.x, one.a.y, one.a.z]);
      return false;
    },
  });
  return found;
}
