import { useEffect, useState } from 'react';
import { type AdviceResult, searchAdvice } from '../core/plan/advice.ts';
import type { Plan } from '../core/plan/plan.ts';
import { evaluationOf } from '../state/evaluation.ts';
import { inSlices } from '../state/inSlices.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';

export interface AdviceState {
  readonly result: AdviceResult | null;
  /** It was found for another pose than the one on the table. */
  readonly stale: boolean;
}

/** What would mend the worst reading of the plan: looked for once a gesture rests, never while the hand moves. */
export function useAdvice(stores: PlanStores): AdviceState {
  const plan = usePlan(stores);
  const moving = useSelected(stores.document, (state) => state.gesture !== null);
  const [found, setFound] = useState<{ plan: Plan; result: AdviceResult } | null>(null);

  useEffect(() => {
    if (moving) return;
    return inSlices(searchAdvice(plan, evaluationOf(plan)), { done: (result) => setFound({ plan, result }) });
  }, [plan, moving]);

  return { result: found?.result ?? null, stale: found?.plan !== plan };
}
