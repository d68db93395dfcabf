import type { TriangleMesh } from './mesh.ts';
import type { Vec3 } from './vec.ts';

/** An orthonormal frame seen from another one: where its origin is and where its three axes point there. */
export interface Placed {
  readonly origin: Vec3;
  readonly ex: Vec3;
  readonly ey: Vec3;
  readonly ez: Vec3;
}

const determinant = (x: Vec3, y: Vec3, z: Vec3): number =>
  x[0] * (y[1] * z[2] - y[2] * z[1]) +
  x[1] * (y[2] * z[0] - y[0] * z[2]) +
  x[2] * (y[0] * z[1] - y[1] * z[0]);

/** A mesh carried from its own frame to the one `to` is written in; a reflection turns the winding, so that it stays outward. */
export function carried(mesh: TriangleMesh, to: Placed): TriangleMesh {
  const { origin: o, ex, ey, ez } = to;
  const move = (source: Float64Array, k: number): Float64Array => {
    const out = new Float64Array(source.length);
    for (let i = 0; i < source.length; i += 3) {
      const x = source[i];
      const y = source[i + 1];
      const z = source[i + 2];
      for (let j = 0; j < 3; j++) out[i + j] = k * o[j] + x * ex[j] + y * ey[j] + z * ez[j];
    }
    return out;
  };
  let triangles = mesh.triangles;
  if (determinant(ex, ey, ez) < 0) {
    triangles = new Uint32Array(mesh.triangles.length);
    for (let i = 0; i < triangles.length; i += 3) {
      triangles[i] = mesh.triangles[i];
      triangles[i + 1] = mesh.triangles[i + 2];
      triangles[i + 2] = mesh.triangles[i + 1];
    }
  }
  const out = { positions: move(mesh.positions, 1), triangles };
  return mesh.normals ? { ...out, normals: move(mesh.normals, 0) } : out;
}
