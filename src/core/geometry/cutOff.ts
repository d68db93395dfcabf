import { withSmoothNormals } from './crease.ts';
import type { TriangleMesh } from './mesh.ts';

/** Nearer to the plane than this a corner counts as below it, so that no triangle shrinks to nothing, mm. */
const ON = 1e-9;

/** Between the rings of a lid at its widest, mm. */
const LID_STEP = 0.3;

/** What a plane leaves of a closed mesh, and the closed lines along which it has cut. */
export interface CutOff {
  readonly mesh: TriangleMesh;
  /** Points of each line, `z` the plane's height. */
  readonly rims: readonly (readonly (readonly [x: number, y: number])[])[];
}

/** Corners and triangles as they are gathered; a corner on an edge is shared by its two triangles. */
class Remains {
  readonly points: number[] = [];
  readonly walls: number[] = [];
  /** From each corner of a rim to the next, as the lid runs. */
  readonly next = new Map<number, number>();
  private readonly kept = new Map<number, number>();
  private readonly onEdges = new Map<string, number>();

  constructor(
    private readonly from: Float64Array,
    private readonly height: number,
  ) {}

  add(x: number, y: number, z: number): number {
    this.points.push(x, y, z);
    return this.points.length / 3 - 1;
  }

  corner(v: number): number {
    const known = this.kept.get(v);
    if (known !== undefined) return known;
    const made = this.add(this.from[3 * v], this.from[3 * v + 1], this.from[3 * v + 2]);
    this.kept.set(v, made);
    return made;
  }

  /** Where the edge from `low` to `high` meets the plane. */
  onEdge(low: number, high: number): number {
    const key = `${low} ${high}`;
    const known = this.onEdges.get(key);
    if (known !== undefined) return known;
    const { from: p, height } = this;
    const w = (height - p[3 * low + 2]) / (p[3 * high + 2] - p[3 * low + 2]);
    const at = (k: number): number => p[3 * low + k] + w * (p[3 * high + k] - p[3 * low + k]);
    const made = this.add(at(0), at(1), height);
    this.onEdges.set(key, made);
    return made;
  }

  /** The part of a triangle below the plane. */
  triangle(corners: readonly [number, number, number], up: readonly [boolean, boolean, boolean]): void {
    const above = up.filter(Boolean).length;
    if (above === 3) return;
    if (above === 0) {
      this.walls.push(...corners.map((v) => this.corner(v)));
      return;
    }
    // The corner that stands alone on its side, and the two that follow it round.
    const k = up.indexOf(above === 1);
    const [a, b, c] = [corners[k], corners[(k + 1) % 3], corners[(k + 2) % 3]];
    if (above === 1) {
      const [ab, ac] = [this.onEdge(b, a), this.onEdge(c, a)];
      const [lower, last] = [this.corner(b), this.corner(c)];
      this.walls.push(ab, lower, last, ab, last, ac);
      this.next.set(ab, ac);
    } else {
      const [ab, ac] = [this.onEdge(a, b), this.onEdge(a, c)];
      this.walls.push(this.corner(a), ab, ac);
      this.next.set(ac, ab);
    }
  }

  at(v: number): readonly [number, number] {
    return [this.points[3 * v], this.points[3 * v + 1]];
  }

  /** Triangles that close a rim: rings ever smaller about its middle, so that every place of the lid has a corner near it. */
  lid(rim: readonly number[]): number[] {
    const places = rim.map((v) => this.at(v));
    const [mx, my] = [0, 1].map((k) => places.reduce((sum, p) => sum + p[k], 0) / rim.length);
    const reach = Math.max(...places.map(([x, y]) => Math.hypot(x - mx, y - my)));
    const count = Math.max(1, Math.ceil(reach / LID_STEP));
    const out: number[] = [];
    let outer = rim;
    for (let i = 1; i < count; i++) {
      const share = 1 - i / count;
      const inner = places.map(([x, y]) =>
        this.add(mx + share * (x - mx), my + share * (y - my), this.height),
      );
      outer.forEach((v, j) => {
        const k = (j + 1) % outer.length;
        out.push(v, outer[k], inner[k], v, inner[k], inner[j]);
      });
      outer = inner;
    }
    const apex = this.add(mx, my, this.height);
    outer.forEach((v, j) => {
      out.push(apex, v, outer[(j + 1) % outer.length]);
    });
    return out;
  }

  /** The closed lines of the cut. */
  rims(): number[][] {
    const out: number[][] = [];
    while (this.next.size > 0) {
      const [start] = this.next.keys();
      const rim: number[] = [];
      for (let v: number | undefined = start; v !== undefined && this.next.has(v); ) {
        rim.push(v);
        const follower: number | undefined = this.next.get(v);
        this.next.delete(v);
        v = follower;
      }
      out.push(rim);
    }
    return out;
  }
}

/**
 * What lies below `z = height` of a closed mesh, closed again by a level lid over each cut. The fan about the mesh's last vertex, its foot, stays about the last
 * vertex; it must lie below the plane. Smooth normals, the foot's fan left out of them.
 */
export function cutOff({ positions, triangles }: TriangleMesh, height: number): CutOff {
  const remains = new Remains(positions, height);
  const foot = positions.length / 3 - 1;
  const fan: number[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const corners = [triangles[i], triangles[i + 1], triangles[i + 2]] as const;
    if (corners.includes(foot)) fan.push(...corners);
    else {
      const up = (v: number): boolean => positions[3 * v + 2] > height + ON;
      remains.triangle(corners, [up(corners[0]), up(corners[1]), up(corners[2])]);
    }
  }
  const rims = remains.rims();
  const lids = rims.flatMap((rim) => remains.lid(rim));
  const walls = (remains.walls.length + lids.length) / 3;
  const last = remains.add(positions[3 * foot], positions[3 * foot + 1], positions[3 * foot + 2]);
  const footFan = fan.map((v) => (v === foot ? last : remains.corner(v)));
  const made = {
    positions: new Float64Array(remains.points),
    triangles: new Uint32Array([...remains.walls, ...lids, ...footFan]),
  };
  return { mesh: withSmoothNormals(made, walls), rims: rims.map((rim) => rim.map((v) => remains.at(v))) };
}
