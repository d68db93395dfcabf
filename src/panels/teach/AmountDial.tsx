import { type KeyboardEvent, type PointerEvent, useId, useRef } from 'react';
import type { Breaks } from '../../core/teaching/breaks.ts';
import { pair } from '../../marks/path.ts';
import type { TeachStores } from '../../state/teach.ts';
import { useSelected } from '../../state/useSelected.ts';
import { formatQuantity } from '../../words/format.ts';
import { say } from '../../words/sayTeach.ts';
import { amountAt, bandPath, bandsOf, DIAL, onDial, STRIPES, TICKS } from './dial.ts';
import { stepAmount } from './stepAmount.ts';

const percent = (amount: number): string => formatQuantity({ value: 100 * amount, unit: 'percent' });

/** The ring: where it is near, where beyond, and where it leaves the bone. */
function Bands({ breaks }: { breaks: Breaks }) {
  const clip = useId();
  const bands = bandsOf(breaks);
  const beyond = bands.find(({ mark }) => mark === 'beyond');
  const out = breaks.outside === null ? null : breaks.outside / 100;
  return (
    <>
      {bands.map(({ mark, from, to }) => (
        <path key={mark} className={`dial-${mark}`} d={bandPath(from, to)} data-band={mark} />
      ))}
      {beyond && (
        <>
          <clipPath id={clip}>
            <path d={bandPath(beyond.from, 1)} />
          </clipPath>
          <path className="dial-stripes" clipPath={`url(#${clip})`} d={STRIPES} />
          <path className="dial-rim" d={bandPath(beyond.from, 1)} />
        </>
      )}
      {out !== null && (
        <path
          className="dial-outside"
          d={`M${pair(onDial(out, DIAL.inner - 5))}L${pair(onDial(out, DIAL.outer))}`}
        />
      )}
    </>
  );
}

const LABELS = [0, 0.25, 0.5, 0.75, 1];

/** How near to the middle the hand begins, px: the number stands there. */
const FREE = 60;

/** The hand of the dial: a short arm with a ring at its end. */
function Arm({ amount }: { amount: number }) {
  const tip = onDial(amount, (DIAL.inner + DIAL.outer) / 2);
  return (
    <g className="dial-arm">
      <path d={`M${pair(onDial(amount, FREE))}L${pair(tip)}`} />
      <circle cx={tip.x} cy={tip.y} r="12" />
    </g>
  );
}

/** How much of a trajectory, on a half circle in ink: 0 is the plan, 100 its full size. A slider for the keys and for a screen reader. */
export function AmountDial({ stores, hidden }: { stores: TeachStores; hidden: boolean }) {
  const { live, found, player } = stores;
  const amount = useSelected(live, (state) => state.amount);
  const breaks = useSelected(found, (state) => state.breaks);
  const drawing = useRef<SVGSVGElement>(null);
  const held = useRef(false);

  const follow = (event: PointerEvent) => {
    const box = drawing.current?.getBoundingClientRect();
    if (!box) return;
    const size = DIAL.width / box.width;
    live.set({
      amount: amountAt({ x: (event.clientX - box.left) * size, y: (event.clientY - box.top) * size }),
    });
  };
  const begin = (event: PointerEvent<SVGSVGElement>) => {
    if (event.button !== 0) return;
    player.stop();
    held.current = true;
    event.currentTarget.setPointerCapture(event.pointerId);
    live.set({ dragging: 'amount' });
    follow(event);
  };
  const end = () => {
    if (!held.current) return;
    held.current = false;
    live.set({ dragging: null });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const next = stepAmount(event.key, event.shiftKey, live.getState().amount);
    if (next === null) return;
    event.preventDefault();
    player.stop();
    live.set({ amount: next });
  };

  return (
    <div
      className="dial"
      role="slider"
      tabIndex={0}
      aria-label={say('breaks.amount')}
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={Math.round(100 * amount)}
      aria-valuetext={percent(amount)}
      onKeyDown={onKeyDown}
    >
      <svg
        ref={drawing}
        viewBox={`0 0 ${DIAL.width} ${DIAL.height}`}
        aria-hidden="true"
        onPointerDown={begin}
        onPointerMove={(event) => held.current && follow(event)}
        onPointerUp={end}
        onPointerCancel={end}
        onLostPointerCapture={end}
      >
        <path className="dial-ring" d={bandPath(0, 1)} />
        {breaks && !hidden && <Bands breaks={breaks} />}
        <path className="dial-ticks" d={TICKS} />
        {LABELS.map((at) => {
          const { x, y } = onDial(at, DIAL.outer + 22);
          return (
            <text key={at} className="dial-label" x={x} y={y + 5}>
              {formatQuantity({ value: 100 * at, unit: 'count' })}
            </text>
          );
        })}
        <text className="dial-end" x={onDial(0, DIAL.inner).x - 10} y={DIAL.hub.y + 22}>
          {say('breaks.plan')}
        </text>
        <text className="dial-end" x={onDial(1, DIAL.inner).x + 10} y={DIAL.hub.y + 22}>
          {say('breaks.this')}
        </text>
        <Arm amount={amount} />
        <text className="dial-number" x={DIAL.hub.x} y={DIAL.hub.y - 18}>
          {percent(amount)}
        </text>
      </svg>
    </div>
  );
}
