import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import type { Ridge } from '../core/anatomy/ridge.ts';
import type { Kit } from '../core/drilling/kit.ts';
import { sweptHull } from '../core/drilling/outline.ts';
import { type PassBody, passBody } from '../core/drilling/passBody.ts';
import type { Pass } from '../core/drilling/rehearsal.ts';
import type { TriangleMesh } from '../core/geometry/mesh.ts';

/** Faces round a tool: the flats lie within 0.003 mm of the cylinder of a 4 mm drill. */
const SIDES = 72;
/** How far coronal of the bone entry a tool is carried on, mm. */
const ABOVE = 16;

/** The body of a pass as a solid. */
export function passSolid({ Manifold }: ManifoldToplevel, body: PassBody): Manifold {
  const parts = sweptHull(body, SIDES, ABOVE).map((points) => Manifold.hull(points.map((p) => [...p])));
  if (parts.length === 1) return parts[0];
  const whole = Manifold.union(parts);
  for (const part of parts) part.delete();
  return whole;
}

/** A closed mesh as a solid. */
export function solidOf({ Manifold, Mesh }: ManifoldToplevel, mesh: TriangleMesh): Manifold {
  const raw = new Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(mesh.positions),
    triVerts: mesh.triangles,
  });
  raw.merge();
  return Manifold.ofMesh(raw);
}

/** What is left of a solid when the passes have gone through it. The caller deletes it. */
export function drilled(
  kernel: ManifoldToplevel,
  bone: Manifold,
  ridge: Ridge,
  kit: Kit,
  passes: readonly Pass[],
): Manifold {
  const bodies = passes.map((pass) => passBody(ridge, kit, pass)).filter((body) => body !== null);
  const solids = bodies.map((body) => passSolid(kernel, body));
  const left = kernel.Manifold.difference([bone, ...solids]);
  for (const solid of solids) solid.delete();
  return left;
}

/** A solid's triangles. */
export function meshOf(solid: Manifold): TriangleMesh {
  const { vertProperties, triVerts, numProp } = solid.getMesh();
  const count = vertProperties.length / numProp;
  const positions = new Float64Array(3 * count);
  for (let i = 0; i < count; i++)
    for (let k = 0; k < 3; k++) positions[3 * i + k] = vertProperties[i * numProp + k];
  return { positions, triangles: Uint32Array.from(triVerts) };
}
