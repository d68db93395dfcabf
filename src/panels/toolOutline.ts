import { countedPoint } from '../core/drilling/depthMark.ts';
import { type Drill, type NeckCutter, pointLength } from '../core/drilling/kit.ts';
import { isDrill } from '../core/drilling/passBody.ts';
import type { Point } from '../marks/path.ts';

/** Stem of a neck cutter over its frustum, mm: radius, and where it begins. */
const STEM = { radius: 1.17, over: 1.2 } as const;

/** One side of a tool as the axis sees it: `x` away from the axis, `y` apical of the bottom of its full diameter (the neck's notch), mm; `reach` above that. */
function flank(tool: Drill | NeckCutter, reach: number): Point[] {
  if (isDrill(tool)) {
    const r = tool.diameter / 2;
    return [
      { x: r, y: -reach },
      { x: r, y: 0 },
      { x: 0, y: pointLength(tool) },
    ];
  }
  const { neckDiameter, shoulderDiameter, height } = tool;
  const high = shoulderDiameter / 2;
  return [
    { x: STEM.radius, y: -Math.max(reach, height + 2 * STEM.over) },
    { x: STEM.radius, y: -height - 2 * STEM.over },
    { x: high, y: -height - STEM.over },
    { x: high, y: -height },
    { x: neckDiameter / 2, y: 0 },
    { x: 0, y: 0 },
  ];
}

/** Silhouette of a tool, mm. */
export function toolOutline(tool: Drill | NeckCutter, reach: number): Point[] {
  const right = flank(tool, reach);
  return [...right, ...right.map(({ x, y }) => ({ x: -x, y })).reverse()];
}

/** The half of it on one side of the axis: `way` + right. */
export const halfTool = (tool: Drill | NeckCutter, reach: number, way: 1 | -1): Point[] => [
  { x: 0, y: -reach },
  ...flank(tool, reach).map(({ x, y }) => ({ x: way * x, y })),
];

/** A ring round a tool that a depth is read by: a drill's mark, or a neck cutter's notch. */
export interface ToolMark {
  /** Depth that it shows, mm; null: a notch. */
  readonly shows: number | null;
  /** mm apical of the bottom of the full diameter (negative: above it). */
  readonly y: number;
  /** Radius of the tool there. */
  readonly r: number;
}

export function marksOf(tool: Drill | NeckCutter): ToolMark[] {
  if (isDrill(tool)) {
    const counted = countedPoint(tool);
    return tool.marks.map((mark) => ({ shows: mark, y: counted - mark, r: tool.diameter / 2 }));
  }
  return [
    { shows: null, y: 0, r: tool.neckDiameter / 2 },
    { shows: null, y: -tool.height, r: tool.shoulderDiameter / 2 },
  ];
}
