/** Cells that are left out of a grid: rows `i0` to `i1`, columns `j0` to `j1`. */
export interface Opening {
  readonly i0: number;
  readonly i1: number;
  readonly j0: number;
  readonly j1: number;
}

/** Triangles of a solid over a grid: first the sheet, then the flat caps. */
export interface GridTriangles {
  readonly triangles: Uint32Array;
  /** So many triangles are the sheet (and what fills its opening). */
  readonly walls: number;
}

/** Writes quadrilaterals one after the other, anticlockwise seen from outside, cut from the first to the third corner. */
class Quads {
  private at = 0;
  constructor(readonly out: Uint32Array) {}

  get written(): number {
    return this.at / 3;
  }

  add(a: number, b: number, c: number, d: number): void {
    const { out } = this;
    out[this.at++] = a;
    out[this.at++] = b;
    out[this.at++] = c;
    out[this.at++] = a;
    out[this.at++] = c;
    out[this.at++] = d;
  }

  put(triangles: ArrayLike<number>): void {
    this.out.set(triangles, this.at);
    this.at += triangles.length;
  }
}

/** The ladders of both ends and the bottom: their middle rungs are triangles, one point serving both sides. */
function addCaps(quads: Quads, rows: number, mid: number): void {
  const across = 2 * mid + 1;
  const last = (rows - 1) * across;
  for (let k = 1; k < mid; k++) {
    const [low, high] = [mid - k, mid + k];
    quads.add(last + low - 1, last + high + 1, last + high, last + low);
    quads.add(high + 1, low - 1, low, high);
  }
  quads.put([last + mid - 1, last + mid + 1, last + mid]);
  quads.put([mid + 1, mid - 1, mid]);
  for (let i = 0; i + 1 < rows; i++) {
    const row = i * across;
    quads.add(row, row + 2 * mid, row + across + 2 * mid, row + across);
  }
}

function build(
  rows: number,
  mid: number,
  opening: Opening | null,
  filling: ArrayLike<number>,
): GridTriangles {
  const across = 2 * mid + 1;
  const open = opening ? (opening.i1 - opening.i0) * (opening.j1 - opening.j0) : 0;
  const sheet = 2 * ((rows - 1) * 2 * mid - open) + filling.length / 3;
  const caps = 2 * (2 * (mid - 1) + rows - 1) + 2;
  const quads = new Quads(new Uint32Array(3 * (sheet + caps)));
  for (let i = 0; i + 1 < rows; i++) {
    const cut = opening !== null && i >= opening.i0 && i < opening.i1;
    for (let j = 0; j < 2 * mid; j++) {
      if (cut && j >= opening.j0 && j < opening.j1) continue;
      const a = i * across + j;
      quads.add(a, a + across, a + across + 1, a + 1);
    }
  }
  quads.put(filling);
  const walls = quads.written;
  addCaps(quads, rows, mid);
  return { triangles: quads.out, walls };
}

/** The last few plain grids: their triangles do not depend on where the points are. */
const kept: { readonly rows: number; readonly mid: number; readonly made: GridTriangles }[] = [];
const MOST_KEPT = 8;

/**
 * Triangles of a closed solid over a grid of `rows` rows of `2 mid + 1` points, row by row, each from one edge over the top to the other: the sheet,
 * outward where rows run to the right of a walk along the columns seen from outside, then both ends and the bottom as ladders from side to side. `filling`:
 * triangles that close an opening in the sheet. Without an opening the same array comes back for the same numbers.
 */
export function gridTriangles(
  rows: number,
  mid: number,
  opening: Opening | null = null,
  filling: ArrayLike<number> = [],
): GridTriangles {
  if (opening) return build(rows, mid, opening, filling);
  const found = kept.find((one) => one.rows === rows && one.mid === mid);
  if (found) return found.made;
  const made = build(rows, mid, null, filling);
  kept.unshift({ rows, mid, made });
  kept.length = Math.min(kept.length, MOST_KEPT);
  return made;
}
