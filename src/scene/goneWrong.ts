import type { Evaluation } from '../core/plan/evaluate.ts';
import { dashed, GOOD } from '../marks/dash.ts';
import { type Point, polyline } from '../marks/path.ts';
import { axisDrawing } from './drawing.ts';
import { ghostEdge } from './ghost.ts';
import type { Lens } from './lens.ts';

/** How far over the entry the axes are drawn, mm: just past the crowns. */
const OVER = 13;
/** From a line's end to its label, px. */
const AWAY = { along: 16, up: 12 } as const;

/** Words at the end of a line, with a leader to them; px. */
export interface EndLabel {
  readonly from: Point;
  readonly to: Point;
  readonly side: 'left' | 'right';
}

/** The plan beneath a plan gone wrong, as thin lines that hide nothing, and where each of the two is named. */
export interface GoneWrongDrawing {
  readonly axis: readonly [Point, Point];
  /** Envelope and axis of the plan, path data. */
  readonly good: string;
  /** The same as whole lines, for the paper under them. */
  readonly casing: string;
  readonly labels: Readonly<Record<'good' | 'wrong', EndLabel>>;
}

/** How a plan gone wrong is drawn beside the plan; null where the two are the same. */
export function goneWrongDrawing(
  planned: Evaluation,
  wrong: Evaluation,
  lens: Lens,
): GoneWrongDrawing | null {
  const { pose, implant } = wrong.plan;
  if (pose === planned.plan.pose && implant === planned.plan.implant) return null;
  const edge = ghostEdge(planned.plan, planned.anatomy, lens);
  const good = axisDrawing(planned, lens, OVER);
  const axis = axisDrawing(wrong, lens, OVER);
  const label = (from: Point, right: boolean, up: number): EndLabel => ({
    from,
    to: { x: from.x + (right ? AWAY.along : -AWAY.along), y: from.y - up },
    side: right ? 'right' : 'left',
  });
  return {
    axis,
    good: dashed(edge, GOOD, true) + dashed(good, GOOD),
    casing: polyline(edge, true) + polyline(good),
    labels: {
      wrong: label(axis[0], axis[0].x >= good[0].x, AWAY.up),
      good: label(good[1], good[1].x > axis[1].x, -AWAY.up),
    },
  };
}
