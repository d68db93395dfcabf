import { useMemo } from 'react';
import { withKept } from '../core/plan/compare.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { evaluationOf } from '../state/evaluation.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';

/** The kept pose on the site as it is now, evaluated; null where none is kept. Not evaluated again while only the pose moves. */
export function useKept({ document, session }: PlanStores): Evaluation | null {
  const kept = useSelected(session, (state) => state.kept);
  const site = useSelected(document, ({ plan }) => plan.site);
  const fixing = useSelected(document, ({ plan }) => plan.fixing);
  const limits = useSelected(document, ({ plan }) => plan.limits);
  const crestMargin = useSelected(document, ({ plan }) => plan.crestMargin);
  return useMemo(() => {
    if (!kept) return null;
    const { plan } = document.getState();
    return evaluationOf(withKept({ ...plan, site, fixing, limits, crestMargin }, kept));
  }, [kept, site, fixing, limits, crestMargin, document]);
}
