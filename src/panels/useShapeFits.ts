import { useEffect, useState } from 'react';
import type { Plan } from '../core/plan/plan.ts';
import { type ShapeFit, searchFits } from '../core/plan/shapeFit.ts';
import { inSlices } from '../state/inSlices.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';

interface Found {
  readonly plan: Plan;
  readonly fits: readonly ShapeFit[];
  readonly done: boolean;
}

/** The best pose of each shape in this site, one after the other as they are found; anew when the plan has changed and the hand rests. */
export function useShapeFits(stores: PlanStores): Omit<Found, 'plan'> {
  const plan = usePlan(stores);
  const moving = useSelected(stores.document, (state) => state.gesture !== null);
  const [found, setFound] = useState<Found>({ plan, fits: [], done: false });

  useEffect(() => {
    if (moving) return;
    let fits: readonly ShapeFit[] = [];
    return inSlices(searchFits(plan), {
      each: (fit) => {
        if (!fit) return;
        fits = [...fits, fit];
        setFound({ plan, fits, done: false });
      },
      done: () => setFound({ plan, fits, done: true }),
    });
  }, [plan, moving]);

  return found.plan === plan ? found : { fits: [], done: false };
}
