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

/**
 * Where a plane cuts a closed mesh: loops in the plane's coordinates, each of them round its solid one way, holes the other way.
 * A vertex on the plane counts as before it, so that every loop closes. Cost: one pass over vertices and triangles.
 */
export function sliceMesh({ positions: p, triangles: t }: TriangleMesh, plane: Plane): Loop[] {
  const { origin, x, y } = plane;
  const n = cross(x, y);
  const off = dot(n, origin);
  const count = p.length / 3;
  const height = new Float64Array(count);
  for (let i = 0; i < count; i++)
    height[i] = n[0] * p[3 * i] + n[1] * p[3 * i + 1] + n[2] * p[3 * i + 2] - off;
  const next = new Map<number, number>();
  const key = (a: number, b: number): number => (a < b ? a * count + b : b * count + a);
  for (let i = 0; i < t.length; i += 3) {
    const up0 = height[t[i]] > 0;
    const up1 = height[t[i + 1]] > 0;
    const up2 = height[t[i + 2]] > 0;
    if (up0 === up1 && up1 === up2) continue;
    // The corner that stands alone on its side; the segment runs from one of its edges to the other.
    const k = up0 !== up1 && up0 !== up2 ? 0 : up1 !== up0 && up1 !== up2 ? 1 : 2;
    const a = t[i + k];
    const after = key(a, t[i + ((k + 1) % 3)]);
    const before = key(a, t[i + ((k + 2) % 3)]);
    if (height[a] > 0) next.set(after, before);
    else next.set(before, after);
  }
  const point = (edge: number): readonly [number, number] => {
    const a = Math.floor(edge / count);
    const b = edge % count;
    const w = height[a] / (height[a] - height[b]);
    const q: number[] = [0, 1, 2].map((j) => p[3 * a + j] + w * (p[3 * b + j] - p[3 * a + j]) - origin[j]);
    return [q[0] * x[0] + q[1] * x[1] + q[2] * x[2], q[0] * y[0] + q[1] * y[1] + q[2] * y[2]];
  };
  const loops: Loop[] = [];
  for (const start of next.keys()) {
    const loop: (readonly [number, number])[] = [];
    for (let edge: number | undefined = start; edge !== undefined; ) {
      const follower: number | undefined = next.get(edge);
      next.delete(edge);
      if (follower === undefined) break;
      loop.push(point(edge));
      edge = follower;
    }
    if (loop.length > 2) loops.push(loop);
  }
  return loops;
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
