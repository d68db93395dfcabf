import { toolOf } from '../core/plan/inHand.ts';
import { backOutAndTake, mendingTool } from '../core/plan/seatMend.ts';
import type { StopCause } from '../core/seating/hindrance.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { presentSeatEvent } from '../words/presentSeating.ts';
import { say } from '../words/saySeat.ts';
import { sayTool } from '../words/sayTool.ts';
import { RailGroup } from './RailGroup.tsx';
import type { SeatPartProps } from './seatActs.ts';
import { makeBackOut } from './seatActs.ts';

const MEND = {
  'neck-uncut': 'seat.deepenNeck',
  'hole-short': 'seat.deepenHole',
  'hard-bone': 'seat.widen',
} as const satisfies Record<StopCause['reason'], string>;

/** Backs out and goes to the rehearsal with the tool in the hand that takes the hindrance away. */
function MendButton({ stores, cause }: { stores: PlanStores; cause: StopCause }) {
  const { document, session } = stores;
  const plan = usePlan(stores);
  const ref = mendingTool(plan, cause.reason);
  const taken = ref && toolOf(plan, ref);
  if (!ref || !taken)
    return <p className="rail-note">{say(cause.reason === 'hard-bone' ? 'seat.noWider' : 'seat.noTool')}</p>;
  const tool = sayTool(taken);
  const mend = () => {
    document.edit(say('edit.backOutTake', { tool }), (before) => backOutAndTake(before, ref));
    session.set({ place: 'rehearse' });
  };
  return (
    <button type="button" className="seat-mend" onClick={mend}>
      {say(MEND[cause.reason], { tool })}
    </button>
  );
}

/** What the last act came to; at the maximum, why, and the ways out. */
export function SeatEvent({ stores, now }: SeatPartProps) {
  const { setting, state } = now;
  const { cause } = state;
  return (
    <RailGroup heading={say('seat.eventHeading')} note={say(`seat.phase.${state.phase}`)}>
      <div className={cause ? 'seat-event seat-stopped' : 'seat-event'} data-seat-code={state.code}>
        {cause && <StatusGlyph mark="beyond" size={22} />}
        <p aria-live="polite">{presentSeatEvent(setting, state)}</p>
      </div>
      {cause && (
        <>
          <button type="button" className="seat-go" onClick={() => makeBackOut(stores)}>
            {say('seat.backOut')}
          </button>
          <MendButton stores={stores} cause={cause} />
        </>
      )}
    </RailGroup>
  );
}
