import { carried } from '../geometry/carry.ts';
import { MeshBuilder } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { AbutmentNumbers } from '../implant/shape.ts';
import type { Placement } from '../measure/placement.ts';
import type { PlannedCrown } from './plannedCrown.ts';
import { AbutmentInCrown, fieldOf, type ReductionRule } from './reduction.ts';

const COLUMNS = 72;
const ROWS = 40;
const STEPS = 12;

/** A ground top ends in a blunt point, so that the mesh stays closed, mm. */
const BLUNT = 0.01;

/** Distance from the axis up to which `short` stays at or below 0, from `start` outward to `end`. */
function soundUpTo(short: (rho: number) => number, start: number, end: number): number {
  let [a, fa] = [start, short(start)];
  if (fa > 0) return start;
  for (let i = 1; i <= STEPS; i++) {
    const b = start + ((end - start) * i) / STEPS;
    const fb = short(b);
    if (fb > 0) return a + ((b - a) * fa) / (fa - fb);
    [a, fa] = [b, fb];
  }
  return end;
}

/**
 * The abutment as it is after grinding (rule C8), seen from its axis outward: closed, outward, in the site frame, mm. Drawn within the whole abutment it shows
 * the wedge that is taken off. Cost: about 3 ms.
 */
export function reducedAbutment(
  at: Placement,
  crown: PlannedCrown,
  numbers: AbutmentNumbers,
  { cover, post }: ReductionRule,
): TriangleMesh {
  const body = new AbutmentInCrown(at, crown, numbers);
  const field = fieldOf(crown);
  const builder = new MeshBuilder();
  const ring = (x: number): number[] =>
    builder.ring(COLUMNS, (j): Vec3 => {
      // Anticlockwise seen from coronal, in axes that run facially and mesially.
      const phi = (2 * Math.PI * j) / COLUMNS;
      const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
      const short = (rho: number): number => cover + field.at(...body.point(x, rho, cos, sin));
      const start = x < post.height ? post.diameter / 2 : BLUNT;
      const rho = soundUpTo(short, start, Math.max(start, body.radius(x)));
      return [rho * cos, rho * sin, x];
    });
  const rings = Array.from({ length: ROWS + 1 }, (_, i) => ring((numbers.height * i) / ROWS));
  builder.bands(rings);
  builder.capAbove(rings[ROWS], [0, 0, numbers.height]);
  builder.capBelow(rings[0], [0, 0, 0]);
  return carried(builder.build(), {
    origin: at.platform,
    ex: at.ef,
    ey: at.em,
    ez: at.a,
  });
}
