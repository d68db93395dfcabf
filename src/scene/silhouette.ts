import type { RidgeMesh } from '../core/anatomy/ridgeMesh.ts';
import { broughtInto, broughtOut, type Placed } from '../core/geometry/carry.ts';
import { isolines } from '../core/geometry/isolines.ts';
import type { TriangleMesh } from '../core/geometry/mesh.ts';
import type { Vec3 } from '../core/geometry/vec.ts';

/** A line over a surface, jaw frame. */
export interface Outline {
  readonly points: readonly Vec3[];
  readonly closed: boolean;
}

/**
 * Where a surface turns away from the eye: the zero set of normal · view across its triangles, chained. Only the first `walls`
 * triangles are looked at, whose vertex normals are the surface's.
 */
export function silhouette(
  { positions: p, triangles, normals: n }: TriangleMesh,
  eye: Vec3,
  walls = triangles.length / 3,
): Outline[] {
  if (!n) return [];
  const values = new Float64Array(p.length / 3);
  for (let i = 0; i < values.length; i++) {
    const k = 3 * i;
    values[i] = n[k] * (eye[0] - p[k]) + n[k + 1] * (eye[1] - p[k + 1]) + n[k + 2] * (eye[2] - p[k + 2]);
  }
  return isolines(triangles.subarray(0, 3 * walls), values).map(({ places, closed }) => ({
    points: places.map(({ a, b, w }): Vec3 => {
      const at = (k: number) => p[3 * a + k] + w * (p[3 * b + k] - p[3 * a + k]);
      return [at(0), at(1), at(2)];
    }),
    closed,
  }));
}

/** As {@link silhouette}, of a mesh that stands in a frame; eye and lines in the frame that it is written in. */
export const standingSilhouette = (mesh: TriangleMesh, frame: Placed, eye: Vec3, walls?: number): Outline[] =>
  standing(silhouette(mesh, broughtInto(frame, eye), walls), frame);

/** Lines brought out of a frame. */
export const standing = (outlines: readonly Outline[], frame: Placed): Outline[] =>
  outlines.map(({ points, closed }) => ({ points: points.map((p) => broughtOut(frame, p)), closed }));

/** Edges by the triangles they bound: one topology serves many ridges. */
const rims = new WeakMap<Uint32Array, readonly (readonly number[])[]>();

/** The edges at which the sheet of a ridge ends: at the floor and at both ends. */
export function rimOf({ mesh, walls }: RidgeMesh): Outline[] {
  const { positions: p, triangles } = mesh;
  const loops = rims.get(triangles) ?? boundary(triangles, walls, p.length / 3);
  rims.set(triangles, loops);
  return loops.map((loop) => ({
    points: loop.map((v): Vec3 => [p[3 * v], p[3 * v + 1], p[3 * v + 2]]),
    closed: true,
  }));
}

/** Loops of vertices along which only one of the first `walls` triangles lies. */
function boundary(t: Uint32Array, walls: number, count: number): number[][] {
  const next = new Map<number, number>();
  const edges = new Set<number>();
  for (let i = 0; i < 3 * walls; i++) edges.add(t[i] * count + t[i % 3 === 2 ? i - 2 : i + 1]);
  for (const edge of edges) {
    const a = Math.floor(edge / count);
    const b = edge % count;
    if (!edges.has(b * count + a)) next.set(a, b);
  }
  const loops: number[][] = [];
  for (const start of [...next.keys()]) {
    const loop: number[] = [];
    for (let v: number | undefined = start; v !== undefined && next.has(v); ) {
      loop.push(v);
      const follower: number | undefined = next.get(v);
      next.delete(v);
      v = follower;
    }
    if (loop.length > 2) loops.push(loop);
  }
  return loops;
}

/** The parts of outlines for which `keep` holds. */
export function clipped(outlines: readonly Outline[], keep: (p: Vec3) => boolean): Outline[] {
  const out: Outline[] = [];
  for (const { points, closed } of outlines) {
    const inside = points.map(keep);
    if (inside.every(Boolean)) {
      out.push({ points, closed });
      continue;
    }
    const first = closed ? inside.indexOf(false) : 0;
    let run: Vec3[] = [];
    for (let i = 0; i <= points.length; i++) {
      const k = (first + i) % points.length;
      if (i < points.length && inside[k]) run.push(points[k]);
      else if (run.length > 0) {
        if (run.length > 1) out.push({ points: run, closed: false });
        run = [];
      }
    }
  }
  return out;
}
