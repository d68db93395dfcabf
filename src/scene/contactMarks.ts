import { cross, scale, type Vec3 } from '../core/geometry/vec.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { CELL, type ContactGrid } from '../core/seating/contactGrid.ts';

/** Flat marks as triangles in the jaw frame; `uv`: their places in each mark's own plane, mm. */
export interface Marks {
  readonly points: Vec3[];
  readonly uv: [number, number][];
  readonly index: number[];
}

/** mm: between two rows of marks, half a stroke's length, a ring's radius, the width of both, and of the ink round them. */
const ROW = 0.75;
const REACH = 0.22;
const RING = 0.19;
const WIDTH = 0.1;
export const RIM = 0.07;
/** Every so many columns of the grid, the rows set off by half. */
const COLUMNS = 4;
const CORNERS = 10;

/** Most marks an implant carries, and what one needs at most. */
export const MOST_MARKS = 400;
export const MARK_VERTICES = 2 * (CORNERS + 1);
export const MARK_TRIANGLES = 2 * CORNERS;

type Strip = readonly (readonly [inner: readonly [number, number], outer: readonly [number, number]])[];

/** A stroke at 45°, `way` + up to the right. */
function stroke(way: 1 | -1, rim: number): Strip {
  const w = (WIDTH / 2 + rim) * Math.SQRT1_2;
  const r = REACH + rim * Math.SQRT1_2;
  return [-r, r].map((u) => [[u - w * way, way * u + w] as const, [u + w * way, way * u - w] as const]);
}

/** A ring, or its lower half. */
function ring(half: boolean, rim: number): Strip {
  const [inner, outer] = [RING - WIDTH / 2 - rim, RING + WIDTH / 2 + rim];
  return Array.from({ length: CORNERS + 1 }, (_, k) => {
    const turn = Math.PI + ((half ? Math.PI : 2 * Math.PI) * k) / CORNERS;
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    return [[inner * c, inner * s] as const, [outer * c, outer * s] as const];
  });
}

/** What stands for a kind of cell: a stroke pressed, crossed strokes undrilled, a ring a gap, half a ring broken out. `rim` widens it. */
function stripsOf(kind: number, rim: number): Strip[] {
  switch (kind) {
    case CELL.press:
      return [stroke(-1, rim)];
    case CELL.solid:
      return [stroke(-1, rim), stroke(1, rim)];
    case CELL.gap:
      return [ring(false, rim)];
    case CELL.open:
      return [ring(true, rim)];
    default:
      return [];
  }
}

/** Rows of the grid at least {@link ROW} apart. */
function rowsOf({ stations }: ContactGrid): number[] {
  const rows: number[] = [];
  let last = Number.NEGATIVE_INFINITY;
  stations.forEach((station, i) => {
    if (station - last < ROW) return;
    rows.push(i);
    last = station;
  });
  return rows;
}

/** Marks on the envelope, one to a place of the grid, `lift` mm outside it. */
export function contactMarks(
  { placement, anatomy }: Evaluation,
  grid: ContactGrid,
  lift: number,
  rim: number,
): Marks {
  const marks: Marks = { points: [], uv: [], index: [] };
  const { a, tP } = placement;
  // Right-handed in the jaw on either side of the arch: a stroke lies across the thread.
  const side = anatomy.site.tooth < 20 ? 1 : -1;
  rowsOf(grid).forEach((row, n) => {
    for (let j = n % 2 === 0 ? 0 : COLUMNS / 2; j < grid.columns; j += COLUMNS) {
      const kind = grid.kinds[row * grid.columns + j];
      const azimuth = (2 * Math.PI * j) / grid.columns;
      const out = placement.across(azimuth);
      const round = scale(cross(a, out), side);
      const at = placement.axisPoint(tP + grid.stations[row]);
      const put = ([u, v]: readonly [number, number]): void => {
        const r = grid.radii[row] + lift;
        // Bent round the implant, so that no corner sinks into it.
        const [c, s] = [r * Math.cos(u / r), r * Math.sin(u / r)];
        const p = at.map((x, k) => x + c * out[k] + s * round[k] + v * a[k]) as unknown as Vec3;
        marks.points.push(anatomy.toJaw(p));
        marks.uv.push([u, v]);
      };
      for (const strip of stripsOf(kind, rim)) {
        const first = marks.points.length;
        for (const [inner, outer] of strip) {
          put(inner);
          put(outer);
        }
        for (let k = first; k < first + 2 * strip.length - 2; k += 2)
          marks.index.push(k, k + 1, k + 2, k + 2, k + 1, k + 3);
      }
    }
  });
  return marks;
}
