import type { Interval } from '../geometry/interval.ts';
import { clip, type Flank, type ToolLine, type ToolProfile } from './convexBody.ts';

/** A press in the tool's own plane: the bottom moves by `bottom` across the axis, a point `h` above it by `bottom + kappa h`. mm and mm per mm. */
export interface Sweep {
  readonly bottom: number;
  readonly kappa: number;
}

/** A line in the coordinates of the tool before it is pressed: along the press, across it, and up the axis from the bottom. */
export interface PressLine {
  readonly x: number;
  readonly xv: number;
  readonly y: number;
  readonly yv: number;
  readonly h: number;
  readonly hv: number;
}

/** Share `s` of a press: how far the bottom has moved, and how far the axis leans by then. */
export interface SweepPlace {
  readonly s: number;
  readonly off: number;
  readonly sin: number;
  readonly cos: number;
}

export function placeAt({ bottom, kappa }: Sweep, s: number): SweepPlace {
  const k = kappa * s;
  const long = Math.sqrt(1 + k * k);
  return { s, off: bottom * s, sin: k / long, cos: 1 / long };
}

/** The line as the tool has it at a place of the press. */
export function inTool(l: PressLine, { off, sin, cos }: SweepPlace): ToolLine {
  return {
    x0: (l.x - off) * sin + l.h * cos,
    xv: l.xv * sin + l.hv * cos,
    y0: (l.x - off) * cos - l.h * sin,
    yv: l.xv * cos - l.hv * sin,
    z0: l.y,
    zv: l.yv,
  };
}

/** How far a tipped body may stand off the true one, mm (rule D3); up to 0.003 at the trailing edge of its bottom. */
const SWEEP_ERROR = 1e-4;
const MOST_STEPS = 64;

/** In how many steps a press is taken: one for a shift, which is exact. */
export function stepsOf({ kappa }: Sweep, { x, r }: ToolProfile): number {
  if (kappa === 0) return 1;
  const long = Math.sqrt(1 + kappa * kappa);
  const lever = Math.hypot(Math.max(...r), Math.max(...x.map(Math.abs)));
  const turns = Math.atan(Math.abs(kappa)) / Math.sqrt((4 * SWEEP_ERROR) / lever);
  const stretch = (Math.max(...r) * (long - 1)) / SWEEP_ERROR;
  return Math.min(MOST_STEPS, Math.max(2, Math.ceil(turns), Math.ceil(stretch)));
}

/**
 * What the axis passes over between two places of a press, as thick across it as the tool is at the height: with the tool at both places, its sweep. The
 * axes all run through one point where they turn; `side` says on which side of it. A convex body of flat faces.
 */
export function betweenPlaces(
  sweep: Sweep,
  flanks: readonly Flank[],
  lowest: number,
  [from, to]: readonly [SweepPlace, SweepPlace],
  side: 1 | -1,
  l: PressLine,
): Interval {
  const { bottom, kappa } = sweep;
  const move = bottom + kappa * l.h;
  const moveV = kappa * l.hv;
  let out: Interval = clip([-Infinity, Infinity], side * move, side * moveV);
  out = clip(out, side * (l.x - from.s * move), side * (l.xv - from.s * moveV));
  out = clip(out, side * (to.s * move - l.x), side * (to.s * moveV - l.xv));
  const mid = (from.s + to.s) / 2;
  const stretch = Math.sqrt(1 + kappa * kappa * mid * mid);
  out = clip(out, stretch * l.h - lowest, stretch * l.hv);
  for (const { alpha, beta } of flanks) {
    const at = alpha + beta * stretch * l.h;
    const rate = beta * stretch * l.hv;
    out = clip(clip(out, at - l.y, rate - l.yv), at + l.y, rate + l.yv);
    if (!out) return null;
  }
  return out;
}
