import Module, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import wasm from 'manifold-3d/manifold.wasm?url';
import { anatomyOf } from '../core/anatomy/anatomy.ts';
import type { Ridge } from '../core/anatomy/ridge.ts';
import { sectionSolids } from '../core/anatomy/section.ts';
import { creased } from '../core/geometry/crease.ts';
import { drilled, meshOf, solidOf } from './drill.ts';
import type { SolidAnswer, SolidRequest } from './messages.ts';

/** Edges of the drilled bone sharper than this are drawn crisp, degrees. */
const CREASE = 35;

let kernel: Promise<ManifoldToplevel> | null = null;
/** The bone of the last site, whole. */
let last: { key: string; ridge: Ridge; bone: Manifold; volume: number } | null = null;

async function loaded(): Promise<ManifoldToplevel> {
  kernel ??= Module({ locateFile: () => wasm }).then((top) => {
    top.setup();
    return top;
  });
  return kernel;
}

function boneOf(top: ManifoldToplevel, { site }: SolidRequest) {
  const key = JSON.stringify(site);
  if (last?.key === key) return last;
  last?.bone.delete();
  const anatomy = anatomyOf(site);
  const bone = solidOf(top, sectionSolids(anatomy).bone.mesh);
  last = { key, ridge: anatomy.ridge, bone, volume: bone.volume() };
  return last;
}

async function answer(request: SolidRequest): Promise<SolidAnswer> {
  const { id, kit, passes } = request;
  const began = performance.now();
  const top = await loaded();
  const { ridge, bone, volume } = boneOf(top, request);
  const left = drilled(top, bone, ridge, kit, passes);
  const removed = volume - left.volume();
  const { positions, normals, triangles } = creased(meshOf(left), CREASE);
  left.delete();
  if (!normals) throw new Error('no normals');
  return { id, ok: true, positions, normals, triangles, removed, took: performance.now() - began };
}

self.addEventListener('message', ({ data }: MessageEvent<SolidRequest>) => {
  answer(data).then(
    (made) =>
      self.postMessage(
        made,
        made.ok ? { transfer: [made.positions.buffer, made.normals.buffer, made.triangles.buffer] } : {},
      ),
    (error: unknown) => self.postMessage({ id: data.id, ok: false, message: String(error) }),
  );
});
