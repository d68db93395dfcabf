/**
 * Where `f` passes from above 0 at `from` to 0 or below at `to`: false position that halves the value kept at a standing end (Illinois), every fourth
 * step by halves, so that it closes in on a jump too. Returns the far end of a bracket no wider than `tolerance`: there `f ≤ 0`.
 */
export function fallingRoot(f: (x: number) => number, from: number, to: number, tolerance: number): number {
  let above = from;
  let below = to;
  let high = f(from);
  let low = f(to);
  let last = 0;
  for (let i = 1; i < 120 && Math.abs(below - above) > tolerance && low !== 0; i++) {
    let x = i % 4 === 0 ? (above + below) / 2 : below - (low * (below - above)) / (low - high);
    if (!((x - above) * (below - x) > 0)) x = (above + below) / 2;
    const value = f(x);
    if (value > 0) {
      above = x;
      high = value;
      if (last > 0) low /= 2;
      last = 1;
    } else {
      below = x;
      low = value;
      if (last < 0) high /= 2;
      last = -1;
    }
  }
  return below;
}
