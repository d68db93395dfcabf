import type { SeatNow } from '../core/plan/seat.ts';
import type { Rung } from '../core/seating/finish.ts';
import { rungOf } from '../core/seating/ladder.ts';
import { toleranceOf } from '../core/seating/seat.ts';
import { AXIS, dashed, HIDDEN } from '../marks/dash.ts';
import { formatQuantity } from '../words/format.ts';
import { presentLadder } from '../words/presentSeating.ts';
import { say } from '../words/saySeat.ts';
import { sayDegrees } from './seatActs.ts';

const WIDTH = 214;
const HEIGHT = 128;
/** Height of the planned level, and of one rung, px. */
const PLAN = 86;
const STEP = 17;
const TOP = 18;
const [LEFT, RIGHT] = [62, 106];
/** A round neck has no rungs: what stands for one on the scale, mm. */
const ROUND = 0.2;

const line = (y: number, from: number = LEFT, to: number = RIGHT) => [
  { x: from, y },
  { x: to, y },
];

/** A rung with the degrees to it; the best one strong. */
function RungLine({ rung, y, best }: { rung: Rung; y: number; best: boolean }) {
  const { degrees, blocked } = rung;
  return (
    <g data-rung={best ? 'best' : blocked ? 'blocked' : 'left'}>
      {blocked ? (
        <path className="rung" d={dashed(line(y), HIDDEN)} />
      ) : (
        <path className={best ? 'rung rung-best' : 'rung'} d={`M${LEFT} ${y}H${RIGHT}`} />
      )}
      {best && <circle className="rung-knob" cx={RIGHT} cy={y} r="3.5" />}
      <text className={best ? 'drawing-figure' : 'drawing-word'} x={RIGHT + 9} y={y + 4.5}>
        {degrees === 0
          ? say('seat.ladderNow')
          : blocked
            ? say('seat.ladderPast', { degrees: sayDegrees(degrees) })
            : sayDegrees(degrees)}
      </text>
    </g>
  );
}

/** The ladder about the planned level: rungs left, what counts as right, where the shoulder stands. Its height is open before the first stop. */
export function SeatLadder({ now }: { now: SeatNow }) {
  const { setting, state, rungs, finish } = now;
  const rung = rungOf(setting.shape);
  const scale = STEP / (rung ?? ROUND);
  const yAt = (above: number): number => PLAN - above * scale;
  const shown = rungs.filter(({ above }) => yAt(above) >= TOP + 13 && yAt(above) <= HEIGHT - 6);
  const reach = toleranceOf(setting) * scale;
  const here = yAt(state.above);
  const beyond = here < TOP;
  const y = Math.min(HEIGHT - 4, Math.max(TOP, here));
  const unknown = rung !== null && !state.known;
  const label = presentLadder(setting, shown).join('; ');
  return (
    <svg
      className="drawing seat-ladder"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={say('seat.ladderLabel', { rungs: label })}
    >
      <rect
        className={unknown ? 'ladder-open' : 'ladder-band'}
        x={LEFT}
        y={PLAN - reach}
        width={RIGHT - LEFT}
        height={2 * reach}
      />
      {unknown && (
        <path
          className="rung"
          data-ladder="open"
          d={dashed(line(PLAN - reach), HIDDEN) + dashed(line(PLAN + reach), HIDDEN)}
        />
      )}
      <path className="axis" d={dashed(line(PLAN, 34, RIGHT + 6), AXIS)} />
      {shown.map((one) => (
        <RungLine key={one.parts} rung={one} y={yAt(one.above)} best={one === finish.best} />
      ))}
      {unknown && (
        <text className="drawing-word" x={RIGHT + 9} y={PLAN + 4.5}>
          {say('seat.ladderBand', {
            half: formatQuantity({ value: (rung ?? 0) / 2, unit: 'mm', exact: true }),
          })}
        </text>
      )}
      <text className="drawing-word" x="0" y={PLAN + 4.5}>
        {say('seat.ladderPlan')}
      </text>
      <path className="shoulder" d={`M${LEFT - 6} ${y}H${RIGHT}`} />
      <path className="shoulder-tip" d={`M${LEFT - 2} ${y}l-9 -5v10z`} />
      {beyond && <path className="rung" d={`M${LEFT + 22} ${TOP - 5}v-12m-4 4l4 -4l4 4`} />}
      {(beyond || Math.abs(y - PLAN) > 14) && (
        <text className="drawing-word" x="0" y={y + 4.5}>
          {say('seat.ladderHere')}
        </text>
      )}
      {beyond && (
        <text className="drawing-figure" x={RIGHT + 9} y={y + 4.5}>
          {formatQuantity({ value: state.above, unit: 'mm', signed: true })}
        </text>
      )}
    </svg>
  );
}
