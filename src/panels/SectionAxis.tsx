import { AXIS, dashed } from '../marks/dash.ts';
import { DRAWING_HEIGHT } from './scale.ts';

/** Nothing is written above this, px: the panel's heading stands there. */
export const HEADING = 44;

/** A straight line down the axis, in its dashes. */
const alongAxis = (from: number, to: number): string =>
  dashed(
    [
      { x: 0, y: from },
      { x: 0, y: to },
    ],
    AXIS,
  );

/** The axis as a long dash and dot, light where it runs through steel between two levels. */
export function AxisLine({ top, foot }: { top: number; foot: number }) {
  return (
    <>
      <path
        className="axis"
        d={alongAxis(36, Math.max(36, top)) + alongAxis(foot, Math.min(DRAWING_HEIGHT - 34, foot + 34))}
      />
      <path className="axis axis-in-steel" d={alongAxis(Math.max(36, top), foot)} />
    </>
  );
}
