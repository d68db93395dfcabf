/**
 * A triangle mesh: `positions` three numbers a vertex (mm; the frame is the maker's to say), `triangles` three vertex
 * indices each, wound so that the right-hand normal points outward. Closed unless the maker says otherwise.
 */
export interface TriangleMesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  /** Optional vertex normals (unit, outward), where the maker knows them better than the triangles do. */
  readonly normals?: Float64Array;
}

/** The mirror image in the plane `x = 0` of its own frame; winding is turned so that it stays outward. */
export function mirrorMesh(mesh: TriangleMesh): TriangleMesh {
  const flip = (source: Float64Array): Float64Array => source.map((v, i) => (i % 3 === 0 ? -v : v));
  const triangles = new Uint32Array(mesh.triangles.length);
  for (let i = 0; i < triangles.length; i += 3) {
    triangles[i] = mesh.triangles[i];
    triangles[i + 1] = mesh.triangles[i + 2];
    triangles[i + 2] = mesh.triangles[i + 1];
  }
  const out = { positions: flip(mesh.positions), triangles };
  return mesh.normals ? { ...out, normals: flip(mesh.normals) } : out;
}

/** Six times the volume between the origin and a triangle, its corners' places in `p`; + seen from inside. */
export const sixfold = (p: Float64Array, a: number, b: number, c: number): number =>
  p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
  p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
  p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);

/** Volume inside a closed mesh by the divergence theorem, mm³; positive if wound outward. */
export function meshVolume({ positions: p, triangles: t }: TriangleMesh): number {
  let six = 0;
  for (let i = 0; i < t.length; i += 3) six += sixfold(p, 3 * t[i], 3 * t[i + 1], 3 * t[i + 2]);
  return six / 6;
}
