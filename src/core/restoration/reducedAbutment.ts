import { carried, type Placed } from '../geometry/carry.ts';
import { MeshBuilder } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { AbutmentInCrown } from './abutmentInCrown.ts';

const COLUMNS = 72;
const ROWS = 40;
const STEPS = 12;

/** A ground top ends in a blunt point, so that the mesh stays closed, mm. */
const BLUNT = 0.01;

/** What is ground off less than this is not drawn, mm. */
const SKIN = 0.01;

/** Distance from the axis up to which `over` stays at or below 0, from `start` outward to `end`. */
function soundUpTo(over: (rho: number) => number, start: number, end: number): number {
  let [a, fa] = [start, over(start)];
  if (fa > 0) return start;
  for (let i = 1; i <= STEPS; i++) {
    const b = start + ((end - start) * i) / STEPS;
    const fb = over(b);
    if (fb > 0) return a + ((b - a) * fa) / (fa - fb);
    [a, fa] = [b, fb];
  }
  return end;
}

/** What is left of the abutment at a height over the shoulder and an azimuth, seen from the axis outward: a distance from the axis, mm. */
function leftAt(body: AbutmentInCrown, x: number, cos: number, sin: number): number {
  const { post } = body.rule;
  const start = x < post.height ? post.diameter / 2 : BLUNT;
  return soundUpTo((rho) => body.over(x, rho, cos, sin), start, Math.max(start, body.radius(x)));
}

const heightAt = (body: AbutmentInCrown, i: number): number => (body.numbers.height * i) / ROWS;

/** The abutment's outline in one half-plane, before and after grinding: from the shoulder up the side and along the top to the axis; `[rho, x]`, mm. */
export interface GroundOutline {
  readonly before: readonly (readonly [rho: number, x: number])[];
  readonly after: readonly (readonly [rho: number, x: number])[];
}

/** `azimuth` from `e_f` toward `e_m`, radians: 0 facially, π palatally. */
export function groundOutline(body: AbutmentInCrown, azimuth: number): GroundOutline {
  const [cos, sin] = [Math.cos(azimuth), Math.sin(azimuth)];
  const { height } = body.numbers;
  const after = Array.from({ length: ROWS + 1 }, (_, i) => {
    const x = heightAt(body, i);
    return [leftAt(body, x, cos, sin), x] as const;
  });
  return {
    before: [
      [body.radius(0), 0],
      [body.radius(height), height],
      [0, height],
    ],
    after: [...after, [0, height]],
  };
}

/** The abutment after grinding, and the wedge that has been taken off; mm, in the frame that was asked for. */
export interface GroundAbutment {
  /** Closed, outward. */
  readonly left: TriangleMesh;
  /** The skin of what is taken off, outer and inner; empty where nothing is. */
  readonly wedge: TriangleMesh;
}

/** `frame`: where the abutment's own axes (`e_f`, `e_m`, axis; origin the platform's centre) stand. Cost: about 3 ms. */
export function groundAbutment(body: AbutmentInCrown, frame: Placed): GroundAbutment {
  const { height } = body.numbers;
  const angles = Array.from({ length: COLUMNS }, (_, j) => (2 * Math.PI * j) / COLUMNS);
  const inner = Array.from({ length: ROWS + 1 }, (_, i) =>
    angles.map((phi) => leftAt(body, heightAt(body, i), Math.cos(phi), Math.sin(phi))),
  );
  const at = (rho: number, j: number, i: number): Vec3 => [
    rho * Math.cos(angles[j]),
    rho * Math.sin(angles[j]),
    heightAt(body, i),
  ];
  const left = new MeshBuilder();
  const rings = inner.map((radii, i) => left.ring(COLUMNS, (j) => at(radii[j], j, i)));
  left.bands(rings);
  left.capAbove(rings[ROWS], [0, 0, height]);
  left.capBelow(rings[0], [0, 0, 0]);
  return { left: carried(left.build(), frame), wedge: carried(wedgeOf(body, inner, at), frame) };
}

/** Both skins over the cells of the grid in which anything is taken off, and the top over what is. */
function wedgeOf(
  body: AbutmentInCrown,
  inner: readonly (readonly number[])[],
  at: (rho: number, j: number, i: number) => Vec3,
): TriangleMesh {
  const builder = new MeshBuilder();
  const grid = (radius: (i: number, j: number) => number): number[][] =>
    inner.map((row, i) => row.map((_, j) => builder.vertex(at(radius(i, j), j, i))));
  const [out, within] = [grid((i) => body.radius(heightAt(body, i))), grid((i, j) => inner[i][j])];
  const taken = (i: number, j: number): boolean => body.radius(heightAt(body, i)) - inner[i][j] > SKIN;
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
