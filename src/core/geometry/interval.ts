/** A closed stretch `[from, to]` of a line's parameter, or null where there is none. */
export type Interval = readonly [number, number] | null;

/** Where `a λ² + b λ + c ≤ 0` with `a ≥ 0`. A vanishing `a` is a half-line or everything. */
export function quadraticInterval(a: number, b: number, c: number): Interval {
  if (a < 1e-14) {
    if (Math.abs(b) < 1e-14) return c <= 0 ? [-Infinity, Infinity] : null;
    return b > 0 ? [-Infinity, -c / b] : [-c / b, Infinity];
  }
  const disc = b * b - 4 * a * c;
  if (disc <= 0) return null;
  const root = Math.sqrt(disc);
  const t = b >= 0 ? -(b + root) / 2 : (root - b) / 2;
  const x = t / a;
  const y = t === 0 ? 0 : c / t;
  return x < y ? [x, y] : [y, x];
}

/** Where `b λ + c ≥ 0`. */
export function halfLine(b: number, c: number): Interval {
  if (b === 0) return c >= 0 ? [-Infinity, Infinity] : null;
  return b > 0 ? [-c / b, Infinity] : [-Infinity, -c / b];
}

export function intersect(x: Interval, y: Interval): Interval {
  if (!x || !y) return null;
  const from = Math.max(x[0], y[0]);
  const to = Math.min(x[1], y[1]);
  return from < to ? [from, to] : null;
}

/** Smallest interval holding both. */
export function hull(x: Interval, y: Interval): Interval {
  if (!x) return y;
  if (!y) return x;
  return [Math.min(x[0], y[0]), Math.max(x[1], y[1])];
}

/** Length covered by the intervals within `[from, to]`, overlaps counted once. */
export function coveredLength(parts: readonly Interval[], from: number, to: number): number {
  const clipped = parts
    .map((p) => intersect(p, [from, to]))
    .filter((p) => p !== null)
    .sort((x, y) => x[0] - y[0]);
  let end = from;
  let sum = 0;
  for (const [a, b] of clipped) {
    if (b <= end) continue;
    sum += b - Math.max(a, end);
    end = b;
  }
  return sum;
}
