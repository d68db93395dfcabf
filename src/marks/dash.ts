import { type Point, pair } from './path.ts';

/** Line types of ISO 128: strokes and gaps by turns, px. */
export const AXIS = [16, 3, 2.5, 3] as const;
export const BEFORE_THE_CUT = [14, 3, 2, 3, 2, 3] as const;
export const HIDDEN = [5.5, 3] as const;
export const WITHIN = [7, 3.5] as const;
export const GHOST = [8, 4] as const;
/** The plan under what has gone wrong. */
export const GOOD = [11, 3, 2, 3] as const;
export const DOTTED = [1.5, 3] as const;

/**
 * Path data of a broken line, every stroke of it by itself: a browser without a graphics processor takes twenty times as long over a
 * `stroke-dasharray` that changes from frame to frame.
 */
export function dashed(points: readonly Point[], pattern: readonly number[], closed = false): string {
  let out = '';
  let part = 0;
  let left = pattern[0];
  let drawing = false;
  const count = closed ? points.length : points.length - 1;
  for (let i = 0; i < count; i++) {
    const a = points[i];
    const b = points[(i + 1) % points.length];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (length < 1e-6) continue;
    let done = 0;
    while (done < length) {
      const on = part % 2 === 0;
      if (on && !drawing) {
        const w = done / length;
        out += `M${pair({ x: a.x + w * (b.x - a.x), y: a.y + w * (b.y - a.y) })}`;
        drawing = true;
      }
      const run = Math.min(left, length - done);
      done += run;
      left -= run;
      if (on) {
        const w = done / length;
        out += `L${pair({ x: a.x + w * (b.x - a.x), y: a.y + w * (b.y - a.y) })}`;
      }
      if (left > 1e-9) break;
      part = (part + 1) % pattern.length;
      left = pattern[part];
      drawing = false;
    }
  }
  return out;
}
