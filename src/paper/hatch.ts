import type { Point } from '../marks/path.ts';
import { circle, line } from './shapes.ts';

/** Closed lines; a hole is one within another. */
export type Loops = readonly (readonly Point[])[];

/** Where the line `x + y = b`, which rises to the right on paper, crosses the loops: by `x`, in order. */
function crossings(loops: Loops, b: number): number[] {
  const out: number[] = [];
  for (const loop of loops) {
    loop.forEach((p, i) => {
      const q = loop[(i + 1) % loop.length];
      const [u, v] = [p.y + p.x - b, q.y + q.x - b];
      if (u >= 0 === v >= 0) return;
      out.push(p.x + (u / (u - v)) * (q.x - p.x));
    });
  }
  return out.sort((one, other) => one - other);
}

/** Thin strokes rising at 45° across what lies within the loops (even-odd), `pitch` mm apart: lines and no pattern, so that every reader draws the same. */
export function hatched(loops: Loops, pitch: number): string {
  const sums = loops.flat().map(({ x, y }) => x + y);
  const step = pitch * Math.SQRT2;
  const [from, to] = [Math.ceil(Math.min(...sums) / step), Math.floor(Math.max(...sums) / step)];
  let out = '';
  for (let k = from; k <= to; k++) {
    const b = k * step;
    const xs = crossings(loops, b);
    for (let i = 0; i + 1 < xs.length; i += 2)
      out += line([
        { x: xs[i], y: b - xs[i] },
        { x: xs[i + 1], y: b - xs[i + 1] },
      ]);
  }
  return out;
}

/** Whether a point lies within the loops (even-odd). */
function within(loops: Loops, { x, y }: Point): boolean {
  let inside = false;
  for (const loop of loops) {
    loop.forEach((p, i) => {
      const q = loop[(i + 1) % loop.length];
      if (p.y > y !== q.y > y && x < p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x)) inside = !inside;
    });
  }
  return inside;
}

/** Dots of radius `r` in staggered rows, `pitch` mm apart, within the loops. */
export function dotted(loops: Loops, pitch: number, r: number): string {
  const [xs, ys] = [loops.flat().map(({ x }) => x), loops.flat().map(({ y }) => y)];
  let out = '';
  for (let row = Math.ceil(Math.min(...ys) / pitch); row * pitch < Math.max(...ys); row++) {
    const shift = row % 2 === 0 ? 0 : pitch;
    for (let k = Math.floor(Math.min(...xs) / (2 * pitch)); 2 * k * pitch < Math.max(...xs); k++) {
      const p = { x: 2 * k * pitch + shift, y: row * pitch };
      if (within(loops, p)) out += circle(p, r);
    }
  }
  return out;
}
