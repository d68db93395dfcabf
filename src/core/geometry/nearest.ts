/** The point of a triangle nearest to a place, its squared distance, and its shares of the three corners. */
export interface NearestPoint {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly squared: number;
  readonly share: readonly [number, number, number];
}

/** Shares of the corners a, b, c at the nearest point, from the dot products of the place with the two sides that leave `a` (Ericson 2004, section 5.1.5). */
function sharesOf(
  d1: number,
  d2: number,
  d3: number,
  d4: number,
  d5: number,
  d6: number,
): readonly [number, number, number] {
  if (d1 <= 0 && d2 <= 0) return [1, 0, 0];
  if (d3 >= 0 && d4 <= d3) return [0, 1, 0];
  const vc = d1 * d4 - d3 * d2;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) {
    const v = d1 / (d1 - d3);
    return [1 - v, v, 0];
  }
  if (d6 >= 0 && d5 <= d6) return [0, 0, 1];
  const vb = d5 * d2 - d1 * d6;
  if (vb <= 0 && d2 >= 0 && d6 <= 0) {
    const w = d2 / (d2 - d6);
    return [1 - w, 0, w];
  }
  const va = d3 * d6 - d5 * d4;
  if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
    const w = (d4 - d3) / (d4 - d3 + (d5 - d6));
    return [0, 1 - w, w];
  }
  const sum = va + vb + vc;
  return [va / sum, vb / sum, vc / sum];
}

/** Nearest point of the triangle with vertices `a`, `b`, `c` of a mesh's positions to `(x, y, z)`. */
export function nearestOnTriangle(
  p: Float64Array,
  a: number,
  b: number,
  c: number,
  x: number,
  y: number,
  z: number,
): NearestPoint {
  const [i, j, k] = [3 * a, 3 * b, 3 * c];
  const [ux, uy, uz] = [p[j] - p[i], p[j + 1] - p[i + 1], p[j + 2] - p[i + 2]];
  const [vx, vy, vz] = [p[k] - p[i], p[k + 1] - p[i + 1], p[k + 2] - p[i + 2]];
  const along = (ox: number, oy: number, oz: number): [number, number] => [
    ux * (x - ox) + uy * (y - oy) + uz * (z - oz),
    vx * (x - ox) + vy * (y - oy) + vz * (z - oz),
  ];
  const [d1, d2] = along(p[i], p[i + 1], p[i + 2]);
  const [d3, d4] = along(p[j], p[j + 1], p[j + 2]);
  const [d5, d6] = along(p[k], p[k + 1], p[k + 2]);
  const share = sharesOf(d1, d2, d3, d4, d5, d6);
  const at = (o: number): number => share[0] * p[i + o] + share[1] * p[j + o] + share[2] * p[k + o];
  const [nx, ny, nz] = [at(0), at(1), at(2)];
  return { x: nx, y: ny, z: nz, squared: (nx - x) ** 2 + (ny - y) ** 2 + (nz - z) ** 2, share };
}
