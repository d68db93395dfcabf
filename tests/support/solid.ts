import Module, { type ManifoldToplevel } from 'manifold-3d';
import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';

let library: Promise<ManifoldToplevel> | undefined;

/** manifold-3d, loaded once. */
export function solidModeller(): Promise<ManifoldToplevel> {
  library ??= Module().then((wasm) => {
    wasm.setup();
    return wasm;
  });
  return library;
}

export interface SolidOpinion {
  status: string;
  genus: number;
  volume: number;
  parts: number;
}

/** A second opinion on a mesh by manifold-3d. Status other than `NoError`: not closed, or not wound one way. */
export async function opinionOn(mesh: TriangleMesh): Promise<SolidOpinion> {
  const wasm = await solidModeller();
  const body = new wasm.Manifold(
    new wasm.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(mesh.positions),
      triVerts: mesh.triangles,
    }),
  );
  const parts = body.decompose();
  const out = {
    status: body.status(),
    genus: body.genus(),
    volume: body.volume(),
    parts: parts.length,
  };
  for (const part of parts) part.delete();
  body.delete();
  return out;
}
