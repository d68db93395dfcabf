import type { TriangleMesh } from '../core/geometry/mesh.ts';

const HEADER = 80;
const PER_TRIANGLE = 50;

/** The right-hand normal of a triangle, unit; zero where it has no area. */
function normalOf(p: Float64Array, a: number, b: number, c: number): readonly [number, number, number] {
  const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
  const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.sqrt(x * x + y * y + z * z) || 1;
  return [x / length, y / length, z / length];
}

/**
 * Binary STL, 84 + 50 n bytes, coordinates as they are (mm). `header`: up to 80 plain characters; it must not begin with "solid", by which readers tell the
 * other form.
 */
export function stlOf({ positions: p, triangles: t }: TriangleMesh, header: string): Uint8Array<ArrayBuffer> {
  const count = t.length / 3;
  const bytes = new Uint8Array(HEADER + 4 + PER_TRIANGLE * count);
  const view = new DataView(bytes.buffer);
  bytes.fill(0x20, 0, HEADER);
  new TextEncoder().encodeInto(header, bytes.subarray(0, HEADER));
  view.setUint32(HEADER, count, true);
  for (let i = 0, at = HEADER + 4; i < count; i++, at += PER_TRIANGLE) {
    const corners = [3 * t[3 * i], 3 * t[3 * i + 1], 3 * t[3 * i + 2]] as const;
    const normal = normalOf(p, ...corners);
    for (let k = 0; k < 3; k++) {
      view.setFloat32(at + 4 * k, normal[k], true);
      for (let j = 0; j < 3; j++) view.setFloat32(at + 12 * (j + 1) + 4 * k, p[corners[j] + k], true);
    }
  }
  return bytes;
}
