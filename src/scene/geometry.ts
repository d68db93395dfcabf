import { BufferAttribute, BufferGeometry } from 'three';
import type { TriangleMesh } from '../core/geometry/mesh.ts';

/**
 * The one door from the core's meshes to three's geometries. Triangles from `flatFrom` on are flat caps and get corners of their
 * own. Whoever asks for a geometry owns it and disposes of it.
 */
export function geometryOf(mesh: TriangleMesh, flatFrom = mesh.triangles.length / 3): BufferGeometry {
  const geometry = new BufferGeometry();
  const { positions, triangles, normals } = mesh;
  const flat = triangles.length - 3 * flatFrom;
  const own = positions.length / 3;
  const points = new Float32Array(positions.length + 3 * flat);
  const across = new Float32Array(points.length);
  points.set(positions);
  if (normals) across.set(normals);
  const index = new Uint32Array(triangles);
  for (let i = 3 * flatFrom; i < triangles.length; i += 3) {
    const n = faceNormal(positions, triangles, i);
    for (let k = 0; k < 3; k++) {
      const vertex = own + (i - 3 * flatFrom) + k;
      index[i + k] = vertex;
      for (let j = 0; j < 3; j++) {
        points[3 * vertex + j] = positions[3 * triangles[i + k] + j];
        across[3 * vertex + j] = n[j];
      }
    }
  }
  geometry.setAttribute('position', new BufferAttribute(points, 3));
  geometry.setIndex(new BufferAttribute(index, 1));
  geometry.setAttribute('normal', new BufferAttribute(across, 3));
  if (!normals) geometry.computeVertexNormals();
  return geometry;
}

function faceNormal(p: Float64Array, t: Uint32Array, i: number): [number, number, number] {
  const [a, b, c] = [3 * t[i], 3 * t[i + 1], 3 * t[i + 2]];
  const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
  const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
  const n: [number, number, number] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.hypot(...n) || 1;
  return [n[0] / length, n[1] / length, n[2] / length];
}

/** Colours every vertex by a number, `ramp` writing red, green and blue (0 to 1) into the array. */
export function paint(
  geometry: BufferGeometry,
  numbers: Float64Array,
  ramp: (x: number, out: Float32Array, at: number) => void,
): void {
  const colours = new Float32Array(3 * numbers.length);
  for (let i = 0; i < numbers.length; i++) ramp(numbers[i], colours, 3 * i);
  geometry.setAttribute('color', new BufferAttribute(colours, 3));
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
