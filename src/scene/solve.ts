import type { Point } from '../marks/path.ts';

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/**
 * Amounts that bring a point of the picture as near as can be to where the hand is: damped least squares from the last amounts, so that a
 * direction that lies along the line of sight moves little instead of wildly. `probe`: step of the differences, in the amounts' own units.
 */
export function solveAmounts(
  at: (amounts: readonly number[]) => Point,
  start: readonly number[],
  wanted: Point,
  probe: number,
): number[] {
  let x = [...start];
  let here = at(x);
  for (let round = 0; round < 6; round++) {
    const miss = { x: wanted.x - here.x, y: wanted.y - here.y };
    if (Math.hypot(miss.x, miss.y) < 0.05) break;
    const columns = x.map((_, k) => {
      const moved = at(x.map((v, i) => (i === k ? v + probe : v)));
      return { x: (moved.x - here.x) / probe, y: (moved.y - here.y) / probe };
    });
    const step = leastSquares(columns, miss, probe);
    let share = 1;
    let next = x;
    let there = here;
    for (; share > 0.05; share /= 2) {
      next = x.map((v, k) => v + share * step[k]);
      there = at(next);
      if (distance(there, wanted) < distance(here, wanted)) break;
    }
    if (distance(there, wanted) >= distance(here, wanted)) break;
    x = next;
    here = there;
  }
  return x;
}

/** Least squares of one or two columns, damped by a few pixels a probe. */
function leastSquares(columns: readonly Point[], miss: Point, probe: number): number[] {
  const damping = (1.2 / probe) ** 2;
  const [a, b] = columns;
  const aa = a.x * a.x + a.y * a.y + damping;
  const am = a.x * miss.x + a.y * miss.y;
  if (!b) return [am / aa];
  const bb = b.x * b.x + b.y * b.y + damping;
  const ab = a.x * b.x + a.y * b.y;
  const bm = b.x * miss.x + b.y * miss.y;
  const det = aa * bb - ab * ab;
  return [(bb * am - ab * bm) / det, (aa * bm - ab * am) / det];
}
