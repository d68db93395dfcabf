import type { Plan } from '../core/plan/plan.ts';
import type { ModelFormat } from '../io/modelFormats.ts';
import type { ModelKind, NoModel } from '../solids/model.ts';
import type { ModelFigures } from '../words/sayModel.ts';

/** A model of a plan is wanted: its figures, or with a format its file. */
export interface ModelWish {
  readonly plan: Plan;
  readonly kind: ModelKind;
  readonly format: ModelFormat | null;
}

export interface ModelRequest extends ModelWish {
  readonly id: number;
}

/** A model's figures or its file once it has been found to be a solid; why there is none; or a fault of the program. */
export type ModelOutcome =
  | { readonly outcome: 'figures'; readonly figures: ModelFigures }
  | { readonly outcome: 'file'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly outcome: 'none'; readonly why: NoModel }
  | { readonly outcome: 'fault' };

export interface ModelAnswer {
  readonly id: number;
  readonly made: ModelOutcome;
}
