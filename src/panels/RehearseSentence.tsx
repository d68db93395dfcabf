import { memo, useRef } from 'react';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { presentRehearsal } from '../words/presentRehearsal.ts';
import { say } from '../words/say.ts';
import './sentence.css';

/** The state of the rehearsal in one sentence; the spoken one stands still while a gesture goes on. */
export const RehearseSentence = memo(function RehearseSentence({ stores }: { stores: PlanStores }) {
  const plan = usePlan(stores);
  const report = useSelected(stores.live, (state) => state.report);
  const moving = useSelected(stores.document, (state) => state.gesture !== null);
  const { mark, lead, rest, mend } = presentRehearsal(plan, report);
  const text = `${lead} ${rest} ${mend}`;
  const spoken = useRef(text);
  if (!moving) spoken.current = text;
  return (
    <>
      <div
        className="sentence-drawn"
        data-summary={mark}
        data-moving={moving}
        data-rehearsal={report ? 'worked-out' : 'working'}
      >
        <StatusGlyph mark={mark} size={28} />
        <div>
          <p aria-hidden="true">
            <strong>{lead}</strong> {rest}
          </p>
          <p className="advice-line" aria-hidden="true">
            {mend}
          </p>
        </div>
      </div>
      <p className="unseen" role="status" aria-label={say('sentence.label')}>
        {spoken.current}
      </p>
    </>
  );
});
