/**
 * Monotone cubic through given knots (Fritsch and Carlson 1980, with harmonic-mean interior slopes and the three-point
 * shape-preserving end slopes of Moler, "Numerical Computing with MATLAB", `pchip`): never overshoots the data.
 * Held constant before the first knot, carried on in a straight line with its end slope after the last.
 */
export class MonotoneCubic {
  private readonly x: Float64Array;
  private readonly y: Float64Array;
  private readonly slope: Float64Array;
  private readonly last: number;

  /** `x` strictly increasing, at least two knots. */
  constructor(x: readonly number[], y: readonly number[]) {
    this.x = Float64Array.from(x);
    this.y = Float64Array.from(y);
    this.last = x.length - 1;
    this.slope = slopes(this.x, this.y);
  }

  at(x: number): number {
    const xs = this.x;
    const last = this.last;
    if (x <= xs[0]) return this.y[0];
    if (x >= xs[last]) return this.y[last] + this.slope[last] * (x - xs[last]);
    let i = 0;
    while (x > xs[i + 1]) i++;
    const h = xs[i + 1] - xs[i];
    const s = (x - xs[i]) / h;
    const y0 = this.y[i];
    const d0 = h * this.slope[i];
    const rise = this.y[i + 1] - y0;
    const d1 = h * this.slope[i + 1];
    return y0 + s * (d0 + s * (3 * rise - 2 * d0 - d1 + s * (d0 + d1 - 2 * rise)));
  }
}

function slopes(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length;
  const h = new Float64Array(n - 1);
  const d = new Float64Array(n - 1);
  for (let i = 0; i < n - 1; i++) {
    h[i] = x[i + 1] - x[i];
    d[i] = (y[i + 1] - y[i]) / h[i];
  }
  const out = new Float64Array(n);
  if (n === 2) return out.fill(d[0]);
  for (let i = 1; i < n - 1; i++) {
    if (d[i - 1] * d[i] <= 0) continue;
    const w1 = 2 * h[i] + h[i - 1];
    const w2 = h[i] + 2 * h[i - 1];
    out[i] = (w1 + w2) / (w1 / d[i - 1] + w2 / d[i]);
  }
  out[0] = endSlope(h[0], h[1], d[0], d[1]);
  out[n - 1] = endSlope(h[n - 2], h[n - 3], d[n - 2], d[n - 3]);
  return out;
}

function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const s = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (Math.sign(s) !== Math.sign(d0)) return 0;
  if (Math.sign(d0) !== Math.sign(d1) && Math.abs(s) > 3 * Math.abs(d0)) return 3 * d0;
  return s;
}
