/** Half of the stretch of rows over which the palatal gum is evened out, twice over: about 2 mm. */
const WINDOW = 5;
/** Largest share of its own thickness that the gum moves by, so that it stays outside the bone. */
const MOST = 0.75;

/**
 * Evens out one column of the sections along the arch, in place: thick palatal gum lies over the bone's grooves, it does not follow them. `lines`: rows of
 * `columns` pairs `e`, `c`; `thick`: the gum's thickness in that column, mm.
 */
export function evenColumn(
  lines: Float64Array,
  rows: number,
  columns: number,
  column: number,
  thick: number,
): void {
  const most = MOST * thick;
  let from: Float64Array = new Float64Array(2 * rows);
  for (let i = 0; i < rows; i++) {
    from[2 * i] = lines[2 * (i * columns + column)];
    from[2 * i + 1] = lines[2 * (i * columns + column) + 1];
  }
  from = blurred(blurred(from, rows), rows);
  for (let i = 0; i < rows; i++) {
    const at = 2 * (i * columns + column);
    const de = from[2 * i] - lines[at];
    const dc = from[2 * i + 1] - lines[at + 1];
    const share = Math.min(1, most / (Math.hypot(de, dc) || 1));
    lines[at] += share * de;
    lines[at + 1] += share * dc;
  }
}

/** Means over a sliding window, narrower toward both ends. */
function blurred(from: Float64Array, rows: number): Float64Array {
  const out = new Float64Array(2 * rows);
  for (let i = 0; i < rows; i++) {
    const reach = Math.min(WINDOW, i, rows - 1 - i);
    for (let k = 0; k < 2; k++) {
      let sum = 0;
      for (let j = i - reach; j <= i + reach; j++) sum += from[2 * j + k];
      out[2 * i + k] = sum / (2 * reach + 1);
    }
  }
  return out;
}
