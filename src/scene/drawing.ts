import type { Vec3 } from '../core/geometry/vec.ts';
import { along } from '../core/geometry/vec.ts';
import type { Pivot } from '../core/plan/edits.ts';
import { pivotPoint } from '../core/plan/edits.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { dashed } from '../marks/dash.ts';
import { type Point, polyline } from '../marks/path.ts';
import {
  ARC,
  arcPoint,
  BAR,
  HANDLE,
  type HandleId,
  onAxis,
  PLACES,
  ringPoint,
  tiltReach,
} from './handles.ts';
import type { Lens } from './lens.ts';
import type { Outline } from './silhouette.ts';

/** The shift bars, arcs and arrows as they lie on the picture; px. */
export interface HandleDrawing {
  readonly grips: Readonly<Record<HandleId, Point>>;
  readonly facialBar: readonly [Point, Point];
  readonly mesialBar: readonly [Point, Point];
  readonly facialArc: readonly Point[];
  readonly mesialArc: readonly Point[];
  readonly ring: readonly Point[];
  /** Ends of the advance arrow: coronal, apical. */
  readonly advance: readonly [Point, Point];
  readonly pivot: Point;
}

export interface IncisalDrawing {
  readonly mesial: Point;
  readonly distal: Point;
  /** Where the line crosses the plane of the axis, and where the axis passes it. */
  readonly crossing: Point;
  readonly aim: Point;
}

const steps = (count: number): number[] => Array.from({ length: count + 1 }, (_, i) => i / count);

/** Everything a hand can hold, for a plan. */
export function handleDrawing({ plan, anatomy }: Evaluation, lens: Lens, pivot: Pivot): HandleDrawing {
  const at = (p: Vec3): Point => lens.at(anatomy.toJaw(p));
  const reach = tiltReach(plan, pivot);
  const bar = (coronal: number, way: Vec3): [Point, Point] => {
    const middle = onAxis(plan, coronal);
    return [at(along(middle, way, -BAR)), at(along(middle, way, BAR))];
  };
  const arc = (mesial: number, facial: number): Point[] =>
    steps(24).map((w) => {
      const k = ARC.half * (2 * w - 1);
      return at(arcPoint(plan, pivot, reach, mesial * k, facial * k));
    });
  const grip = (id: HandleId): Point => at(HANDLE[id].grip(plan, pivot, reach));
  return {
    grips: {
      shift: grip('shift'),
      'shift-f': grip('shift-f'),
      'shift-m': grip('shift-m'),
      tilt: grip('tilt'),
      'tilt-fp': grip('tilt-fp'),
      'tilt-md': grip('tilt-md'),
      advance: grip('advance'),
      turn: grip('turn'),
    },
    facialBar: bar(PLACES.facialBar, [0, 1, 0]),
    mesialBar: bar(PLACES.mesialBar, [1, 0, 0]),
    facialArc: arc(0, 1),
    mesialArc: arc(1, 0),
    ring: steps(28).map((w) => at(ringPoint(plan, w))),
    advance: [at(onAxis(plan, PLACES.ring + 1.7)), at(onAxis(plan, PLACES.ring - 1.9))],
    pivot: at(pivotPoint(plan, pivot)),
  };
}

/** The axis from `over` mm coronal of the entry, beyond the tilt's arc if not said, to beyond the apex. */
export function axisDrawing(
  { plan, placement, anatomy }: Evaluation,
  lens: Lens,
  over = ARC.radius + 1.8,
): [Point, Point] {
  const at = (p: Vec3): Point => lens.at(anatomy.toJaw(p));
  const coronal = onAxis(plan, over);
  return [at(coronal), at(placement.axisPoint(placement.tA + 3.2))];
}

export function incisalDrawing({ line, anatomy }: Evaluation, lens: Lens): IncisalDrawing {
  const at = (p: Vec3): Point => lens.at(anatomy.toJaw(p));
  return { mesial: at(line.mesialEnd), distal: at(line.distalEnd), crossing: at(line.x), aim: at(line.q) };
}

/** Outlines of the model as one path: of whole lines, or of broken ones. */
export const pathOf = (outlines: readonly Outline[], lens: Lens, pattern?: readonly number[]): string =>
  outlines
    .map(({ points, closed }) => {
      const line = thinned(points.map(lens.at));
      return pattern ? dashed(line, pattern, closed) : polyline(line, closed);
    })
    .join('');

/** Without points that lie nearer than a pixel to the last one. */
function thinned(points: readonly Point[]): Point[] {
  const out: Point[] = [];
  for (const [i, p] of points.entries()) {
    const last = out[out.length - 1];
    if (!last || i === points.length - 1 || Math.hypot(p.x - last.x, p.y - last.y) > 1) out.push(p);
  }
  return out;
}
