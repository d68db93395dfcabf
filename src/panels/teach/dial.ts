import type { Breaks } from '../../core/teaching/breaks.ts';
import { type Point, pair, px } from '../../marks/path.ts';

/** The dial: a half circle over its hub; px of its own drawing. */
export const DIAL = { width: 300, height: 176, hub: { x: 150, y: 148 }, inner: 88, outer: 108 } as const;

/** Where an amount (0 to 1) stands at a distance from the hub: 0 at the left, 1 at the right. */
export function onDial(amount: number, radius: number): Point {
  const turn = Math.PI * (1 - amount);
  return { x: DIAL.hub.x + radius * Math.cos(turn), y: DIAL.hub.y - radius * Math.sin(turn) };
}

/** The amount under a point of the drawing, in whole per cents of 1. Under the hub it is the nearer end. */
export function amountAt({ x, y }: Point): number {
  const [right, up] = [x - DIAL.hub.x, DIAL.hub.y - y];
  if (up <= 0) return right < 0 ? 0 : 1;
  return Math.round(100 * (1 - Math.atan2(up, right) / Math.PI)) / 100;
}

/** A piece of the ring between two amounts, as path data. */
export function bandPath(from: number, to: number): string {
  const { inner, outer } = DIAL;
  const [a, b, c, d] = [onDial(from, outer), onDial(to, outer), onDial(to, inner), onDial(from, inner)];
  return `M${pair(a)}A${outer} ${outer} 0 0 1 ${pair(b)}L${pair(c)}A${inner} ${inner} 0 0 0 ${pair(d)}Z`;
}

export interface Band {
  readonly mark: 'near' | 'beyond';
  readonly from: number;
  readonly to: number;
}

/** Where along a trajectory something stands near, and from where something stands beyond. */
export function bandsOf({ near, beyond }: Pick<Breaks, 'near' | 'beyond'>): Band[] {
  const bad = beyond === null ? 1 : beyond / 100;
  const out: Band[] = [];
  if (near !== null && near / 100 < bad) out.push({ mark: 'near', from: near / 100, to: bad });
  if (beyond !== null) out.push({ mark: 'beyond', from: bad, to: 1 });
  return out;
}

/** Ticks at every twentieth, longer at every quarter, as path data. */
export const TICKS = Array.from({ length: 21 }, (_, i) => {
  const long = i % 5 === 0;
  return `M${pair(onDial(i / 20, DIAL.outer + 3))}L${pair(onDial(i / 20, DIAL.outer + (long ? 12 : 7)))}`;
}).join('');

/** White stripes at 45° over the whole drawing, to be clipped to a band. */
export const STRIPES = Array.from({ length: 84 }, (_, i) => {
  const x = -DIAL.height + 6 * i;
  return `M${px(x)} ${DIAL.height}l${DIAL.height}-${DIAL.height}`;
}).join('');
