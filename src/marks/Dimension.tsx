import { type Point, polyline } from './path.ts';
import './marks.css';

export interface DimensionProps {
  /** The two points it measures, px of the drawing. */
  from: Point;
  to: Point;
  /** Where the leader goes after `to`, corner by corner, to its tag. */
  leader?: readonly Point[];
  lit?: boolean;
}

/** Shorter than this (px) the arrows stand outside and point inward (ISO 129-1). */
const SHORT = 26;
/** Shorter than this (px) it is a point: no arrows, no ticks. */
const POINT = 2;
const ARROW = 7;
const TICK = 5;

const at = (p: Point, u: Point, k: number): Point => ({ x: p.x + k * u.x, y: p.y + k * u.y });

/** A closed arrowhead with its point at `tip`, opening toward `u`. */
function arrowhead(tip: Point, u: Point): string {
  const back = at(tip, u, ARROW);
  const n = { x: -u.y * 1.5, y: u.x * 1.5 };
  return polyline([tip, at(back, n, 1), at(back, n, -1)], true);
}

/** A dimension line as in a technical drawing (ISO 129-1): ticks across both ends, closed arrowheads, a leader. */
export function Dimension({ from, to, leader = [], lit = false }: DimensionProps) {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const u = length > 1e-6 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x: 1, y: 0 };
  const across = { x: -u.y, y: u.x };
  const short = length < SHORT;
  const isPoint = length < POINT;
  const tick = (p: Point) => polyline([at(p, across, -TICK), at(p, across, TICK)]);
  const start = short && !isPoint ? at(from, u, -ARROW - 4) : from;
  const end = short && !isPoint ? at(to, u, ARROW + 2) : to;
  const line = polyline([start, end, ...leader]);
  const path = isPoint ? line : `${line}${tick(from)}${tick(to)}`;
  const away = { x: -u.x, y: -u.y };
  return (
    <g className={lit ? 'dimension dimension-lit' : 'dimension'}>
      <path className="casing" d={path} />
      <path d={path} />
      {!isPoint && (
        <>
          <path className="arrow" d={arrowhead(from, short ? away : u)} />
          <path className="arrow" d={arrowhead(to, short ? u : away)} />
        </>
      )}
    </g>
  );
}
