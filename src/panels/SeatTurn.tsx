import { useState } from 'react';
import { FINGER_TORQUE, type SeatPhase, toleranceOf } from '../core/seating/seat.ts';
import { formatQuantity } from '../words/format.ts';
import { presentLevel } from '../words/presentSeating.ts';
import { say } from '../words/saySeat.ts';
import { RailGroup } from './RailGroup.tsx';
import type { SeatPartProps } from './seatActs.ts';
import { makeTurn, sayDegrees, sayTurnDepth, type TurnedBy, turnChoices } from './seatActs.ts';

const HANDS = ['fingers', 'wrench'] as const satisfies readonly TurnedBy[];

/** What turns the implant unless another was chosen: fingers until they end or the wrench was taken. */
const usual = ({ state: { phase, code } }: SeatPartProps['now']): TurnedBy =>
  phase === 'fingers' && code !== 'fingers-at-limit' ? 'fingers' : 'wrench';

/** Straight to the rung that is best, by the degrees that the ladder says. */
function BestRung({ stores, now, by }: SeatPartProps & { by: TurnedBy }) {
  const { setting, finish, state } = now;
  const { best, degrees } = finish;
  if (!best || !degrees || finish.code === 'too-deep' || state.phase === 'stopped-at-max') return null;
  return (
    <button type="button" className="seat-go" onClick={() => makeTurn(stores, by, degrees)}>
      {say(setting.shape.index === 0 ? 'seat.toBestRound' : 'seat.toBest')}
      <small>
        {say('seat.toBestDetail', {
          degrees: sayDegrees(degrees),
          level: presentLevel(best.above, toleranceOf(setting)),
        })}
      </small>
    </button>
  );
}

/** Turning in, by fingers first, then by the wrench: whole turns, parts of one, part-turns of the neck. */
export function SeatTurn({ stores, now }: SeatPartProps) {
  const { setting, state } = now;
  const [asked, setAsked] = useState<{ by: TurnedBy; phase: SeatPhase } | null>(null);
  const by = asked?.phase === state.phase ? asked.by : usual(now);
  const stopped = state.phase === 'stopped-at-max';
  return (
    <RailGroup
      heading={say('seat.turnHeading')}
      note={
        // biome-ignore lint/a11y/useSemanticElements: two words in a heading's line, not a form
        <span className="seat-hands" role="group" aria-label={say('seat.by')}>
          {HANDS.map((one) => (
            <button
              key={one}
              type="button"
              aria-pressed={one === by}
              onClick={() => setAsked({ by: one, phase: state.phase })}
            >
              {say(`seat.by.${one}`)}
            </button>
          ))}
        </span>
      }
    >
      <div className="seat-turns">
        {turnChoices(setting.shape).map(({ key, degrees }) => (
          <button key={key} type="button" disabled={stopped} onClick={() => makeTurn(stores, by, degrees)}>
            {say(`seat.turn.${key}`)}
            <small>
              {key === 'part'
                ? say('seat.turnPartDetail', {
                    degrees: sayDegrees(degrees),
                    depth: sayTurnDepth(setting.shape, degrees),
                  })
                : say('seat.turnDetail', { depth: sayTurnDepth(setting.shape, degrees) })}
            </small>
          </button>
        ))}
      </div>
      <BestRung stores={stores} now={now} by={by} />
      <p className="rail-note">
        {setting.wrench
          ? by === 'fingers' &&
            say('seat.fingersEnd', { torque: formatQuantity({ value: FINGER_TORQUE, unit: 'Ncm' }) })
          : say('seat.fingersFree')}
      </p>
    </RailGroup>
  );
}
