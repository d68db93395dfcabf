import { useEffect, useState } from 'react';
import type { Plan } from '../../core/plan/plan.ts';
import { type HandOutlook, searchOutlook } from '../../core/spread/handOutlook.ts';
import type { Hand } from '../../core/spread/straying.ts';
import { inSlices } from '../../state/inSlices.ts';
import type { PlanStores } from '../../state/stores.ts';
import { usePlan } from '../../state/usePlan.ts';
import { useSelected } from '../../state/useSelected.ts';

interface Found extends HandOutlook {
  readonly plan: Plan;
  readonly hand: Hand;
}

/** What a hand makes of the plan, as it is found in idle time; anew when plan or hand has changed and nothing moves. Null before the first word. */
export function useOutlook(stores: PlanStores, hand: Hand): HandOutlook | null {
  const plan = usePlan(stores);
  const moving = useSelected(stores.document, (state) => state.gesture !== null);
  const [found, setFound] = useState<Found | null>(null);

  useEffect(() => {
    if (moving) return;
    const show = (outlook: HandOutlook) => setFound({ ...outlook, plan, hand });
    return inSlices(searchOutlook(plan, hand), { each: (outlook) => outlook && show(outlook), done: show });
  }, [plan, hand, moving]);

  return found?.plan === plan && found.hand === hand ? found : null;
}
