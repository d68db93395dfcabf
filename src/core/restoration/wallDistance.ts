import type { TriangleMesh } from '../geometry/mesh.ts';
import { nearestOnTriangle } from '../geometry/nearest.ts';
import type { Vec3 } from '../geometry/vec.ts';

/** Edge of the boxes in which the mesh's vertices are looked up, mm. */
const BOX = 0.75;

/**
 * Signed distance to a crown's wall, the foot left open: negative inside and, since no wall stands there, wherever the wall's own rim is nearest.
 * Found at the nearest vertex and its triangles, exact on the mesh. mm, in the mesh's frame.
 */
export class WallDistance {
  /** The wall's point nearest to the place last asked about. */
  foot: Vec3 = [0, 0, 0];
  /** Squared distance to the foot, and on which side of the wall the place lies. */
  private least = Infinity;
  private out = 0;
  /** 1 for the vertices of the foot's rim. */
  private readonly rim: Uint8Array;
  private readonly rings: readonly (readonly number[])[];
  private readonly boxes: readonly (readonly number[])[];
  private readonly low: Vec3;
  private readonly count: readonly [number, number, number];

  /** `apex`: the vertex of the fan that closes the foot. `walks`: also looks on from the nearest vertex's triangles, for meshes with long ones. */
  constructor(
    private readonly mesh: TriangleMesh,
    apex: number,
    private readonly walks = false,
  ) {
    const { positions: p, triangles: t } = mesh;
    const rings: number[][] = Array.from({ length: p.length / 3 }, () => []);
    this.rim = new Uint8Array(p.length / 3);
    for (let i = 0; i < t.length; i += 3) {
      const closes = t[i] === apex || t[i + 1] === apex || t[i + 2] === apex;
      for (let k = 0; k < 3; k++) {
        if (closes) this.rim[t[i + k]] = 1;
        else rings[t[i + k]].push(i);
      }
    }
    this.rings = rings;
    const low = [Infinity, Infinity, Infinity];
    const high = [-Infinity, -Infinity, -Infinity];
    p.forEach((v, i) => {
      low[i % 3] = Math.min(low[i % 3], v);
      high[i % 3] = Math.max(high[i % 3], v);
    });
    this.low = [low[0], low[1], low[2]];
    const size = (k: number): number => Math.floor((high[k] - low[k]) / BOX) + 1;
    this.count = [size(0), size(1), size(2)];
    const boxes: number[][] = Array.from({ length: size(0) * size(1) * size(2) }, () => []);
    rings.forEach((ring, v) => {
      if (ring.length > 0) boxes[this.boxAt(...this.cell(p[3 * v], p[3 * v + 1], p[3 * v + 2]))].push(v);
    });
    this.boxes = boxes;
  }

  /** Signed distance of a point, + outside; leaves the nearest point of the wall in `foot`. */
  signed(x: number, y: number, z: number): number {
    this.least = Infinity;
    const start = this.nearestVertex(x, y, z);
    let best = this.look(start, -1, x, y, z);
    if (this.walks) {
      const { triangles: t } = this.mesh;
      const seen = new Set([start]);
      for (let from = -1; from !== best; ) {
        from = best;
        for (let k = 0; k < 3; k++) {
          const v = t[from + k];
          if (seen.has(v)) continue;
          seen.add(v);
          best = this.look(v, best, x, y, z);
        }
      }
    }
    const apart = Math.sqrt(this.least);
    return this.out < 0 ? -apart : apart;
  }

  /** Nearest place on the triangles round a vertex, if it is nearer than what is known; the triangle it lies in, else `best`. */
  private look(vertex: number, best: number, x: number, y: number, z: number): number {
    const { positions: p, triangles: t, normals } = this.mesh;
    let found = best;
    for (const i of this.rings[vertex]) {
      const near = nearestOnTriangle(p, t[i], t[i + 1], t[i + 2], x, y, z);
      if (near.squared >= this.least) continue;
      this.least = near.squared;
      found = i;
      this.foot = [near.x, near.y, near.z];
      let out = 0;
      let onRim = 0;
      for (let k = 0; k < 3; k++) {
        const v = 3 * t[i + k];
        onRim += this.rim[t[i + k]] * near.share[k];
        const n = normals as Float64Array;
        const across = n[v] * (x - near.x) + n[v + 1] * (y - near.y) + n[v + 2] * (z - near.z);
        out += near.share[k] * across;
      }
      this.out = onRim > 1 - 1e-9 ? -1 : out;
    }
    return found;
  }

  private cell(x: number, y: number, z: number): [number, number, number] {
    const { low, count } = this;
    const at = (v: number, k: number): number =>
      Math.max(0, Math.min(count[k] - 1, Math.floor((v - low[k]) / BOX)));
    return [at(x, 0), at(y, 1), at(z, 2)];
  }

  private boxAt(i: number, j: number, k: number): number {
    return (k * this.count[1] + j) * this.count[0] + i;
  }

  /** Shells of boxes outward from the point's own, until a further shell can hold nothing nearer. */
  private nearestVertex(x: number, y: number, z: number): number {
    const { positions: p } = this.mesh;
    const { low, count } = this;
    const [ci, cj, ck] = this.cell(x, y, z);
    let best = Infinity;
    let found = 0;
    // How far outside the boxes the point stands: that much is lost of what a shell promises.
    const beyond = (v: number, k: number): number => Math.max(0, low[k] - v, v - low[k] - BOX * count[k]);
    const away = Math.hypot(beyond(x, 0), beyond(y, 1), beyond(z, 2));
    const most = Math.max(...count);
    for (let s = 0; s < most; s++) {
      const promised = away === 0 ? (s - 1) * BOX : Math.max((s - 1) * BOX, 0);
      if (s > 1 && best < promised * promised) break;
      for (let k = Math.max(0, ck - s); k <= Math.min(count[2] - 1, ck + s); k++) {
        for (let j = Math.max(0, cj - s); j <= Math.min(count[1] - 1, cj + s); j++) {
          const inner = Math.abs(k - ck) < s && Math.abs(j - cj) < s;
          for (let i = ci - s; i <= ci + s; i += inner ? Math.max(1, 2 * s) : 1) {
            if (i < 0 || i >= count[0]) continue;
            for (const v of this.boxes[this.boxAt(i, j, k)]) {
              const d = (p[3 * v] - x) ** 2 + (p[3 * v + 1] - y) ** 2 + (p[3 * v + 2] - z) ** 2;
              if (d < best) {
                best = d;
                found = v;
              }
            }
          }
        }
      }
    }
    return found;
  }
}
