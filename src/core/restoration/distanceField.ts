import type { TriangleMesh } from '../geometry/mesh.ts';
import type { WallDistance } from './wallDistance.ts';

/** Spacing of the nodes, mm: between them the distance is off by at most a hundredth of a millimetre where the wall's radius is above 1 mm. */
const STEP = 0.25;
/** How far the nodes reach round the crown, and below its foot, mm. */
const ROUND = 1.5;
const BELOW = 5;

/**
 * Signed distances to a crown's wall by straight interpolation in all three directions between nodes that are asked once, when first needed: a volume asks ten
 * thousand times where a drag moves the abutment by a hair. In the crown's coordinates, mm. Outside the nodes: the wall itself.
 */
export class DistanceField {
  private readonly low: readonly [number, number, number];
  private readonly count: readonly [number, number, number];
  private readonly nodes: Float64Array;

  constructor(
    { positions: p }: TriangleMesh,
    private readonly wall: WallDistance,
  ) {
    const low = [Infinity, Infinity, Infinity];
    const high = [-Infinity, -Infinity, -Infinity];
    p.forEach((v, i) => {
      low[i % 3] = Math.min(low[i % 3], v);
      high[i % 3] = Math.max(high[i % 3], v);
    });
    this.low = [low[0] - ROUND, low[1] - ROUND, low[2] - BELOW];
    const size = (k: number): number => Math.ceil((high[k] + ROUND - this.low[k]) / STEP) + 1;
    this.count = [size(0), size(1), size(2)];
    this.nodes = new Float64Array(size(0) * size(1) * size(2)).fill(Number.NaN);
  }

  private node(at: number, i: number, j: number, k: number): number {
    const known = this.nodes[at];
    if (!Number.isNaN(known)) return known;
    const { low } = this;
    const made = this.wall.signed(low[0] + STEP * i, low[1] + STEP * j, low[2] + STEP * k);
    this.nodes[at] = made;
    return made;
  }

  at(x: number, y: number, z: number): number {
    const { low, count } = this;
    const a = (x - low[0]) / STEP;
    const b = (y - low[1]) / STEP;
    const c = (z - low[2]) / STEP;
    const i = Math.floor(a);
    const j = Math.floor(b);
    const k = Math.floor(c);
    if (i < 0 || j < 0 || k < 0 || i + 1 >= count[0] || j + 1 >= count[1] || k + 1 >= count[2])
      return this.wall.signed(x, y, z);
    const u = a - i;
    const v = b - j;
    const w = c - k;
    const row = count[0];
    const layer = row * count[1];
    const o = k * layer + j * row + i;
    const lower =
      (1 - v) * ((1 - u) * this.node(o, i, j, k) + u * this.node(o + 1, i + 1, j, k)) +
      v * ((1 - u) * this.node(o + row, i, j + 1, k) + u * this.node(o + row + 1, i + 1, j + 1, k));
    const p = o + layer;
    const upper =
      (1 - v) * ((1 - u) * this.node(p, i, j, k + 1) + u * this.node(p + 1, i + 1, j, k + 1)) +
      v * ((1 - u) * this.node(p + row, i, j + 1, k + 1) + u * this.node(p + row + 1, i + 1, j + 1, k + 1));
    return (1 - w) * lower + w * upper;
  }
}
