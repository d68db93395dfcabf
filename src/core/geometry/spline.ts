/**
 * Natural cubic spline through knots (twice continuously differentiable, so that highlights run on without a break);
 * carried on in straight lines at both ends. It may overshoot its knots. `x` strictly increasing, at least two.
 */
export function cubicSpline(x: readonly number[], y: readonly number[]): (at: number) => number {
  const n = x.length - 1;
  const bend = new Float64Array(n + 1);
  const carry = new Float64Array(n + 1);
  for (let i = 1; i < n; i++) {
    const low = x[i] - x[i - 1];
    const high = x[i + 1] - x[i];
    const pivot = 2 * (low + high) + low * carry[i - 1];
    carry[i] = -high / pivot;
    const kink = (y[i + 1] - y[i]) / high - (y[i] - y[i - 1]) / low;
    bend[i] = (6 * kink - low * bend[i - 1]) / pivot;
  }
  for (let i = n - 1; i > 0; i--) bend[i] += carry[i] * bend[i + 1];
  const slopeAt = (i: number, j: number): number => {
    const h = x[i + 1] - x[i];
    const mean = (y[i + 1] - y[i]) / h;
    return j === i
      ? mean - (h * (2 * bend[i] + bend[i + 1])) / 6
      : mean + (h * (bend[i] + 2 * bend[i + 1])) / 6;
  };
  return (at) => {
    if (at <= x[0]) return y[0] + slopeAt(0, 0) * (at - x[0]);
    if (at >= x[n]) return y[n] + slopeAt(n - 1, n) * (at - x[n]);
    let i = 0;
    while (at > x[i + 1]) i++;
    const h = x[i + 1] - x[i];
    const b = (at - x[i]) / h;
    const a = 1 - b;
    return (
      a * y[i] + b * y[i + 1] + (h * h * ((a * a * a - a) * bend[i] + (b * b * b - b) * bend[i + 1])) / 6
    );
  };
}

/** Cubic from `y0` to `y1` over `t` in 0…1 with the slopes `d0`, `d1` (per unit of `t`). */
export function hermite(t: number, y0: number, y1: number, d0: number, d1: number): number {
  const rise = y1 - y0;
  return y0 + t * (d0 + t * (3 * rise - 2 * d0 - d1 + t * (d0 + d1 - 2 * rise)));
}
