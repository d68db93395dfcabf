import { memo, useRef } from 'react';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { useEvaluation } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { presentSummary } from '../words/presentSummary.ts';
import { say } from '../words/say.ts';
import { AdviceLine } from './AdviceLine.tsx';
import './sentence.css';

/**
 * The state of the pose in one sentence. The drawn one follows the hand; the spoken one stands still while a
 * gesture goes on and changes when it ends, so that a drag is told of once.
 */
export const Sentence = memo(function Sentence({ stores }: { stores: PlanStores }) {
  const evaluation = useEvaluation(stores);
  const moving = useSelected(stores.document, (state) => state.gesture !== null);
  const { mark, lead, rest } = presentSummary(evaluation);
  const text = `${lead} ${rest}`;
  const spoken = useRef(text);
  if (!moving) spoken.current = text;

  return (
    <>
      <div className="sentence-drawn" data-summary={mark} data-moving={moving}>
        <StatusGlyph mark={mark} size={28} />
        <div>
          <p aria-hidden="true">
            <strong>{lead}</strong> {rest}
          </p>
          <AdviceLine stores={stores} />
        </div>
      </div>
      <p className="unseen" role="status" aria-label={say('sentence.label')}>
        {spoken.current}
      </p>
    </>
  );
});
