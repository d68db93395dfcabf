import type { Manifold } from 'manifold-3d';
import { anatomyOf } from '../core/anatomy/anatomy.ts';
import type { Ridge } from '../core/anatomy/ridge.ts';
import { sectionSolids } from '../core/anatomy/section.ts';
import { creased } from '../core/geometry/crease.ts';
import { drillReport } from '../core/plan/drillReport.ts';
import { kitOf, passesShown } from '../core/plan/inHand.ts';
import { drilled, meshOf, solidOf } from '../solids/drill.ts';
import type { Kernel } from '../solids/shelf.ts';
import { loadedKernel } from './kernel.ts';
import type { DrillAnswer, DrillRequest, SolidAnswer } from './messages.ts';

/** Edges of the drilled bone sharper than this are drawn crisp, degrees. */
const CREASE = 35;

/** The bone of the last site, whole. */
let last: { key: string; ridge: Ridge; bone: Manifold } | null = null;

function boneOf(top: Kernel, { plan: { site } }: DrillRequest) {
  const key = JSON.stringify(site);
  if (last?.key === key) return last;
  last?.bone.delete();
  const anatomy = anatomyOf(site);
  const bone = solidOf(top, sectionSolids(anatomy).bone.mesh);
  last = { key, ridge: anatomy.ridge, bone };
  return last;
}

async function solid(request: DrillRequest): Promise<SolidAnswer> {
  const { id, plan } = request;
  const top = await loadedKernel();
  const { ridge, bone } = boneOf(top, request);
  const left = drilled(top, bone, ridge, kitOf(plan), passesShown(plan));
  const { positions, normals, triangles } = creased(meshOf(left), CREASE);
  left.delete();
  if (!normals) throw new Error('no normals');
  return { id, kind: 'solid', positions, normals, triangles };
}

const tell = (answer: DrillAnswer, transfer: ArrayBufferLike[] = []): void =>
  self.postMessage(answer, { transfer: transfer as ArrayBuffer[] });

async function answer(request: DrillRequest): Promise<void> {
  const made = await solid(request);
  tell(made, [made.positions.buffer, made.normals.buffer, made.triangles.buffer]);
  tell({ id: request.id, kind: 'report', report: drillReport(request.plan) });
}

self.addEventListener('message', ({ data }: MessageEvent<DrillRequest>) => {
  answer(data).catch((error: unknown) => tell({ id: data.id, kind: 'fault', message: String(error) }));
});
