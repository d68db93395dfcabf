import { useThree } from '@react-three/fiber';
import { useLayoutEffect } from 'react';
import type { Evaluation } from '../core/plan/evaluate.ts';
import type { Plan } from '../core/plan/plan.ts';
import { evaluationOf } from '../state/evaluation.ts';
import type { PlanStores } from '../state/stores.ts';

/** Calls `apply` with the evaluation of the plan, now and at every change, past React's state, and asks for a frame. `apply` is stable. */
export function useEachPlan({ document }: PlanStores, apply: (evaluation: Evaluation) => void): void {
  const invalidate = useThree((three) => three.invalidate);
  useLayoutEffect(() => {
    let shown: Plan | null = null;
    const show = () => {
      const { plan } = document.getState();
      if (plan === shown) return;
      shown = plan;
      apply(evaluationOf(plan));
      invalidate();
    };
    show();
    return document.subscribe(show);
  }, [document, apply, invalidate]);
}
