import type { Loop } from '../geometry/slice.ts';
import { wayOut } from './plannedCrown.ts';

/** A plane along `e_m`, parallel to the crown's palatal side, beyond which the abutment is ground off (rule C8). */
export interface PalatalSide {
  /** Unit, palatally outward: its parts along `e_f` and along the axis. */
  readonly normal: readonly [f: number, x: number];
  /** Distance along the normal from the platform's centre, mm. */
  readonly at: number;
  /** How far beyond the plane a place lies, + palatally; `f` along `e_f`, `x` over the shoulder, mm. */
  readonly beyond: (f: number, x: number) => number;
}

/** Heights at which the crown's palatal outline is read. */
const LEVELS = 160;

/** Over at least this much height the side is taken, mm (ours). */
const LEAST = 1;

/**
 * From the crown's outline in the plane of axis and `e_f` (platform's centre at the origin): the line from where it stands furthest palatally to where it is at
 * the abutment's top, moved in until it keeps `cover` from the outline between them. Null where the crown has no palatal outline beside the abutment.
 */
export function palatalSide(loops: readonly Loop[], height: number, cover: number): PalatalSide | null {
  const outline: [f: number, x: number][] = [];
  for (let i = 0; i <= LEVELS; i++) {
    const x = (height * i) / LEVELS;
    const reach = wayOut(loops, [0, x], [-1, 0]);
    if (reach !== null) outline.push([-reach, x]);
  }
  const top = outline[outline.length - 1];
  if (outline.length < 2 || top[1] - outline[0][1] < LEAST) return null;
  const lower = outline.filter(([, x]) => x <= top[1] - LEAST);
  const from = lower.reduce((a, b) => (b[0] < a[0] ? b : a));
  const [df, dx] = [top[0] - from[0], top[1] - from[1]];
  const length = Math.hypot(df, dx);
  const normal = [-dx / length, df / length] as const;
  const along = ([f, x]: readonly [number, number]): number => normal[0] * f + normal[1] * x;
  const beside = outline.filter(([, x]) => x >= from[1]);
  const at = Math.min(...beside.map(along)) - cover;
  return { normal, at, beyond: (f, x) => normal[0] * f + normal[1] * x - at };
}
