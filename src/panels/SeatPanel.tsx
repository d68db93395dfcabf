import { seatAnew, seatNow } from '../core/plan/seat.ts';
import type { HandStores } from '../state/held.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/saySeat.ts';
import { RailGroup } from './RailGroup.tsx';
import { SeatBack } from './SeatBack.tsx';
import { SeatDrillFirst } from './SeatDrillFirst.tsx';
import { SeatEvent } from './SeatEvent.tsx';
import { SeatStart } from './SeatStart.tsx';
import { SeatSteer } from './SeatSteer.tsx';
import { SeatTurn } from './SeatTurn.tsx';
import { isStarted, type SeatPartProps } from './seatActs.ts';
import { WrenchFields } from './WrenchFields.tsx';
import './rail.css';
import './seat.css';

/** Words that change nothing but how it is looked at, and the way back to the beginning. */
function LookWords({ stores, now }: SeatPartProps) {
  const { document, live } = stores;
  const driverOff = useSelected(live, (state) => state.driverOff);
  const marks = useSelected(live, (state) => state.contactMarks);
  return (
    <>
      <div className="rail-words">
        <button type="button" className="rail-word" onClick={() => live.set({ driverOff: !driverOff })}>
          {say(driverOff ? 'seat.driverOn' : 'seat.driverOff')}
        </button>
        <button
          type="button"
          className="rail-word seat-toggle"
          aria-pressed={marks}
          onClick={() => live.set({ contactMarks: !marks })}
        >
          {say('seat.marks')}
        </button>
        <button
          type="button"
          className="rail-word"
          disabled={now.states.length === 1}
          onClick={() => document.edit(say('edit.seatAnew'), seatAnew)}
        >
          {say('seat.anew')}
        </button>
      </div>
      {marks && <p className="rail-note">{say('seat.marksKey')}</p>}
    </>
  );
}

/** The seating's rail: start of the thread, fingers, wrench, and the way back. */
export function SeatPanel({ stores }: { stores: HandStores }) {
  const { planned } = stores;
  const now = seatNow(usePlan(planned));
  if (!now) return <SeatDrillFirst stores={planned} />;
  const started = isStarted(now);
  const part = { stores: planned, now };
  const stopped = now.state.phase === 'stopped-at-max';
  return (
    <div className="rail seat">
      <SeatStart {...part} />
      {stopped && <SeatEvent {...part} />}
      {started && <SeatTurn {...part} />}
      {started && <SeatSteer {...part} seat={stores} />}
      {!stopped && <SeatEvent {...part} />}
      <RailGroup heading={say('seat.undoHeading')} note="">
        {started && <SeatBack {...part} />}
        <LookWords {...part} />
      </RailGroup>
      <WrenchFields {...part} />
    </div>
  );
}
