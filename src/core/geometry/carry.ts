import type { TriangleMesh } from './mesh.ts';
import { add, cross, dot, scale, sub, type Vec3 } from './vec.ts';

/** An orthonormal frame seen from another one: where its origin is and where its three axes point there. */
export interface Placed {
  readonly origin: Vec3;
  readonly ex: Vec3;
  readonly ey: Vec3;
  readonly ez: Vec3;
}

/** A direction of the outer frame as the placed one has it. */
export const turnedInto = ({ ex, ey, ez }: Placed, v: Vec3): Vec3 => [dot(v, ex), dot(v, ey), dot(v, ez)];

/** A point of the outer frame as the placed one has it. */
export const broughtInto = (to: Placed, p: Vec3): Vec3 => turnedInto(to, sub(p, to.origin));

const turnedOut = ({ ex, ey, ez }: Placed, v: Vec3): Vec3 =>
  add(add(scale(ex, v[0]), scale(ey, v[1])), scale(ez, v[2]));

/** A point of the placed frame as the outer one has it. */
export const broughtOut = (to: Placed, p: Vec3): Vec3 => add(to.origin, turnedOut(to, p));

/** A frame that stands in `inner`, which itself stands in `outer`, as it stands in the frame that `outer` is written in. */
export const placedIn = (outer: Placed, inner: Placed): Placed => ({
  origin: broughtOut(outer, inner.origin),
  ex: turnedOut(outer, inner.ex),
  ey: turnedOut(outer, inner.ey),
  ez: turnedOut(outer, inner.ez),
});

/** The frame is left-handed where the one it is written in is right-handed. */
export const isMirrored = ({ ex, ey, ez }: Placed): boolean => dot(cross(ex, ey), ez) < 0;

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
  if (isMirrored(to)) {
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
