/** A least-squares fit with its uncertainty. */
export interface Fit {
  readonly x: readonly number[];
  /** Of the parameters, for measurements of the SD given: `sd² (JᵀJ)⁻¹`. */
  readonly covariance: readonly (readonly number[])[];
  /** Measured less predicted, in the order of the measurements. */
  readonly residuals: readonly number[];
  readonly converged: boolean;
}

export interface Problem {
  /** Predicted measurements at parameters; null: there are none (a ray that ends nowhere). */
  readonly predict: (x: readonly number[]) => readonly number[] | null;
  readonly measured: readonly number[];
  /** SD of one measurement. */
  readonly sd: number;
  /** Where the search begins, and the steps of the differences. */
  readonly start: readonly number[];
  readonly steps: readonly number[];
}

const ITERATIONS = 100;
/** By how much the squares could still fall, as a share of one measurement's variance: less than this is settled, less than the other is done. */
const SETTLED = 1e-6;
const DONE = 1e-12;
const LEAST_DAMPING = 1e-9;
const MOST_DAMPING = 1e9;

const sumOfSquares = (r: readonly number[]): number => r.reduce((sum, v) => sum + v * v, 0);

/** Inverse of a symmetric positive definite matrix by Cholesky; null where it is none. */
export function inverse(a: readonly (readonly number[])[]): number[][] | null {
  const n = a.length;
  const l = a.map((row) => row.map(() => 0));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i][j];
      for (let k = 0; k < j; k++) sum -= l[i][k] * l[j][k];
      if (i !== j) l[i][j] = sum / l[j][j];
      else if (sum > 1e-14 * Math.abs(a[i][i])) l[i][i] = Math.sqrt(sum);
      else return null;
    }
  }
  const columns = a.map((_, j) => {
    const y: number[] = [];
    for (let i = 0; i < n; i++) {
      let sum = i === j ? 1 : 0;
      for (let k = 0; k < i; k++) sum -= l[i][k] * y[k];
      y[i] = sum / l[i][i];
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = y[i];
      for (let k = i + 1; k < n; k++) sum -= l[k][i] * y[k];
      y[i] = sum / l[i][i];
    }
    return y;
  });
  return a.map((_, i) => columns.map((column) => column[i]));
}

/** Central differences; a row a measurement. Null where a step leads to where nothing can be predicted. */
export function jacobian({ predict, steps }: Problem, x: readonly number[]): number[][] | null {
  const rows = predict(x)?.map((): number[] => []);
  if (!rows) return null;
  for (let j = 0; j < x.length; j++) {
    const at = (way: number) => predict(x.map((v, i) => (i === j ? v + way * steps[j] : v)));
    const [high, low] = [at(1), at(-1)];
    if (!high || !low) return null;
    rows.forEach((row, i) => {
      row.push((high[i] - low[i]) / (2 * steps[j]));
    });
  }
  return rows;
}

const normal = (j: readonly (readonly number[])[], damping: number): number[][] => {
  const n = j[0].length;
  return Array.from({ length: n }, (_, a) =>
    Array.from({ length: n }, (_, b) => {
      const sum = j.reduce((s, row) => s + row[a] * row[b], 0);
      return a === b ? sum * (1 + damping) : sum;
    }),
  );
};

const inner = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, v, i) => sum + v * b[i], 0);
const times = (a: readonly (readonly number[])[], v: readonly number[]): number[] =>
  a.map((row) => inner(row, v));
/** A diagonal entry of `JᵀJ`. */
const curvature = (j: readonly (readonly number[])[], k: number): number =>
  j.reduce((sum, row) => sum + row[k] * row[k], 0);
/** `Jᵀ r`. */
const gradient = (j: readonly (readonly number[])[], r: readonly number[]): number[] =>
  j[0].map((_, a) => j.reduce((sum, row, k) => sum + row[a] * r[k], 0));

/**
 * Gauss–Newton with Levenberg's damping (Marquardt's scaling): the damping follows how well the linear model foretold the last step. Null where
 * nothing can be predicted at the start, or the measurements do not determine the parameters.
 */
export function leastSquares(problem: Problem): Fit | null {
  const { predict, measured, sd } = problem;
  const lack = (x: readonly number[]) => predict(x)?.map((p, i) => measured[i] - p) ?? null;
  let x = problem.start;
  let residuals = lack(x);
  if (!residuals) return null;
  let damping = 1e-3;
  let growth = 2;
  let left = Infinity;
  for (let i = 0; i < ITERATIONS && left > DONE && damping < MOST_DAMPING; i++) {
    const j = jacobian(problem, x);
    const [plain, damped] = j ? [inverse(normal(j, 0)), inverse(normal(j, damping))] : [null, null];
    if (!j || !plain || !damped) return null;
    const slope = gradient(j, residuals);
    left = inner(slope, times(plain, slope)) / sd ** 2;
    const step = times(damped, slope);
    const next = x.map((v, k) => v + step[k]);
    const after = lack(next);
    // What the squares fell by, against what the linear model foretold (Nielsen 1999).
    const foretold = step.reduce((sum, v, k) => sum + v * (slope[k] + damping * curvature(j, k) * v), 0);
    const gain = after ? (sumOfSquares(residuals) - sumOfSquares(after)) / foretold : -1;
    if (after && gain > 0) {
      [x, residuals] = [next, after];
      damping = Math.max(LEAST_DAMPING, damping * Math.max(1 / 3, 1 - (2 * gain - 1) ** 3));
      growth = 2;
    } else {
      damping *= growth;
      growth *= 2;
    }
  }
  const converged = left < SETTLED;
  const j = jacobian(problem, x);
  const covariance = j && inverse(normal(j, 0))?.map((row) => row.map((v) => v * sd * sd));
  return covariance ? { x, covariance, residuals, converged } : null;
}
