import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import type { Ridge } from '../core/anatomy/ridge.ts';
import type { Kit } from '../core/drilling/kit.ts';
import { type PassBody, passBody } from '../core/drilling/passBody.ts';
import type { Pass } from '../core/drilling/rehearsal.ts';
import type { TriangleMesh } from '../core/geometry/mesh.ts';
import type { Vec3 } from '../core/geometry/vec.ts';

/** Faces round a tool: the flats lie within 0.003 mm of the cylinder of a 4 mm drill. */
const SIDES = 72;
/** How far coronal of the bone entry a tool is carried on, mm. */
const ABOVE = 16;

/** Rings of a tool at a share of its press, as points. */
function rings(body: PassBody, s: number): Vec3[] {
  const { x, r } = body.profile;
  const top = body.depth + ABOVE;
  const stations = [...x.map((at, i) => [at, r[i]] as const), [top, r[r.length - 1]] as const];
  return stations.flatMap(([station, radius]) =>
    radius === 0
      ? [body.surface(s, station, 0, 0)]
      : Array.from({ length: SIDES }, (_, j) => body.surface(s, station, radius, (2 * Math.PI * j) / SIDES)),
  );
}

/** The body of a pass as a solid: the hulls of the tool at neighbouring places of its press, together. */
export function passSolid({ Manifold }: ManifoldToplevel, body: PassBody): Manifold {
  const { places } = body;
  const hull = (points: Vec3[]): Manifold => Manifold.hull(points.map((p) => [...p]));
  if (places.length === 1) return hull(rings(body, 0));
  const parts = places.slice(1).map(({ s }, i) => hull([...rings(body, places[i].s), ...rings(body, s)]));
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
