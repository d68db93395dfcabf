import type { Drill, NeckCutter } from '../core/drilling/kit.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { AXIS, dashed } from '../marks/dash.ts';
import { polyline } from '../marks/path.ts';
import { intoSection } from '../paper/sectionPlane.ts';
import { formatNumber } from '../words/format.ts';
import { PX_PER_MM, yOf } from './scale.ts';
import { marksOf, toolOutline } from './toolOutline.ts';

interface SectionToolProps {
  tool: Drill | NeckCutter;
  /** Level of the bottom of its full diameter, or of the neck's notch, mm apical of the entry. */
  bottom: number;
  /** Nothing is drawn above this, px. */
  top: number;
}

const figure = (value: number): string => formatNumber({ value, unit: 'count' });

/** The tool in the hand, upright, with its marks and their figures. */
export function SectionTool({ tool, bottom, top }: SectionToolProps) {
  const reach = bottom - (top - yOf(0)) / PX_PER_MM;
  const place = toolOutline(tool, reach).map(({ x, y }) => ({ x: x * PX_PER_MM, y: yOf(bottom + y) }));
  const marks = marksOf(tool).filter(({ y }) => yOf(bottom + y) > top + 8);
  return (
    <g className="tool-cut" data-outline="tool">
      <path d={polyline(place, true)} />
      {marks.map(({ shows, y, r }) => {
        const at = yOf(bottom + y);
        const half = r * PX_PER_MM;
        return (
          <g key={`${y}`}>
            <path className="tool-mark" d={`M${-half} ${at}H${half}`} />
            {shows !== null && (
              <text className="drawing-figure" x="0" y={at - 3} textAnchor="middle">
                {figure(shows)}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

interface PlannedAxisProps {
  planned: Evaluation;
  evaluation: Evaluation;
  kind: 'faciopalatal' | 'mesiodistal';
}

/** How far the planned axis is drawn past the implant's ends, mm. */
const PAST = { above: 7, below: 2.5 } as const;

/** The planned axis as it is seen across the section of the tool in the hand. */
export function PlannedAxis({ planned, evaluation, kind }: PlannedAxisProps) {
  const project = intoSection(evaluation, kind);
  const { placement, anatomy } = planned;
  const points = [placement.tP - PAST.above, placement.tA + PAST.below].map((level) => {
    const { x, level: down } = project(anatomy.toJaw(placement.axisPoint(level)));
    return { x: x * PX_PER_MM, y: yOf(down) };
  });
  return <path className="planned-axis" d={dashed(points, AXIS)} data-line="planned-axis" />;
}
