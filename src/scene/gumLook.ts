import type { BufferGeometry } from 'three';
import type { GumMesh } from '../core/anatomy/gumMesh.ts';
import type { Placed } from '../core/geometry/carry.ts';
import type { TriangleMesh } from '../core/geometry/mesh.ts';
import type { OwnedGeometry } from './geometry.ts';

/** Attached gum, the darker mucosa below it, and its lower edge, which lets the bone through; sRGB turned linear. */
const ATTACHED = [0.66, 0.36, 0.33] as const;
const MUCOSA = [0.62, 0.27, 0.25] as const;

/** Lays attached gum with a given cover by vertex into a geometry of its own. */
export function layAttached(
  into: OwnedGeometry,
  mesh: TriangleMesh,
  cover: readonly number[],
  frame: Placed,
): BufferGeometry {
  into.lay(mesh, frame);
  const colours = into.colours(4);
  cover.forEach((share, i) => {
    colours.set([...ATTACHED, share], 4 * i);
  });
  return into.geometry;
}

/** Lays the gum into a geometry of its own, in the frame that `frame` carries it to, coloured and veiled by its cover. */
export function layGum(into: OwnedGeometry, gum: GumMesh, frame: Placed): BufferGeometry {
  into.lay(gum.mesh, frame, gum.walls);
  const colours = into.colours(4);
  for (let i = 0; i < into.count; i++) {
    const capped = i >= gum.cover.length;
    const loose = capped ? 0 : gum.loose[i];
    for (let k = 0; k < 3; k++) colours[4 * i + k] = ATTACHED[k] + loose * (MUCOSA[k] - ATTACHED[k]);
    colours[4 * i + 3] = capped ? 1 : gum.cover[i];
  }
  return into.geometry;
}
