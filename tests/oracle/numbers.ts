/** Plain numbers for the oracle: vectors, the monotone cubic, and searches by sampling. Nothing here comes from `src`. */

export type V = readonly [number, number, number];

export const RAD = Math.PI / 180;
export const sin = (degrees: number): number => Math.sin(degrees * RAD);
export const cos = (degrees: number): number => Math.cos(degrees * RAD);
export const tan = (degrees: number): number => Math.tan(degrees * RAD);

export const inner = (p: V, q: V): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
export const plus = (p: V, q: V, k = 1): V => [p[0] + k * q[0], p[1] + k * q[1], p[2] + k * q[2]];
export const minus = (p: V, q: V): V => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
export const times = (p: V, k: number): V => [p[0] * k, p[1] * k, p[2] * k];
export const size = (p: V): number => Math.sqrt(p[0] * p[0] + p[1] * p[1] + p[2] * p[2]);
/** Plain: `Math.hypot` guards against overflow and is several times slower. */
export const across = (x: number, y: number): number => Math.sqrt(x * x + y * y);
export const direction = (p: V): V => times(p, 1 / size(p));
export const between = (x: number, lo: number, hi: number): number => Math.min(hi, Math.max(lo, x));

export const cube = (x: number): number => x * x * x;

/** The quintic step of the rules' preamble. */
export function step(x: number, a: number, b: number): number {
  if (x <= a) return 0;
  if (x >= b) return 1;
  const w = (x - a) / (b - a);
  return cube(w) * (6 * w * w - 15 * w + 10);
}

/**
 * Monotone cubic of Fritsch and Carlson (SIAM J. Numer. Anal. 1980;17:238): weighted harmonic-mean slopes inside, the
 * three-point shape-preserving slope at the ends. Constant before the first knot, straight with the end slope after the last.
 */
export function monotoneCubic(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const n = xs.length;
  if (n === 1) return () => ys[0]!;
  const h = xs.slice(1).map((x, i) => x - xs[i]!);
  const secant = h.map((hi, i) => (ys[i + 1]! - ys[i]!) / hi);
  const slope = xs.map((_, i) => {
    if (n === 2) return secant[0]!;
    if (i === 0) return endSlope(h[0]!, h[1]!, secant[0]!, secant[1]!);
    if (i === n - 1) return endSlope(h[n - 2]!, h[n - 3]!, secant[n - 2]!, secant[n - 3]!);
    const before = secant[i - 1]!;
    const after = secant[i]!;
    if (before * after <= 0) return 0;
    const w1 = 2 * h[i]! + h[i - 1]!;
    const w2 = h[i]! + 2 * h[i - 1]!;
    return (w1 + w2) / (w1 / before + w2 / after);
  });
  return (x) => {
    if (x <= xs[0]!) return ys[0]!;
    if (x >= xs[n - 1]!) return ys[n - 1]! + slope[n - 1]! * (x - xs[n - 1]!);
    let i = 0;
    while (x > xs[i + 1]!) i += 1;
    const w = (x - xs[i]!) / h[i]!;
    const v = 1 - w;
    return (
      ys[i]! * v * v * (1 + 2 * w) +
      ys[i + 1]! * w * w * (3 - 2 * w) +
      h[i]! * w * v * (slope[i]! * v - slope[i + 1]! * w)
    );
  };
}

function endSlope(h0: number, h1: number, s0: number, s1: number): number {
  const d = ((2 * h0 + h1) * s0 - h0 * s1) / (h0 + h1);
  if (d * s0 <= 0) return 0;
  if (s0 * s1 <= 0 && Math.abs(d) > 3 * Math.abs(s0)) return 3 * s0;
  return d;
}

/** Where a yes/no question changes its answer between `a` and `b`; `ask(a) !== ask(b)`. */
export function change(a: number, b: number, ask: (x: number) => boolean): number {
  const first = ask(a);
  let from = a;
  let to = b;
  for (let i = 0; i < 44 && Math.abs(to - from) > 2e-9; i += 1) {
    const x = (from + to) / 2;
    if (ask(x) === first) from = x;
    else to = x;
  }
  return (from + to) / 2;
}

/** Root of a growing or falling function whose signs at `a` and `b` differ. */
export const root = (a: number, b: number, f: (x: number) => number): number => change(a, b, (x) => f(x) > 0);

/** The parts of `[a, b]` where the answer is yes: samples no further apart than `h`, ends by halving. */
export function intervalsWhere(
  a: number,
  b: number,
  h: number,
  ask: (x: number) => boolean,
): [number, number][] {
  const found: [number, number][] = [];
  if (!(b > a)) return found;
  const n = Math.max(1, Math.ceil((b - a) / h));
  let x = a;
  let yes = ask(a);
  let since = a;
  for (let i = 1; i <= n; i += 1) {
    const next = i === n ? b : a + ((b - a) * i) / n;
    const now = ask(next);
    if (now !== yes) {
      const at = change(x, next, ask);
      if (yes) found.push([since, at]);
      else since = at;
      yes = now;
    }
    x = next;
  }
  if (yes) found.push([since, b]);
  return found;
}

export interface Least {
  readonly at: number;
  readonly value: number;
}

/**
 * Least value on `[a, b]`: samples about `h` apart, then every sampled dip within `slack` of the best is narrowed by golden
 * section. `Infinity` stands for "not allowed here".
 */
export function least(a: number, b: number, h: number, slack: number, f: (x: number) => number): Least {
  const n = Math.max(2, Math.ceil((b - a) / h));
  const xs: number[] = [];
  const ys: number[] = [];
  let best = Number.POSITIVE_INFINITY;
  let at = a;
  for (let i = 0; i <= n; i += 1) {
    const x = i === n ? b : a + ((b - a) * i) / n;
    const y = f(x);
    xs.push(x);
    ys.push(y);
    if (y < best) {
      best = y;
      at = x;
    }
  }
  const limit = best + slack;
  for (let i = 0; i <= n; i += 1) {
    const y = ys[i]!;
    if (y > limit || y > (ys[i - 1] ?? Infinity) || y > (ys[i + 1] ?? Infinity)) continue;
    const dip = golden(xs[Math.max(0, i - 1)]!, xs[Math.min(n, i + 1)]!, f);
    if (dip.value < best) {
      best = dip.value;
      at = dip.at;
    }
  }
  return { at, value: best };
}

const SECTION = (Math.sqrt(5) - 1) / 2;

/** Golden section on `[a, b]` down to 1e-4. */
export function golden(a: number, b: number, f: (x: number) => number): Least {
  let lo = a;
  let hi = b;
  let x = hi - SECTION * (hi - lo);
  let y = lo + SECTION * (hi - lo);
  let fx = f(x);
  let fy = f(y);
  while (hi - lo > 1e-4) {
    if (fx <= fy) {
      hi = y;
      y = x;
      fy = fx;
      x = hi - SECTION * (hi - lo);
      fx = f(x);
    } else {
      lo = x;
      x = y;
      fx = fy;
      y = lo + SECTION * (hi - lo);
      fy = f(y);
    }
  }
  return fx <= fy ? { at: x, value: fx } : { at: y, value: fy };
}

/**
 * Least value of `f(x, y)` near a start: a 5 × 5 grid of half-size `hx`, `hy` about the best point so far, shrunk by a factor
 * again and again. `f` clamps or refuses (`Infinity`) what lies outside.
 */
export function shrink(
  x0: number,
  y0: number,
  hx: number,
  hy: number,
  f: (x: number, y: number) => number,
  rounds = 22,
  by = 0.6,
): { x: number; y: number; value: number } {
  let x = x0;
  let y = y0;
  let value = f(x0, y0);
  let wx = hx;
  let wy = hy;
  for (let round = 0; round < rounds; round += 1) {
    const cx = x;
    const cy = y;
    for (let i = -2; i <= 2; i += 1) {
      for (let j = -2; j <= 2; j += 1) {
        if (i === 0 && j === 0) continue;
        const px = cx + (i * wx) / 2;
        const py = cy + (j * wy) / 2;
        const v = f(px, py);
        if (v < value) {
          value = v;
          x = px;
          y = py;
        }
      }
    }
    wx *= by;
    wy *= by;
  }
  return { x, y, value };
}

/** Distance from `(x, y)` to the segment `a b`, and the share of the way where the nearest point lies. */
export function toSegment(
  x: number,
  y: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): { distance: number; share: number } {
  const dx = bx - ax;
  const dy = by - ay;
  const l2 = dx * dx + dy * dy;
  const share = l2 > 0 ? between(((x - ax) * dx + (y - ay) * dy) / l2, 0, 1) : 0;
  return { distance: across(x - ax - share * dx, y - ay - share * dy), share };
}

/** mulberry32: a small seeded generator, uniform on [0, 1). */
export function seeded(seed: number): () => number {
  let s = seed >>> 0;
  return () => {
    s = (s + 0x6d2b79f5) >>> 0;
    let x = s;
    x = Math.imul(x ^ (x >>> 15), x | 1);
    x ^= x + Math.imul(x ^ (x >>> 7), x | 61);
    return ((x ^ (x >>> 14)) >>> 0) / 4294967296;
  };
}
