import type { Plan } from '../core/plan/plan.ts';
import { modelFile } from '../io/modelFile.ts';
import { buildModel } from '../solids/build.ts';
import type { ModelKind, ModelResult } from '../solids/model.ts';
import { loadedKernel } from './kernel.ts';
import type { ModelAnswer, ModelOutcome, ModelRequest, ModelWish } from './modelMessages.ts';

/** The models of a plan, by kind. */
interface Made {
  readonly key: string;
  /** One object for all wishes of the plan, so that its models share what they begin with. */
  readonly plan: Plan;
  readonly made: Map<ModelKind, ModelResult>;
}

/** Of the last plan: a file is wanted of what was just looked at. */
let last: Made | null = null;

async function modelOf(plan: Plan, kind: ModelKind): Promise<ModelResult> {
  const kernel = await loadedKernel();
  const key = JSON.stringify(plan);
  if (last?.key !== key) last = { key, plan, made: new Map() };
  const { made } = last;
  const model = made.get(kind) ?? buildModel(kernel, last.plan, kind);
  made.set(kind, model);
  return model;
}

async function outcomeOf({ plan, kind, format }: ModelWish): Promise<ModelOutcome> {
  const result = await modelOf(plan, kind);
  if (!result.ok) return { outcome: 'none', why: result.why };
  const { model } = result;
  if (format) return { outcome: 'file', bytes: await modelFile(model, format) };
  const { size, volume, leftOut, mesh } = model;
  return { outcome: 'figures', figures: { size, volume, leftOut, triangles: mesh.triangles.length / 3 } };
}

function tell(id: number, made: ModelOutcome): void {
  const answer: ModelAnswer = { id, made };
  self.postMessage(answer, { transfer: made.outcome === 'file' ? [made.bytes.buffer] : [] });
}

self.addEventListener('message', ({ data }: MessageEvent<ModelRequest>) => {
  outcomeOf(data)
    .then((made) => tell(data.id, made))
    .catch(() => tell(data.id, { outcome: 'fault' }));
});
