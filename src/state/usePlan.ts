import type { Evaluation } from '../core/plan/evaluate.ts';
import type { Plan } from '../core/plan/plan.ts';
import { evaluationOf } from './evaluation.ts';
import type { PlanStores } from './stores.ts';
import { useSelected } from './useSelected.ts';

/** The plan as it is now, in the middle of a gesture too. */
export const usePlan = ({ document }: PlanStores): Plan => useSelected(document, (state) => state.plan);

/** Everything read off the plan as it is now. */
export const useEvaluation = ({ document }: PlanStores): Evaluation =>
  useSelected(document, (state) => evaluationOf(state.plan));
