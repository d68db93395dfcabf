import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';

export type Point = readonly [number, number, number];

export const vertices = ({ positions: p }: TriangleMesh): Point[] =>
  Array.from({ length: p.length / 3 }, (_, i): Point => [p[3 * i], p[3 * i + 1], p[3 * i + 2]]);

/** Smallest and greatest coordinate along one axis of the vertices that `keep` lets through. */
export function span(mesh: TriangleMesh, axis: 0 | 1 | 2, keep: (p: Point) => boolean = () => true) {
  const list = vertices(mesh)
    .filter(keep)
    .map((p) => p[axis]);
  return { low: Math.min(...list), high: Math.max(...list) };
}

/** Where lines along one axis through a point cross the mesh: coordinates in increasing order. */
export function crossings(
  { positions: p, triangles: t }: TriangleMesh,
  axis: 0 | 1 | 2,
  at: readonly [number, number],
) {
  const [u, v] = axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
  const found: number[] = [];
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [3 * t[i], 3 * t[i + 1], 3 * t[i + 2]];
    const d = (p[b + u] - p[a + u]) * (p[c + v] - p[a + v]) - (p[c + u] - p[a + u]) * (p[b + v] - p[a + v]);
    if (d === 0) continue;
    const [x, y] = [at[0] - p[a + u], at[1] - p[a + v]];
    const wb = (x * (p[c + v] - p[a + v]) - y * (p[c + u] - p[a + u])) / d;
    const wc = (y * (p[b + u] - p[a + u]) - x * (p[b + v] - p[a + v])) / d;
    if (wb < 0 || wc < 0 || wb + wc > 1) continue;
    found.push((1 - wb - wc) * p[a + axis] + wb * p[b + axis] + wc * p[c + axis]);
  }
  return found.sort((m, n) => m - n);
}
