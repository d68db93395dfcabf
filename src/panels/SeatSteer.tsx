import { STEER_TURNS } from '../core/seating/seat.ts';
import type { HandStores } from '../state/held.ts';
import { formatNumber, formatQuantity } from '../words/format.ts';
import { say } from '../words/saySeat.ts';
import { FreedomField } from './FreedomField.tsx';
import { TILT_FP, TILT_MD } from './freedoms.ts';
import { RailGroup } from './RailGroup.tsx';
import type { SeatPartProps } from './seatActs.ts';
import { sayDegrees } from './seatActs.ts';

/** A look at the direction while fingers can still steer it: how the implant leans, as two fields. */
export function SeatSteer({ now, seat }: SeatPartProps & { seat: HandStores }) {
  const { setting, state } = now;
  if (state.phase !== 'fingers' || state.turns >= STEER_TURNS) return null;
  return (
    <RailGroup heading={say('seat.steerHeading')} note={say('seat.steerNote')}>
      <FreedomField
        stores={seat}
        freedom={TILT_FP}
        name={say('rail.tiltFpName')}
        label={say('rail.tiltFp')}
      />
      <FreedomField
        stores={seat}
        freedom={TILT_MD}
        name={say('rail.tiltMdName')}
        label={say('rail.tiltMd')}
      />
      <p className="rail-note">
        {say('seat.steerRoom', {
          play: sayDegrees(setting.play),
          turns: formatNumber({ value: Math.round(100 * state.turns) / 100, unit: 'ratio' }),
          most: formatQuantity({ value: STEER_TURNS, unit: 'count' }),
        })}
      </p>
    </RailGroup>
  );
}
