import { Box3, BufferAttribute, BufferGeometry, Sphere } from 'three';
import { isMirrored, type Placed } from '../core/geometry/carry.ts';
import type { TriangleMesh } from '../core/geometry/mesh.ts';

/** Where a mesh stands that is drawn as it is. */
const IN_PLACE: Placed = { origin: [0, 0, 0], ex: [1, 0, 0], ey: [0, 1, 0], ez: [0, 0, 1] };

/** Room that is left for a few more rows of a grid, as a share of what is needed. */
const SPARE = 1.15;

const sameFrame = (a: Placed, b: Placed): boolean =>
  (['origin', 'ex', 'ey', 'ez'] as const).every((part) => a[part].every((v, k) => v === b[part][k]));

/**
 * The one door from the core's meshes to three's geometries: a geometry that is owned once and written anew in place, as long as what it is to hold fits
 * into its arrays. Triangles from `flatFrom` on are flat caps and get corners of their own. Whoever makes one disposes of it.
 */
export class OwnedGeometry {
  readonly geometry = new BufferGeometry();
  private points = new Float32Array(0);
  private across = new Float32Array(0);
  private index = new Uint32Array(0);
  private held: { mesh: TriangleMesh; frame: Placed; mirrored: boolean } | null = null;
  private vertices = 0;

  /** Lays a mesh in, carried by `frame`. What is there already is not written again. */
  lay(mesh: TriangleMesh, frame: Placed = IN_PLACE, flatFrom = mesh.triangles.length / 3): this {
    const { held } = this;
    if (held?.mesh === mesh && sameFrame(held.frame, frame)) return this;
    const mirrored = isMirrored(frame);
    const corners = mesh.triangles.length;
    this.vertices = mesh.positions.length / 3 + corners - 3 * flatFrom;
    const fits = this.makeRoom(this.vertices, corners);
    if (!fits || held?.mesh.triangles !== mesh.triangles || held.mirrored !== mirrored) {
      this.writeIndex(mesh, flatFrom, mirrored);
    }
    carry(mesh.positions, frame, 1, this.points);
    if (mesh.normals) carry(mesh.normals, frame, 0, this.across);
    this.writeCaps(mesh, flatFrom);
    this.finish(mesh.normals !== undefined);
    this.held = { mesh, frame, mirrored };
    return this;
  }

  /** The vertices' colours, `size` numbers each, to be written; they stay until the room is outgrown. */
  colours(size: 3 | 4): Float32Array {
    const { geometry } = this;
    const known = geometry.getAttribute('color') as BufferAttribute | undefined;
    const colours = known ?? new BufferAttribute(new Float32Array((size * this.points.length) / 3), size);
    if (!known) geometry.setAttribute('color', colours);
    colours.needsUpdate = true;
    return colours.array as Float32Array;
  }

  /** How many vertices are in use. */
  get count(): number {
    return this.vertices;
  }

  /** The mesh that lies in it. */
  get mesh(): TriangleMesh | null {
    return this.held?.mesh ?? null;
  }

  dispose(): void {
    this.geometry.dispose();
  }

  /** Whether the arrays were long enough. Longer ones go to the graphics processor as a new geometry: the old one is let go first. */
  private makeRoom(vertices: number, corners: number): boolean {
    if (3 * vertices <= this.points.length && corners <= this.index.length) return true;
    const first = this.points.length === 0;
    const room = (count: number) => (first ? count : Math.ceil(SPARE * count));
    if (!first) this.geometry.dispose();
    this.points = new Float32Array(3 * room(vertices));
    this.across = new Float32Array(this.points.length);
    this.index = new Uint32Array(room(corners));
    this.geometry.deleteAttribute('color');
    this.geometry.setAttribute('position', new BufferAttribute(this.points, 3));
    this.geometry.setAttribute('normal', new BufferAttribute(this.across, 3));
    this.geometry.setIndex(new BufferAttribute(this.index, 1));
    return false;
  }

  private writeIndex({ positions, triangles }: TriangleMesh, flatFrom: number, mirrored: boolean): void {
    const { index } = this;
    const own = positions.length / 3;
    const smooth = 3 * flatFrom;
    for (let i = 0; i < triangles.length; i += 3) {
      const last = mirrored ? 1 : 2;
      const flat = i >= smooth;
      index[i] = flat ? own + i - smooth : triangles[i];
      index[i + 1] = flat ? own + i - smooth + 3 - last : triangles[i + 3 - last];
      index[i + 2] = flat ? own + i - smooth + last : triangles[i + last];
    }
    this.geometry.setDrawRange(0, triangles.length);
    const order = this.geometry.getIndex();
    if (order) order.needsUpdate = true;
  }

  /** The caps' corners with their triangles' normals, from the points and the index that were written. */
  private writeCaps({ positions, triangles }: TriangleMesh, flatFrom: number): void {
    const { points, across, index } = this;
    let vertex = positions.length;
    for (let i = 3 * flatFrom; i < triangles.length; i++, vertex += 3) {
      const from = 3 * triangles[i];
      points[vertex] = points[from];
      points[vertex + 1] = points[from + 1];
      points[vertex + 2] = points[from + 2];
    }
    for (let i = 3 * flatFrom; i < triangles.length; i += 3) {
      writeFaceNormal(points, 3 * index[i], 3 * index[i + 1], 3 * index[i + 2], across);
    }
  }

  private finish(hasNormals: boolean): void {
    const { geometry } = this;
    geometry.getAttribute('position').needsUpdate = true;
    geometry.getAttribute('normal').needsUpdate = true;
    if (!hasNormals) geometry.computeVertexNormals();
    const box = new Box3().setFromArray(this.points.subarray(0, 3 * this.vertices));
    geometry.boundingSphere = box.getBoundingSphere(geometry.boundingSphere ?? new Sphere());
    geometry.boundingBox = box;
  }
}

/** A geometry of a mesh that does not change; whoever asks for it disposes of it. */
export const geometryOf = (mesh: TriangleMesh, flatFrom?: number): BufferGeometry =>
  new OwnedGeometry().lay(mesh, IN_PLACE, flatFrom).geometry;

/** Carries points (`shift` 1) or directions (0) out of a frame into `out`. */
function carry(source: Float64Array, { origin, ex, ey, ez }: Placed, shift: number, out: Float32Array): void {
  const [ox, oy, oz] = origin.map((v) => shift * v);
  const [xx, xy, xz] = ex;
  const [yx, yy, yz] = ey;
  const [zx, zy, zz] = ez;
  for (let i = 0; i < source.length; i += 3) {
    const x = source[i];
    const y = source[i + 1];
    const z = source[i + 2];
    out[i] = ox + x * xx + y * yx + z * zx;
    out[i + 1] = oy + x * xy + y * yy + z * zy;
    out[i + 2] = oz + x * xz + y * yz + z * zz;
  }
}

/** Writes the normal of a triangle of corners `a`, `b`, `c` (places in the array) to all three. */
function writeFaceNormal(p: Float32Array, a: number, b: number, c: number, out: Float32Array): void {
  const ux = p[b] - p[a];
  const uy = p[b + 1] - p[a + 1];
  const uz = p[b + 2] - p[a + 2];
  const vx = p[c] - p[a];
  const vy = p[c + 1] - p[a + 1];
  const vz = p[c + 2] - p[a + 2];
  const x = uy * vz - uz * vy;
  const y = uz * vx - ux * vz;
  const z = ux * vy - uy * vx;
  const length = Math.sqrt(x * x + y * y + z * z) || 1;
  for (const k of [a, b, c]) {
    out[k] = x / length;
    out[k + 1] = y / length;
    out[k + 2] = z / length;
  }
}

/** A geometry whose triangles are rewritten in place, up to a capacity; for what changes while a hand moves. */
export class RewrittenGeometry {
  readonly geometry = new BufferGeometry();
  private readonly points: Float32Array;
  private readonly index: Uint32Array;

  constructor(vertices: number, triangles: number) {
    this.points = new Float32Array(3 * vertices);
    this.index = new Uint32Array(3 * triangles);
    this.geometry.setAttribute('position', new BufferAttribute(this.points, 3));
    this.geometry.setAttribute('uv', new BufferAttribute(new Float32Array(2 * vertices), 2));
    this.geometry.setIndex(new BufferAttribute(this.index, 1));
    this.geometry.setDrawRange(0, 0);
  }

  /** Writes as much as fits; `uv` are the plane's own coordinates. */
  write(
    points: readonly (readonly number[])[],
    uv: readonly (readonly number[])[],
    index: readonly number[],
  ): void {
    const count = Math.min(points.length, this.points.length / 3);
    const flat = this.geometry.getAttribute('uv');
    for (let i = 0; i < count; i++) {
      this.points.set(points[i], 3 * i);
      flat.setXY(i, uv[i][0], uv[i][1]);
    }
    const used = index.length <= this.index.length && points.length <= count ? index.length : 0;
    if (used > 0) this.index.set(index);
    this.geometry.setDrawRange(0, used);
    this.geometry.getAttribute('position').needsUpdate = true;
    flat.needsUpdate = true;
    const order = this.geometry.getIndex();
    if (order) order.needsUpdate = true;
  }

  dispose(): void {
    this.geometry.dispose();
  }
}
