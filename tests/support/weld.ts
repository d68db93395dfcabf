import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';

/** Loose corners as one body: those at one point are one. */
export function welded(points: ArrayLike<number>, corners: ArrayLike<number>): TriangleMesh {
  const known = new Map<string, number>();
  const positions: number[] = [];
  const triangles = Uint32Array.from(corners, (v) => {
    const point = [points[3 * v], points[3 * v + 1], points[3 * v + 2]].map((x) => x + 0);
    const key = point.join();
    const found = known.get(key) ?? known.size;
    if (found === known.size) {
      known.set(key, found);
      positions.push(...point);
    }
    return found;
  });
  return { positions: Float64Array.from(positions), triangles };
}
