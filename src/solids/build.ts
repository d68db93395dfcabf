import type { Plan } from '../core/plan/plan.ts';
import { dummyModel } from './dummy.ts';
import type { ModelKind, ModelResult } from './model.ts';
import { practiceModel } from './practice.ts';
import type { Kernel } from './shelf.ts';

/** A model of a plan, looked at as a solid before it is offered; else why there is none. */
export const buildModel = (kernel: Kernel, plan: Plan, kind: ModelKind): ModelResult =>
  kind === 'implant' || kind === 'plain' ? dummyModel(kernel, plan, kind) : practiceModel(kernel, plan, kind);
