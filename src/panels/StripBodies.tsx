import type { Drill, NeckCutter } from '../core/drilling/kit.ts';
import type { ImplantShape } from '../core/implant/shape.ts';
import { dashed, GHOST } from '../marks/dash.ts';
import { type Point, polyline } from '../marks/path.ts';
import { implantOutline } from '../paper/implantOutline.ts';
import { formatNumber } from '../words/format.ts';
import { STRIP, type StripScale } from './stripLayout.ts';
import { halfTool, marksOf, toolOutline } from './toolOutline.ts';

/** Points of a body, mm from its axis and apical of `bottom`, onto the strip. */
const placed = (
  points: readonly Point[],
  axis: number,
  bottom: number,
  { y, pxPerMm }: StripScale,
): Point[] => points.map((p) => ({ x: axis + p.x * pxPerMm, y: Math.max(STRIP.top - 14, y(bottom + p.y)) }));

const figure = (value: number): string => formatNumber({ value, unit: 'count' });
/** Far enough for a body to reach out of the drawing, mm. */
const OUT = 40;
/** Marks nearer than this to the top are left out, px. */
const TOP_FREE = 2;

/** A drill that reaches further leaves no room for figures beside it, px. */
const WIDEST_WITH_FIGURES = 172;

interface HalvesProps {
  shape: ImplantShape;
  /** Level of the shoulder, mm below the bone entry. */
  shoulder: number;
  drill: Drill;
  fullDepth: number;
  scale: StripScale;
}

/** Implant and last drill at the planned depth as half views about one axis: the implant on the left, the drill on the right. */
export function PlannedHalves({ shape, shoulder, drill, fullDepth, scale }: HalvesProps) {
  const x = STRIP.planned;
  const left = implantOutline(shape, 0).filter((p) => p.x <= 0);
  const implant = [{ x: 0, y: left[left.length - 1].y }, ...[...left].reverse(), { x: 0, y: left[0].y }];
  const marks = marksOf(drill).map((mark) => ({ ...mark, at: scale.y(fullDepth + mark.y) }));
  const edge = x + (drill.diameter / 2) * scale.pxPerMm;
  return (
    <g data-outline="planned">
      <g className="implant-cut">
        <path d={polyline(placed(implant, x, shoulder, scale), true)} />
      </g>
      <g className="tool-cut">
        <path d={polyline(placed(halfTool(drill, OUT, 1), x, fullDepth, scale), true)} />
        {marks
          .filter(({ at }) => at > STRIP.top + TOP_FREE)
          .map(({ shows, at }) => (
            <g key={shows}>
              <path className="tool-mark tool-mark-thin" d={`M${x} ${at}H${edge}`} />
              {shows !== null && edge < WIDEST_WITH_FIGURES && (
                <text className="strip-word" x={edge + 3} y={at + 4}>
                  {figure(shows)}
                </text>
              )}
            </g>
          ))}
      </g>
    </g>
  );
}

interface HandProps {
  tool: Drill | NeckCutter;
  /** Of the tool now, and where it is to stop, mm below the bone entry. */
  depth: number;
  stop: number;
  /** Level from which down marks are out of sight, mm below the bone entry. */
  sight: number;
  scale: StripScale;
}

/** The tool in the hand as a gauge: its marks go out of sight in gum or bone; where it is to stop as a ghost. */
export function HandGauge({ tool, depth, stop, sight, scale }: HandProps) {
  const x = STRIP.hand;
  const marks = marksOf(tool)
    .map((mark) => ({ ...mark, level: depth + mark.y }))
    .filter(({ level }) => level <= sight + 1e-6 && scale.y(level) > STRIP.top + TOP_FREE);
  const ghost = toolOutline(tool, Math.max(0, stop));
  return (
    <g data-gauge>
      <path className="drawing-thin" d={dashed(placed(ghost, x, stop, scale), GHOST)} />
      <g className="tool-cut">
        <path d={polyline(placed(toolOutline(tool, OUT), x, depth, scale), true)} />
        {marks.map(({ shows, level, r }) => {
          const [at, half] = [scale.y(level), r * scale.pxPerMm];
          return (
            <g key={level}>
              <path className="tool-mark" d={`M${x - half} ${at}H${x + half}`} />
              {shows !== null && at > STRIP.top + 12 && (
                <text className="drawing-figure" x={x} y={at - 3} textAnchor="middle">
                  {figure(shows)}
                </text>
              )}
            </g>
          );
        })}
      </g>
    </g>
  );
}

interface HoleProps {
  passes: readonly { readonly tool: Drill | NeckCutter; readonly depth: number }[];
  scale: StripScale;
}

/** What has been drilled so far, each pass as deep below its own bone entry as it went. */
export function StripHole({ passes, scale }: HoleProps) {
  const paths = passes.map(({ tool, depth }) =>
    polyline(placed(toolOutline(tool, depth), STRIP.hand, depth, scale), true),
  );
  return (
    <g data-outline="made">
      {paths.map((d) => (
        <path key={d} className="hole-edge-thin" d={d} />
      ))}
      {paths.map((d) => (
        <path key={d} className="hole-void" d={d} />
      ))}
    </g>
  );
}
