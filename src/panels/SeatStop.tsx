import { memo } from 'react';
import { type SeatNow, seatNow } from '../core/plan/seat.ts';
import type { TorqueEstimate } from '../core/seating/torque.ts';
import { type Mark, StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import {
  presentContact,
  presentFinish,
  presentLadder,
  presentPlay,
  presentQuestions,
  type SeatAnswer,
} from '../words/presentSeating.ts';
import { presentTorque, presentTorquePage } from '../words/presentTorque.ts';
import { say } from '../words/saySeat.ts';
import { SeatLadder } from './SeatLadder.tsx';
import './section.css';
import './seat.css';

/** No answer: a ring. Not right: still to be done, or, where the thread takes no more or stands too deep, beyond. */
function markOf({ key, right }: SeatAnswer, { state, finish }: SeatNow): Mark {
  if (right === null) return 'none';
  if (right) return 'within';
  const over = state.phase === 'stopped-at-max' || key === 'torque' || finish.code === 'too-deep';
  return over ? 'beyond' : 'near';
}

/** The three questions of a stop, side by side. */
function Questions({ now }: { now: SeatNow }) {
  return (
    <ul className="seat-questions" aria-label={say('seat.stopHeading')}>
      {presentQuestions(now.setting, now.state).map((one) => (
        <li key={one.key} data-question={one.key}>
          <StatusGlyph mark={markOf(one, now)} size={22} />
          <div>
            <h3>
              {one.question} <b>{one.answer}</b>
            </h3>
            <p>{one.detail}</p>
          </div>
        </li>
      ))}
    </ul>
  );
}

/** The torque as an engineering model has it: a range and a caution, never a status. */
function Estimate({ estimate }: { estimate: TorqueEstimate }) {
  const { label, range, parts, note } = presentTorque(estimate);
  return (
    <div className="seat-estimate">
      <h3>
        {label} <span className="caption">{say('seat.estimateHeading')}</span>
      </h3>
      <p>
        <b data-estimate>{range}</b> {parts}
      </p>
      <p className="rail-note">{note}</p>
      <details>
        <summary>{say('seat.torqueMore')}</summary>
        {presentTorquePage(estimate.assumptions).map(({ key, heading, text }) => (
          <section key={key} aria-label={heading}>
            <h4>{heading}</h4>
            {text.map((paragraph) => (
              <p key={paragraph}>{paragraph}</p>
            ))}
          </section>
        ))}
      </details>
    </div>
  );
}

/** A stop of the seating: the three questions, the ladder, the contact with the hole, the estimate of the torque. */
export const SeatStop = memo(function SeatStop({ stores }: { stores: PlanStores }) {
  const now = seatNow(usePlan(stores));
  if (!now) return <p className="seat-none">{say('seat.drillFirst')}</p>;
  const { setting, finish, contact, play, estimate, state, rungs } = now;
  const [open] = presentLadder(setting, rungs);
  return (
    <div className="seat-stop">
      <Questions now={now} />
      <div className="seat-figures">
        <div>
          <h3>{say('seat.ladderHeading')}</h3>
          <SeatLadder now={now} />
        </div>
        <div>
          <p className="seat-finish">{presentFinish(setting, finish)}</p>
          {!state.known && <p className="rail-note">{open}</p>}
          <h3>{say('seat.contactHeading')}</h3>
          <dl className="seat-contact">
            {presentContact(contact).map(({ key, label, value }) => (
              <div key={key} data-contact-row={key}>
                <dt>{label}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
          <p className="rail-note">{presentPlay(play)}</p>
        </div>
      </div>
      <Estimate estimate={estimate} />
    </div>
  );
});
