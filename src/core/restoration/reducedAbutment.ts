import { carried, type Placed } from '../geometry/carry.ts';
import { MeshBuilder } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { AbutmentInCrown } from './abutmentInCrown.ts';

const COLUMNS = 72;
const ROWS = 40;
/** Steps across the abutment, and from a level's middle outward. */
const ACROSS = 24;
const STEPS = 12;

/** A level of which nothing is left ends in a blunt point, so that the mesh stays closed, mm. */
const BLUNT = 0.01;

/** What is ground off less than this is not drawn, mm. */
const SKIN = 0.01;

const heightAt = (body: AbutmentInCrown, i: number): number => (body.numbers.height * i) / ROWS;

/** How far within what is ground off a place of a level lies, the least post never; `f` facially and `m` mesially of the axis, mm. */
function overAt(body: AbutmentInCrown, x: number, f: number, m: number): number {
  const { post } = body.rule;
  if (x < post.height && Math.hypot(f, m) <= post.diameter / 2) return -BLUNT;
  return body.over(x, 1, f, m);
}

/** Where a value that runs from `fa` at `a` to `fb` at `b` is 0. */
const crossing = (a: number, fa: number, b: number, fb: number): number => a + ((b - a) * fa) / (fa - fb);

/** The longest stretch of a line across the axis on which the abutment stays, as places along it; null: none. */
function stays(
  body: AbutmentInCrown,
  x: number,
  cos: number,
  sin: number,
): readonly [from: number, to: number] | null {
  const r = body.radius(x);
  let best: readonly [number, number] | null = null;
  let start: number | null = null;
  let [at, value] = [-r, overAt(body, x, -r * cos, -r * sin)];
  if (value <= 0) start = at;
  for (let i = 1; i <= ACROSS; i++) {
    const next = -r + (2 * r * i) / ACROSS;
    const then = overAt(body, x, next * cos, next * sin);
    if (value > 0 && then <= 0) start = crossing(at, value, next, then);
    const ends = then > 0 ? crossing(at, value, next, then) : i === ACROSS ? r : null;
    if (start !== null && ends !== null) {
      if (!best || ends - start > best[1] - best[0]) best = [start, ends];
      start = null;
    }
    [at, value] = [next, then];
  }
  return best;
}

/** The abutment's outline in one half-plane, before and after grinding: from the shoulder up the side and along the top to the axis; `[rho, x]`, mm. */
export interface GroundOutline {
  readonly before: readonly (readonly [rho: number, x: number])[];
  /** `rho` is negative where what is left lies beyond the axis. Only levels of which something is left. */
  readonly after: readonly (readonly [rho: number, x: number])[];
}

/** `azimuth` from `e_f` toward `e_m`, radians: 0 facially, π palatally. */
export function groundOutline(body: AbutmentInCrown, azimuth: number): GroundOutline {
  const { height } = body.numbers;
  const after = Array.from({ length: ROWS + 1 }, (_, i) => {
    const x = heightAt(body, i);
    return { x, span: stays(body, x, Math.cos(azimuth), Math.sin(azimuth)) };
  }).flatMap(({ x, span }) => (span ? [[span[1], x] as const] : []));
  return {
    before: [
      [body.radius(0), 0],
      [body.radius(height), height],
      [0, height],
    ],
    after,
  };
}

/** The abutment after grinding, and the wedge that has been taken off; mm, in the frame that was asked for. */
export interface GroundAbutment {
  /** Closed, outward. */
  readonly left: TriangleMesh;
  /** The skin of what is taken off, outer and inner; empty where nothing is. */
  readonly wedge: TriangleMesh;
}

/** A level of the abutment, seen from the middle of what is left of it facially and palatally. */
interface Level {
  readonly x: number;
  /** That middle, facially of the axis, mm. */
  readonly middle: number;
  /** From there at each angle: to where the abutment ended, and to where it ends now. */
  readonly outer: readonly number[];
  readonly inner: readonly number[];
}

const ANGLES = Array.from({ length: COLUMNS }, (_, j) => (2 * Math.PI * j) / COLUMNS);

function levelOf(body: AbutmentInCrown, x: number): Level {
  const span = stays(body, x, 1, 0);
  const middle = span ? (span[0] + span[1]) / 2 : 0;
  const r = body.radius(x);
  const outer = ANGLES.map(
    (phi) => Math.sqrt(r * r - (middle * Math.sin(phi)) ** 2) - middle * Math.cos(phi),
  );
  const inner = ANGLES.map((phi, j) => {
    const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
    const over = (t: number): number => overAt(body, x, middle + t * cos, t * sin);
    return Math.max(BLUNT, span ? soundUpTo(over, outer[j]) : 0);
  });
  return { x, middle, outer, inner };
}

/** Distance from a sound middle up to which `over` stays at or below 0, to `end` at most. */
function soundUpTo(over: (t: number) => number, end: number): number {
  let [a, fa] = [0, over(0)];
  if (fa > 0) return 0;
  for (let i = 1; i <= STEPS; i++) {
    const b = (end * i) / STEPS;
    const fb = over(b);
    if (fb > 0) return crossing(a, fa, b, fb);
    [a, fa] = [b, fb];
  }
  return end;
}

const placeOf = ({ x, middle }: Level, j: number, t: number): Vec3 => [
  middle + t * Math.cos(ANGLES[j]),
  t * Math.sin(ANGLES[j]),
  x,
];

/** `frame`: where the abutment's own axes (`e_f`, `e_m`, axis; origin the platform's centre) stand. Cost: about 3 ms. */
export function groundAbutment(body: AbutmentInCrown, frame: Placed): GroundAbutment {
  const levels = Array.from({ length: ROWS + 1 }, (_, i) => levelOf(body, heightAt(body, i)));
  const left = new MeshBuilder();
  const rings = levels.map((level) => left.ring(COLUMNS, (j) => placeOf(level, j, level.inner[j])));
  left.bands(rings);
  left.capAbove(rings[ROWS], placeOf(levels[ROWS], 0, 0));
  left.capBelow(rings[0], placeOf(levels[0], 0, 0));
  return { left: carried(left.build(), frame), wedge: carried(wedgeOf(levels), frame) };
}

/** Both skins over the cells of the grid in which anything is taken off, and the top over what is. */
function wedgeOf(levels: readonly Level[]): TriangleMesh {
  const builder = new MeshBuilder();
  const grid = (of: (level: Level) => readonly number[]): number[][] =>
    levels.map((level) => of(level).map((t, j) => builder.vertex(placeOf(level, j, t))));
  const [out, within] = [grid(({ outer }) => outer), grid(({ inner }) => inner)];
  const taken = (i: number, j: number): boolean => levels[i].outer[j] - levels[i].inner[j] > SKIN;
  for (let j = 0; j < COLUMNS; j++) {
    const k = (j + 1) % COLUMNS;
    for (let i = 0; i < ROWS; i++) {
      if (!taken(i, j) && !taken(i, k) && !taken(i + 1, j) && !taken(i + 1, k)) continue;
      builder.quad(out[i][j], out[i][k], out[i + 1][k], out[i + 1][j]);
      builder.quad(within[i][j], within[i + 1][j], within[i + 1][k], within[i][k]);
    }
    if (taken(ROWS, j) || taken(ROWS, k))
      builder.quad(within[ROWS][j], out[ROWS][j], out[ROWS][k], within[ROWS][k]);
  }
  return builder.build();
}
