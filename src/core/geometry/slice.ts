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
  const point = ({ a, b, w }: EdgePlace): readonly [number, number] => {
    const at = (j: number): number => p[3 * a + j] + w * (p[3 * b + j] - p[3 * a + j]) - origin[j];
    const q: Vec3 = [at(0), at(1), at(2)];
    return [dot(q, x), dot(q, y)];
  };
  return isolines(t, height).map(({ places }) => places.map(point));
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
