import type { PointerEvent } from 'react';
import { type Point, polyline, px } from '../marks/path.ts';
import { Tag } from '../marks/Tag.tsx';
import { say } from '../words/say.ts';
import type { HandleDrawing } from './drawing.ts';
import type { HandleId } from './handles.ts';

export type Can = 'all' | 'hold' | 'steer' | 'none';

interface HandlesProps {
  drawing: HandleDrawing;
  /** Type size of the tag, px. */
  tagSize: number;
  /** Under the pointer or in focus, and held. */
  hover: string | null;
  dragging: string | null;
  /** What can be done with what is held: all; a tool has no mark to turn; an implant in its thread is only steered; one gone wrong is only looked at. */
  can: Can;
  /** The arc of the mesiodistal tilt is drawn instead of the faciopalatal one. */
  mesial: boolean;
  /** Number on the tag at the arc, or none. */
  tilt: { readonly number: string; readonly words: string } | null;
  onGrip: (id: HandleId, event: PointerEvent<SVGElement>) => void;
  onHover: (id: HandleId | null) => void;
}

const away = (from: Point, to: Point, by: number): Point => {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: to.x + (by * (to.x - from.x)) / length, y: to.y + (by * (to.y - from.y)) / length };
};

/** Filled arrowhead at `tip`, coming from `from`, 11 × 9 px. */
function arrowhead(from: Point, tip: Point): string {
  const back = away(from, tip, -11);
  const length = Math.hypot(tip.x - from.x, tip.y - from.y) || 1;
  const n = { x: (-(tip.y - from.y) / length) * 4.5, y: ((tip.x - from.x) / length) * 4.5 };
  return polyline([tip, { x: back.x + n.x, y: back.y + n.y }, { x: back.x - n.x, y: back.y - n.y }], true);
}

/** A tick of 14 px across the end of a bar. */
function tick(from: Point, to: Point): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const n = { x: (-(to.y - from.y) / length) * 7, y: ((to.x - from.x) / length) * 7 };
  return polyline([
    { x: to.x + n.x, y: to.y + n.y },
    { x: to.x - n.x, y: to.y - n.y },
  ]);
}

interface GripProps extends Pick<HandlesProps, 'hover' | 'dragging' | 'onGrip' | 'onHover'> {
  id: HandleId;
  at: Point;
  /** More to hold: a fat invisible stroke. */
  stroke?: string;
  /** Ink lines and filled shapes. */
  lines: string;
  solid?: string;
}

/** One handle: ink on a casing of the paper, and an invisible target that is large enough for a finger. */
function Grip({ id, at, stroke, lines, solid, hover, dragging, onGrip, onHover }: GripProps) {
  const state = dragging === id ? ' held' : dragging ? ' idle' : hover === id ? ' lit' : '';
  const events = {
    onPointerDown: (event: PointerEvent<SVGElement>) => onGrip(id, event),
    onPointerEnter: () => onHover(id),
    onPointerLeave: () => onHover(null),
  };
  return (
    <g className={`handle${state}`}>
      <path className="ink-casing" d={lines + (solid ?? '')} />
      <path className="ink-line" d={lines} />
      {solid && <path className="solid" d={solid} />}
      {stroke && <path className="reach" d={stroke} {...events} />}
      <circle className="target" cx={px(at.x)} cy={px(at.y)} data-handle={id} {...events} />
    </g>
  );
}

interface LetterProps {
  letter: string;
  at: Point;
}

const Letter = ({ letter, at }: LetterProps) => (
  <text className="handle-letter" x={px(at.x)} y={px(at.y + 6)}>
    {letter}
  </text>
);

/** Handles in ink: bars shift, the arc tilts about its pivot, the screw arrow advances and turns. */
export function Handles({ drawing: d, tagSize, can, mesial, tilt, ...rest }: HandlesProps) {
  const bar = ([a, b]: readonly [Point, Point]) => polyline([a, b]) + tick(a, b) + tick(b, a);
  const arc = mesial ? d.mesialArc : d.facialArc;
  const [first, second] = [arc[0], arc[1]];
  const [last, before] = [arc[arc.length - 1], arc[arc.length - 2]];
  const head = d.ring[d.ring.length - 1];
  const [up, down] = d.advance;
  const { x, y } = d.grips.shift;
  const knob = d.grips.tilt;
  const square = `M${px(x - 5.5)} ${px(y - 5.5)}h11v11h-11z`;
  const ball = `M${px(knob.x - 6)} ${px(knob.y)}a6 6 0 1 0 12 0a6 6 0 1 0-12 0z`;
  const left = first.x < last.x ? first : last;
  const { pivot } = d;
  return (
    <g className="handles">
      <path
        className="ink-line pivot"
        d={`M${px(pivot.x - 6)} ${px(pivot.y)}h12M${px(pivot.x)} ${px(pivot.y - 6)}v12`}
      />
      <Grip
        id={mesial ? 'tilt-md' : 'tilt-fp'}
        at={mesial ? d.grips['tilt-md'] : d.grips['tilt-fp']}
        stroke={polyline(arc)}
        lines={polyline(arc)}
        solid={arrowhead(second, first) + arrowhead(before, last)}
        {...rest}
      />
      {can === 'all' && (
        <Grip
          id="turn"
          at={head}
          stroke={polyline(d.ring)}
          lines={polyline(d.ring)}
          solid={arrowhead(d.ring[d.ring.length - 4], head)}
          {...rest}
        />
      )}
      {can !== 'steer' && (
        <>
          <Grip
            id="advance"
            at={d.grips.advance}
            lines={polyline([up, down])}
            solid={arrowhead(down, up) + arrowhead(up, down)}
            {...rest}
          />
          <Grip
            id="shift-f"
            at={d.grips['shift-f']}
            stroke={polyline(d.facialBar)}
            lines={bar(d.facialBar)}
            {...rest}
          />
          <Grip
            id="shift-m"
            at={d.grips['shift-m']}
            stroke={polyline(d.mesialBar)}
            lines={bar(d.mesialBar)}
            {...rest}
          />
          <Letter letter={say('stage.letterFacial')} at={away(d.facialBar[0], d.facialBar[1], 16)} />
          <Letter letter={say('stage.letterMesial')} at={away(d.mesialBar[0], d.mesialBar[1], 16)} />
        </>
      )}
      <g className="knob">
        {can !== 'steer' && <Grip id="shift" at={d.grips.shift} lines={square} {...rest} />}
        <Grip id="tilt" at={knob} lines={ball} {...rest} />
      </g>
      {tilt && (
        <Tag
          x={Math.max(left.x - 12, 8 * tagSize)}
          y={Math.max(left.y, 58)}
          side="left"
          number={tilt.number}
          words={tilt.words}
          size={tagSize}
        />
      )}
    </g>
  );
}
