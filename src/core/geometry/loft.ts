import type { TriangleMesh } from './mesh.ts';
import type { Vec3 } from './vec.ts';

/** Vertex indices once round a closed loop, anticlockwise seen from its upper side. */
export type Ring = readonly number[];

/**
 * Builds a closed mesh ring by ring. Rings that are joined have equally many vertices, counted anticlockwise seen from above
 * (from the side of the later ring); two corners may be one vertex, and triangles that degenerate thereby are left out, so that
 * rings may touch or shrink to a line. Two rings must not touch in a pattern that leaves an edge with a single triangle.
 */
export class MeshBuilder {
  private readonly points: number[] = [];
  private readonly corners: number[] = [];

  /** `first`: index of its first vertex, where the mesh is the continuation of another one. */
  constructor(private readonly first = 0) {}

  get triangleCount(): number {
    return this.corners.length / 3;
  }

  vertex(p: Vec3): number {
    this.points.push(p[0], p[1], p[2]);
    return this.first + this.points.length / 3 - 1;
  }

  /** Where a vertex lies. */
  place(vertex: number): Vec3 {
    return [this.points[3 * vertex], this.points[3 * vertex + 1], this.points[3 * vertex + 2]];
  }

  ring(count: number, at: (j: number) => Vec3): number[] {
    return Array.from({ length: count }, (_, j) => this.vertex(at(j)));
  }

  triangle(a: number, b: number, c: number): void {
    if (a !== b && b !== c && c !== a) this.corners.push(a, b, c);
  }

  /** Quadrilateral `a b c d`, anticlockwise seen from outside, cut from `a` to `c`. */
  quad(a: number, b: number, c: number, d: number): void {
    this.triangle(a, b, c);
    this.triangle(a, c, d);
  }

  /** The wall from one ring up to the next. */
  band(lower: Ring, upper: Ring): void {
    const n = lower.length;
    for (let j = 0; j < n; j++) {
      const k = (j + 1) % n;
      this.quad(lower[j], lower[k], upper[k], upper[j]);
    }
  }

  bands(rings: readonly Ring[]): void {
    for (let i = 1; i < rings.length; i++) this.band(rings[i - 1], rings[i]);
  }

  /** Close a ring from below by a fan to one vertex, which may be new. */
  capBelow(ring: Ring, apex: Vec3): void {
    const a = this.vertex(apex);
    for (let j = 0; j < ring.length; j++) this.triangle(a, ring[(j + 1) % ring.length], ring[j]);
  }

  /** Close a ring from above by a fan to one vertex. */
  capAbove(ring: Ring, apex: Vec3): void {
    const a = this.vertex(apex);
    for (let j = 0; j < ring.length; j++) this.triangle(a, ring[j], ring[(j + 1) % ring.length]);
  }

  build(): TriangleMesh {
    return { positions: new Float64Array(this.points), triangles: new Uint32Array(this.corners) };
  }
}
