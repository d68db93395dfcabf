import { partTurn } from '../core/seating/turns.ts';
import { say } from '../words/saySeat.ts';
import type { SeatPartProps } from './seatActs.ts';
import { makeBackOut, makeTurn, sayDegrees, sayTurnDepth } from './seatActs.ts';

/** Of a round neck, degrees. */
const QUARTER = 90;

/** The ways back, with what they cost. */
export function SeatBack({ stores, now }: SeatPartProps) {
  const { shape } = now.setting;
  const part = partTurn(shape);
  const degrees = part?.degrees ?? QUARTER;
  const by = now.state.phase === 'fingers' ? 'fingers' : 'wrench';
  return (
    <>
      <div className="rail-words">
        <button type="button" className="rail-word" onClick={() => makeTurn(stores, by, -degrees)}>
          {say(part ? 'seat.partBack' : 'seat.quarterBack')}
        </button>
        <button type="button" className="rail-word" onClick={() => makeBackOut(stores)}>
          {say('seat.backOut')}
        </button>
      </div>
      <p className="rail-note">
        {say('seat.backCost', { degrees: sayDegrees(degrees), depth: sayTurnDepth(shape, degrees) })}
      </p>
    </>
  );
}
