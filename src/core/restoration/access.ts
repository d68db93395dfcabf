import { broughtInto, broughtOut, turnedInto } from '../geometry/carry.ts';
import { type Loop, onPlane, type Plane } from '../geometry/slice.ts';
import { deg, type Vec3 } from '../geometry/vec.ts';
import { type CrownCut, fromEdge, type PlannedCrown, wayOut } from './plannedCrown.ts';

/** How far from its line the incisal edge still counts as edge, mm: half of an edge about a millimetre thick (ours). */
export const EDGE_HALF = 0.5;

export type ExitPlace = 'facial' | 'edge' | 'palatal';

/** Where a straight way on along the axis leaves the planned crown; site frame, mm and degrees. */
export interface AccessExit {
  readonly exit: Vec3;
  readonly place: ExitPlace;
  /** The edge's point beside the exit (at the same mesiodistal place of the crown) and the distance from it, + palatal. */
  readonly edge: Vec3;
  readonly toEdge: number;
  /** Where the channel bends, and where the bent one comes out: `EDGE_HALF` palatal of the edge. Null: no turn in the plane of axis and `e_f` leads there. */
  readonly bend: Vec3;
  readonly bent: { readonly exit: Vec3; readonly angle: number } | null;
}

const placeOf = (toEdge: number): ExitPlace =>
  toEdge > EDGE_HALF ? 'palatal' : toEdge < -EDGE_HALF ? 'facial' : 'edge';

/**
 * Exit of the axis and its correction, or null where the axis does not come out of the crown. First argument: the crown cut along axis and `e_f`; last: how far
 * coronal of the shoulder the channel bends, mm.
 */
export function accessExit(
  { plane, loops }: CrownCut,
  crown: PlannedCrown,
  channelBend: number,
): AccessExit | null {
  const facet = wayOut(loops, [0, 0], [0, 1]);
  if (facet === null) return null;
  const { frame, onto } = crown;
  const on = onto?.(broughtInto(frame, onPlane(plane, 0, facet)), turnedInto(frame, plane.y)) ?? 0;
  const reach = facet + on;
  const against = (u: number, v: number) => fromEdge(crown.edge, broughtInto(frame, onPlane(plane, u, v)));
  const { foot, distance } = against(0, reach);
  const place = placeOf(distance);
  const exit = onPlane(plane, 0, reach);
  const bend = onPlane(plane, 0, channelBend);
  const straight = place === 'palatal' ? { exit, angle: 0 } : null;
  const bent = straight ?? leastBend(loops, plane, channelBend, (u, v) => against(u, v).distance);
  return { exit, place, edge: broughtOut(frame, foot), toEdge: distance, bend, bent };
}

/** The distance from the edge changes by no more than a step along the outline is long; where it changes by more, it has leapt from facial to palatal at the foot. */
const LEAP = 1.5;

/** The least turn about the bend toward palatal whose way out lies {@link EDGE_HALF} palatal of the edge. */
function leastBend(
  loops: readonly Loop[],
  plane: Plane,
  channelBend: number,
  toEdge: (u: number, v: number) => number,
): AccessExit['bent'] {
  let least: AccessExit['bent'] = null;
  for (const loop of loops) {
    const far = loop.map(([u, v]) => (v > channelBend ? toEdge(u, v) : Number.NaN));
    for (let i = 0; i < loop.length; i++) {
      const j = i + 1 === loop.length ? 0 : i + 1;
      const step = Math.hypot(loop[j][0] - loop[i][0], loop[j][1] - loop[i][1]);
      if (far[i] > EDGE_HALF === far[j] > EDGE_HALF || !(Math.abs(far[i] - far[j]) < LEAP * step)) continue;
      const w = (EDGE_HALF - far[i]) / (far[j] - far[i]);
      const u = loop[i][0] + w * (loop[j][0] - loop[i][0]);
      const v = loop[i][1] + w * (loop[j][1] - loop[i][1]);
      const angle = deg(Math.atan2(-u, v - channelBend));
      if (angle >= 0 && (least === null || angle < least.angle))
        least = { exit: onPlane(plane, u, v), angle };
    }
  }
  return least;
}
