/** A place in two parameters and the value there. */
export interface Place {
  x: number;
  y: number;
  value: number;
}

/** Ways to leave a sharp ridge that runs slantwise, where no move along a parameter is better. */
const DIAGONALS: readonly (readonly [number, number])[] = [
  [1, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 0.5],
  [-1, -0.5],
  [1, -0.5],
  [-1, 0.5],
  [0.5, 1],
  [-0.5, -1],
  [0.5, -1],
  [-0.5, 1],
];

/**
 * Compass search: from a start, step to the best of the four neighbours, halve the steps when none is better, until they are `shrink` of the
 * first. Needs no derivative and stops at kinks and at edges (where `f` is Infinity), at the price of some tens of calls.
 */
export function compass(
  f: (x: number, y: number) => number,
  start: Place,
  hx: number,
  hy: number,
  shrink: number,
  diagonals = false,
): Place {
  const best = { ...start };
  for (let s = 1; s > shrink; ) {
    const { x, y } = best;
    let moved = tryAt(f, best, x + s * hx, y) || tryAt(f, best, x - s * hx, y);
    moved = tryAt(f, best, best.x, y + s * hy) || tryAt(f, best, best.x, y - s * hy) || moved;
    if (!moved && diagonals) {
      for (const [a, b] of DIAGONALS) moved = tryAt(f, best, x + a * s * hx, y + b * s * hy) || moved;
    }
    if (moved) {
      // Along a slanting valley the sum of the two moves goes further than either.
      tryAt(f, best, 2 * best.x - x, 2 * best.y - y);
    } else s /= 2;
  }
  return best;
}

function tryAt(f: (x: number, y: number) => number, best: Place, x: number, y: number): boolean {
  const value = f(x, y);
  if (!(value < best.value)) return false;
  best.x = x;
  best.y = y;
  best.value = value;
  return true;
}

/**
 * Least value of `f` over a grid, every local minimum within `slack` of the best polished. `column(i, j)` and `row(j)` give the parameters
 * of a cell. Returns null where `f` is nowhere finite. Cost: `columns × rows` calls and about 60 a minimum.
 */
export function gridMinimum(
  f: (x: number, y: number) => number,
  columns: number,
  rows: number,
  column: (i: number, j: number) => number,
  row: (j: number) => number,
  slack: number,
  shrink: number,
): Place | null {
  const values = new Float64Array(columns * rows);
  let least = Infinity;
  for (let j = 0; j < rows; j++) {
    const y = row(j);
    for (let i = 0; i < columns; i++) {
      const v = f(column(i, j), y);
      values[j * columns + i] = v;
      if (v < least) least = v;
    }
  }
  if (least === Infinity) return null;
  const seeds: Place[] = [];
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const v = values[j * columns + i];
      if (v > least + slack || !isLocal(values, columns, rows, i, j)) continue;
      seeds.push({ x: column(i, j), y: row(j), value: v });
    }
  }
  seeds.sort((a, b) => a.value - b.value);
  let best: Place | null = null;
  for (const seed of seeds.slice(0, 6)) {
    const j = Math.max(1, Math.floor(rows / 2));
    const hx = Math.abs(column(1, j) - column(0, j)) / 2;
    const hy = Math.abs(row(j) - row(j - 1)) / 2;
    const found = compass(f, seed, hx, hy, shrink);
    if (best === null || found.value < best.value) best = found;
  }
  return best;
}

function isLocal(values: Float64Array, columns: number, rows: number, i: number, j: number): boolean {
  const v = values[j * columns + i];
  for (let dj = -1; dj <= 1; dj++) {
    for (let di = -1; di <= 1; di++) {
      const k = i + di;
      const l = j + dj;
      if (k < 0 || l < 0 || k >= columns || l >= rows || (di === 0 && dj === 0)) continue;
      if (values[l * columns + k] < v) return false;
    }
  }
  return true;
}

/** The best of many places and up to `most − 1` more, each at least `dx` or `dy` from those before it: starts for separate searches. */
export function apart<P extends Place>(places: readonly P[], dx: number, dy: number, most: number): P[] {
  const sorted = [...places].sort((a, b) => a.value - b.value);
  const out: P[] = [];
  for (const p of sorted) {
    if (out.length === most) break;
    if (out.every((o) => Math.abs(o.x - p.x) > dx || Math.abs(o.y - p.y) > dy)) out.push(p);
  }
  return out;
}
