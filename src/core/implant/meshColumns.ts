import { fluteAngles } from './flutes.ts';
import type { ImplantShape } from './shape.ts';

const turn = 2 * Math.PI;

/** Angles of `segments` even columns, counted anticlockwise from the mark, radians. */
export const evenColumns = (segments: number): number[] =>
  Array.from({ length: segments }, (_, j) => (turn * j) / segments);

/** How far an index flat of the abutment cuts in, as a share of its radius. */
export const FLAT = 0.86;

/** Angle between two flats, or 0: round. */
export const sectorOf = ({ index }: ImplantShape): number => (index > 0 ? turn / index : 0);

/** Whether the well for the screw has flats. */
export const hasFlatWell = ({ index, abutment }: ImplantShape): boolean => index > 2 && !abutment;

/** Angles of the edges of the abutment's or the well's flats, the first flat lying at the mark. */
function flatAngles(shape: ImplantShape): number[] {
  const sector = sectorOf(shape);
  if (sector === 0) return [];
  const half = Math.min(sector / 2, shape.abutment ? Math.acos(FLAT) : sector / 2);
  if (!shape.abutment && !hasFlatWell(shape)) return [];
  return Array.from({ length: shape.index }, (_, i) => i * sector).flatMap((a) => [a - half, a + half]);
}

/** Nearer than this two edges share a column, radians. */
const SAME = 2e-3;

const gap = (a: number, b: number): number => Math.abs(a - b - turn * Math.round((a - b) / turn));

/**
 * Angles of a mesh's columns, rising from 0 at the mark: even ones, and one wherever a flute, a flat or the engraved mark has an edge, so that
 * edges are sharp. `mark` is half the angle that the mark takes, or 0; inside it there is only the column at 0.
 */
export function columnsOf(shape: ImplantShape, segments: number, mark: number): number[] {
  const columns = mark > 0 ? [0, mark, turn - mark] : [0];
  const add = (angles: readonly number[], apart: number) => {
    const fixed = columns.slice();
    for (const angle of angles)
      if (gap(angle, 0) > mark && fixed.every((c) => gap(c, angle) > apart))
        columns.push(angle - turn * Math.floor(angle / turn));
  };
  add(fluteAngles(shape), SAME);
  add(flatAngles(shape), SAME);
  add(evenColumns(segments), (0.15 * turn) / segments);
  return columns.sort((a, b) => a - b);
}
