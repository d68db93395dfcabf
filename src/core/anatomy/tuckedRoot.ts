import type { TriangleMesh } from '../geometry/mesh.ts';
import type { Anatomy } from './anatomy.ts';

/** Least bone left beside a tucked root, mm, and the depth below the crest from which it is tucked. */
const COVER = 0.15;
const BELOW = 0.4;

/** A root of a further tooth drawn into the bone where it would come through its side: nothing is measured to it. Site frame, in place. */
export function tuckedRoot(mesh: TriangleMesh, { ridge }: Anatomy): TriangleMesh {
  const { positions } = mesh;
  for (let i = 0; i < positions.length; i += 3) {
    ridge.locate(positions[i], positions[i + 1], positions[i + 2]);
    const { q, u, d } = ridge;
    if (d < BELOW) continue;
    const room = Math.max(0, ridge.half(u > 0 ? 1 : -1, q, d) * ridge.cap(d) - COVER);
    if (Math.abs(u) > room) positions.set(ridge.sectionPoint(q, Math.sign(u) * room, d), i);
  }
  return mesh;
}
