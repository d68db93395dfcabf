import { useState } from 'react';
import { rehearsalOf } from '../core/plan/inHand.ts';
import { POSE_RANGE } from '../core/plan/ranges.ts';
import { startSeating } from '../core/plan/seat.ts';
import { rollAfter, startTurn } from '../core/seating/turns.ts';
import { usePlan } from '../state/usePlan.ts';
import { formatQuantity } from '../words/format.ts';
import { presentStart } from '../words/presentSeating.ts';
import { say } from '../words/saySeat.ts';
import { RailGroup } from './RailGroup.tsx';
import { SpinField } from './SpinField.tsx';
import { isStarted, type SeatPartProps } from './seatActs.ts';

const tidy = (value: number): number => Math.round(value * 10) / 10 + 0;

/** Where the mark points when the thread is set to the hole; a start that was backed out of says how to set it better. */
export function SeatStart({ stores, now }: SeatPartProps) {
  const { document } = stores;
  const plan = usePlan(stores);
  const { setting, state } = now;
  const [asked, setAsked] = useState<number | null>(null);
  const last = rehearsalOf(plan).seating.findLast((act) => act.kind === 'start')?.roll ?? null;
  const roll = asked ?? last ?? tidy(plan.pose.roll);
  const hint = presentStart(setting, state.lastRung);
  if (isStarted(now)) {
    return (
      <RailGroup heading={say('seat.startHeading')} note={say('seat.startNote')}>
        <p className="rail-note">
          {say('seat.startedAt', {
            roll: formatQuantity({ value: last ?? roll, unit: 'deg', signed: true }),
          })}
        </p>
      </RailGroup>
    );
  }
  const better = () => {
    if (state.lastRung === null || last === null) return;
    const by = startTurn(setting.shape, state.lastRung);
    setAsked(tidy(rollAfter(setting.tooth, last, by)));
  };
  return (
    <RailGroup heading={say('seat.startHeading')} note={say('seat.startNote')}>
      <SpinField
        name={say('seat.markToName')}
        label={say('seat.markTo')}
        value={roll}
        unit="deg"
        least={POSE_RANGE.roll[0]}
        most={POSE_RANGE.roll[1]}
        step={5}
        page={30}
        signed
        onCommit={setAsked}
      />
      <button
        type="button"
        className="seat-go"
        onClick={() => document.edit(say('edit.seatStart'), (before) => startSeating(before, roll))}
      >
        {say('seat.begin')}
      </button>
      {hint !== '' && (
        <>
          <p className="rail-note">{hint}</p>
          {last !== null && (
            <button type="button" className="rail-word" onClick={better}>
              {say('seat.startHint')}
            </button>
          )}
        </>
      )}
    </RailGroup>
  );
}
