import { type EdgePlace, isolines } from './isolines.ts';
import type { TriangleMesh } from './mesh.ts';
import { cross, dot, type Vec3 } from './vec.ts';

/** A plane with coordinates of its own: `x` and `y` unit and perpendicular, all in the frame of what is cut. */
export interface Plane {
  readonly origin: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
}

/** A closed line of points in a plane's coordinates, mm; the last point joins the first. */
export type Loop = readonly (readonly [x: number, y: number])[];

/** Point of space at a plane's coordinates. */
export const onPlane = ({ origin: o, x, y }: Plane, u: number, v: number): Vec3 => [
  o[0] + u * x[0] + v * y[0],
  o[1] + u * x[1] + v * y[1],
  o[2] + u * x[2] + v * y[2],
];

/** Triangles in a row that are looked at together. */
const BLOCK = 24;

/** Boxes round the blocks of a mesh's triangles, kept as long as the mesh: six numbers a block, middle and half extent. */
const boxes = new WeakMap<TriangleMesh, Float64Array>();

function boxesOf(mesh: TriangleMesh): Float64Array {
  const known = boxes.get(mesh);
  if (known) return known;
  const { positions: p, triangles: t } = mesh;
  const made = new Float64Array(6 * Math.ceil(t.length / (3 * BLOCK)));
  for (let b = 0; b < made.length / 6; b++) {
    const end = Math.min(t.length, 3 * BLOCK * (b + 1));
    for (let axis = 0; axis < 3; axis++) {
      let lo = Infinity;
      let hi = -Infinity;
      for (let i = 3 * BLOCK * b; i < end; i++) {
        const v = p[3 * t[i] + axis];
        if (v < lo) lo = v;
        if (v > hi) hi = v;
      }
      made[6 * b + axis] = (lo + hi) / 2;
      made[6 * b + 3 + axis] = (hi - lo) / 2 + 1e-9;
    }
  }
  boxes.set(mesh, made);
  return made;
}

/** Heights of the vertices last looked at; only those of the blocks that a plane meets are filled in. */
let heights = new Float64Array(0);

/** The triangles of the blocks whose boxes the plane meets, with the heights of their corners over it left in {@link heights}. */
function near(mesh: TriangleMesh, n: Vec3, off: number): Uint32Array {
  const { positions: p, triangles: t } = mesh;
  const box = boxesOf(mesh);
  const met: number[] = [];
  if (heights.length < p.length / 3) heights = new Float64Array(p.length / 3);
  for (let b = 0; b < box.length / 6; b++) {
    const k = 6 * b;
    const middle = n[0] * box[k] + n[1] * box[k + 1] + n[2] * box[k + 2] - off;
    const reach = Math.abs(n[0]) * box[k + 3] + Math.abs(n[1]) * box[k + 4] + Math.abs(n[2]) * box[k + 5];
    if (Math.abs(middle) > reach) continue;
    const end = Math.min(t.length, 3 * BLOCK * (b + 1));
    for (let i = 3 * BLOCK * b; i < end; i++) {
      const v = t[i];
      heights[v] = n[0] * p[3 * v] + n[1] * p[3 * v + 1] + n[2] * p[3 * v + 2] - off;
      met.push(v);
    }
  }
  return Uint32Array.from(met);
}

/**
 * Where a plane cuts a closed mesh: loops in the plane's coordinates, each of them round its solid one way, holes the other way.
 * A vertex on the plane counts as before it, so that every loop closes. Cost: one pass over blocks of triangles and over those of the blocks it meets.
 */
export function sliceMesh(mesh: TriangleMesh, plane: Plane): Loop[] {
  const { positions: p } = mesh;
  const { origin, x, y } = plane;
  const n = cross(x, y);
  const triangles = near(mesh, n, dot(n, origin));
  if (triangles.length === 0) return [];
  const point = ({ a, b, w }: EdgePlace): readonly [number, number] => {
    const at = (j: number): number => p[3 * a + j] + w * (p[3 * b + j] - p[3 * a + j]) - origin[j];
    const q: Vec3 = [at(0), at(1), at(2)];
    return [dot(q, x), dot(q, y)];
  };
  return isolines(triangles, heights.subarray(0, p.length / 3)).map(({ places }) => places.map(point));
}

/** Area inside a loop, mm², positive where it runs anticlockwise. */
export function loopArea(loop: Loop): number {
  let twice = 0;
  for (let i = 0; i < loop.length; i++) {
    const [x0, y0] = loop[i];
    const [x1, y1] = loop[(i + 1) % loop.length];
    twice += x0 * y1 - x1 * y0;
  }
  return twice / 2;
}
