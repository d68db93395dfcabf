/** Mean and spread of a list of numbers; `sd` with n − 1, null for fewer than two. */
export interface Summary {
  readonly n: number;
  readonly mean: number;
  readonly sd: number | null;
  readonly least: number;
  readonly most: number;
}

/** Null for an empty list. The sums run over differences from the first, so that nothing is lost where all lie together. */
export function summaryOf(values: readonly number[]): Summary | null {
  const n = values.length;
  if (n === 0) return null;
  const [first] = values;
  const mean = first + values.reduce((sum, v) => sum + (v - first), 0) / n;
  const squares = values.reduce((sum, v) => sum + (v - mean) ** 2, 0);
  return {
    n,
    mean,
    sd: n > 1 ? Math.sqrt(squares / (n - 1)) : null,
    least: Math.min(...values),
    most: Math.max(...values),
  };
}
