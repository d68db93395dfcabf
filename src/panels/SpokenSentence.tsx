import { useRef } from 'react';
import { type Mark, StatusGlyph } from '../marks/StatusGlyph.tsx';
import { say } from '../words/say.ts';
import './sentence.css';

interface SpokenSentenceProps {
  mark: Mark;
  lead: string;
  rest: string;
  mend: string;
  /** A gesture goes on: the spoken sentence stands still until it has ended. */
  moving: boolean;
  /** Whether what it tells of is worked out, where that takes its time. */
  rehearsal?: 'worked-out' | 'working';
}

/** A state in one sentence and what would mend it: drawn, and spoken once a gesture has ended. */
export function SpokenSentence({ mark, lead, rest, mend, moving, rehearsal }: SpokenSentenceProps) {
  const text = `${lead} ${rest} ${mend}`;
  const spoken = useRef(text);
  if (!moving) spoken.current = text;
  return (
    <>
      <div className="sentence-drawn" data-summary={mark} data-moving={moving} data-rehearsal={rehearsal}>
        <StatusGlyph mark={mark} size={28} />
        <div>
          <p aria-hidden="true">
            <strong>{lead}</strong> {rest}
          </p>
          {mend !== '' && (
            <p className="advice-line" aria-hidden="true">
              {mend}
            </p>
          )}
        </div>
      </div>
      <p className="unseen" role="status" aria-label={say('sentence.label')}>
        {spoken.current}
      </p>
    </>
  );
}
