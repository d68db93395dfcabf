import { memo, useRef } from 'react';
import { seatNow } from '../core/plan/seat.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { presentSeatSentence } from '../words/presentSeatSentence.ts';
import { say } from '../words/say.ts';
import './sentence.css';

/** The state of the seating in one sentence; the spoken one stands still while a gesture goes on. */
export const SeatSentence = memo(function SeatSentence({ stores }: { stores: PlanStores }) {
  const { mark, lead, rest, mend } = presentSeatSentence(seatNow(usePlan(stores)));
  const moving = useSelected(stores.document, (state) => state.gesture !== null);
  const text = `${lead} ${rest} ${mend}`;
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
