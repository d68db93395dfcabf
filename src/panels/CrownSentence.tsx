import { memo } from 'react';
import { fixingAnswer } from '../core/plan/crownAnswer.ts';
import type { PlanStores } from '../state/stores.ts';
import { useEvaluation } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { presentAnswer, presentGrinding } from '../words/presentAnswer.ts';
import { SpokenSentence } from './SpokenSentence.tsx';

/** Whether the pose suits the way of fixing the crown, where its axis leads and how deep its shoulder lies, in one breath. */
export const CrownSentence = memo(function CrownSentence({ stores }: { stores: PlanStores }) {
  const moving = useSelected(stores.document, (state) => state.gesture !== null);
  const evaluation = useEvaluation(stores);
  const answer = fixingAnswer(evaluation);
  const { mark, lead, axis, depth } = presentAnswer(answer);
  const thin = answer.lacking !== null && answer.depth.status === 'within';
  const mend = (thin && presentGrinding(evaluation)) || depth;
  return <SpokenSentence mark={mark} lead={lead} rest={axis} mend={mend} moving={moving} />;
});
