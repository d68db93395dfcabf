import { memo } from 'react';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { presentRehearsal } from '../words/presentRehearsal.ts';
import { SpokenSentence } from './SpokenSentence.tsx';

/** The state of the rehearsal in one sentence. */
export const RehearseSentence = memo(function RehearseSentence({ stores }: { stores: PlanStores }) {
  const plan = usePlan(stores);
  const report = useSelected(stores.live, (state) => state.report);
  const moving = useSelected(stores.document, (state) => state.gesture !== null);
  return (
    <SpokenSentence
      {...presentRehearsal(plan, report)}
      moving={moving}
      rehearsal={report ? 'worked-out' : 'working'}
    />
  );
});
