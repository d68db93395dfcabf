import type { WrenchScript } from '../core/drilling/rehearsal.ts';
import { setWrench } from '../core/plan/seat.ts';
import type { SeatSetting } from '../core/seating/seat.ts';
import { formatNumber, formatQuantity } from '../words/format.ts';
import { say } from '../words/saySeat.ts';
import { SpinField } from './SpinField.tsx';
import type { SeatPartProps } from './seatActs.ts';

/** Points of a script that is begun here: share of the way up to the bite, share of the maximum. Invented; the teacher sets them. */
const BEGIN = [
  [1, 0.1],
  [0.5, 0.25],
  [0.15, 0.5],
  [0, 0.8],
] as const;

const tidy = (value: number): number => Math.round(value * 10) / 10 + 0;

const begun = ({ bite, shape }: SeatSetting): WrenchScript => ({
  points: BEGIN.map(([way, share]) => ({
    above: tidy(way * bite),
    torque: Math.round(share * shape.maxTorque),
  })),
});

type Points = WrenchScript['points'];

/** A script begun here ends at the planned level and begins at the bite: these two levels stay. */
function roleOf(points: Points, i: number): 'seat.scriptBite' | 'seat.scriptPlanned' | 'seat.scriptBetween' {
  if (i === points.length - 1 && points[i].above === 0) return 'seat.scriptPlanned';
  return i === 0 ? 'seat.scriptBite' : 'seat.scriptBetween';
}

interface PointProps {
  at: Points[number];
  role: ReturnType<typeof roleOf>;
  index: number;
  onChange: (change: Partial<Points[number]>) => void;
}

function PointRow({ at: { above, torque }, role, index, onChange }: PointProps) {
  const point = formatNumber({ value: index + 1, unit: 'count' });
  return (
    <div className="seat-point">
      <span>{say(role)}</span>
      {role === 'seat.scriptBetween' ? (
        <SpinField
          name={say('seat.scriptAboveName', { point })}
          label=""
          value={above}
          unit="mm"
          least={-5}
          most={25}
          step={0.1}
          page={1}
          onCommit={(next) => onChange({ above: next })}
        />
      ) : (
        <b>{formatQuantity({ value: above, unit: 'mm' })}</b>
      )}
      <SpinField
        name={say('seat.scriptTorqueName', { point })}
        label=""
        value={torque}
        unit="Ncm"
        least={0}
        most={120}
        step={1}
        page={5}
        onCommit={(next) => onChange({ torque: next })}
      />
    </div>
  );
}

/** The wrench's reading by depth, as the teacher scripts it; without a script it reads nothing. */
export function WrenchFields({ stores, now }: SeatPartProps) {
  const { document } = stores;
  const { wrench, shape } = now.setting;
  const write = (script: WrenchScript | null) =>
    document.edit(say(script ? 'edit.script' : 'edit.scriptDrop'), (plan) => setWrench(plan, script));
  const points = wrench?.points ?? [];
  const change = (index: number, part: Partial<Points[number]>) =>
    write({ points: points.map((point, i) => (i === index ? { ...point, ...part } : point)) });
  return (
    <details className="rail-group seat-script">
      <summary>
        {say('seat.script')} <span className="caption">{say('seat.scriptNote')}</span>
      </summary>
      {points.length > 0 && (
        <div className="seat-point caption" aria-hidden="true">
          <span />
          <span>{say('seat.scriptAbove')}</span>
          <span>{say('seat.scriptTorque')}</span>
        </div>
      )}
      {points.map((at, index) => (
        <PointRow
          // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the script
          key={index}
          at={at}
          role={roleOf(points, index)}
          index={index}
          onChange={(part) => change(index, part)}
        />
      ))}
      <p className="rail-note">
        {wrench
          ? say('seat.scriptHint', { max: formatQuantity({ value: shape.maxTorque, unit: 'Ncm' }) })
          : say('seat.scriptNone')}
      </p>
      <button type="button" className="rail-word" onClick={() => write(wrench ? null : begun(now.setting))}>
        {say(wrench ? 'seat.scriptDrop' : 'seat.scriptMake')}
      </button>
    </details>
  );
}
