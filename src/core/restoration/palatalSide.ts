import type { Loop } from '../geometry/slice.ts';

/** A plane along `e_m`, parallel to the crown's palatal side, beyond which the abutment is ground off (rule C8). */
export interface PalatalSide {
  /** Unit, palatally outward: its parts along `e_f` and along the axis. */
  readonly normal: readonly [f: number, x: number];
  /** Distance along the normal from the platform's centre, mm. */
  readonly at: number;
  /** How far beyond the plane a place lies, + palatally; `f` along `e_f`, `x` over the shoulder, mm. */
  readonly beyond: (f: number, x: number) => number;
}

/** What the side is found for: the abutment's height, and the least distance to the crown's surface, mm. */
interface Asked {
  readonly height: number;
  readonly cover: number;
}

/** A place of the crown's palatal outline: from the axis along `e_f`, and over the shoulder, mm. */
type Place = readonly [f: number, x: number];

/** Heights at which the outline is read, below the least height and within it. */
const LEVELS = 80;

/** Over at least this much height the side is taken, mm (ours). */
const LEAST = 1;

/** The top of an outline is read so little below it, mm. */
const BELOW = 1e-6;

/**
 * From the crown's outline in the plane of axis and `e_f` (platform's centre at the origin): the line from where it stands furthest palatally to where it does at
 * the abutment's top, moved in until it keeps `cover` from the outline between them. Null where the crown does not stand beside the abutment.
 */
export function palatalSide(loops: readonly Loop[], { height, cover }: Asked): PalatalSide | null {
  const levels = loops.flatMap((loop) => loop.map(([, x]) => x));
  const low = Math.max(0, Math.min(...levels));
  const high = Math.min(height, Math.max(...levels)) - BELOW;
  if (!(high - low > LEAST)) return null;
  const lower = outline(loops, low, high - LEAST);
  const upper = outline(loops, high - LEAST, high);
  const from = lower.reduce((a, b) => (b[0] < a[0] ? b : a));
  const top = upper[upper.length - 1];
  const [df, dx] = [top[0] - from[0], top[1] - from[1]];
  const length = Math.hypot(df, dx);
  const normal = [-dx / length, df / length] as const;
  const along = ([f, x]: Place): number => normal[0] * f + normal[1] * x;
  const beside = [...lower.filter(([, x]) => x >= from[1]), ...upper];
  return planeAt(normal, Math.min(...beside.map(along)) - cover);
}

const planeAt = (normal: PalatalSide['normal'], at: number): PalatalSide => ({
  normal,
  at,
  beyond: (f, x) => normal[0] * f + normal[1] * x - at,
});

/** The plane moved back out by so much, mm. */
export const movedOut = ({ normal, at }: PalatalSide, by: number): PalatalSide => planeAt(normal, at + by);

/** Where the crown stands furthest palatally, level by level. */
function outline(loops: readonly Loop[], low: number, high: number): Place[] {
  return Array.from({ length: LEVELS + 1 }, (_, i): Place => {
    const x = low + ((high - low) * i) / LEVELS;
    return [furthestPalatally(loops, x), x];
  });
}

function furthestPalatally(loops: readonly Loop[], x: number): number {
  let furthest = Infinity;
  for (const loop of loops) {
    let [af, ax] = loop[loop.length - 1];
    for (const [bf, bx] of loop) {
      if (ax > x !== bx > x) furthest = Math.min(furthest, af + ((bf - af) * (x - ax)) / (bx - ax));
      [af, ax] = [bf, bx];
    }
  }
  return furthest;
}
