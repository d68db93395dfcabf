import type { ProfileSample, Side } from '../core/measure/reading.ts';
import type { Plan } from '../core/plan/plan.ts';
import type { Point } from '../marks/path.ts';
import { limitSteps, type Run } from '../paper/wallRuns.ts';
import { DRAWING_HEIGHT, yOf } from './scale.ts';

export const PROFILE_WIDTH = 236;
/** Where thickness 0, the implant's surface, stands, px from the left. */
export const ZERO = 108;
/** The plot's left and right edge, px from there, and its foot, px from the top. */
export const LEFT = 8 - ZERO;
export const RIGHT = 206 - ZERO;
export const FOOT = DRAWING_HEIGHT - 32;

/** Thickness on the profile, px a mm. */
export const THICK_PX = 20;

/** Away from the axis: facial to the right. */
export const wayOf = (side: Side): 1 | -1 => (side === 'facial' ? 1 : -1);

/** The area between two thicknesses over a run of levels, as one closed line of px. */
export function areaOf(
  { samples }: Run,
  side: Side,
  inner: (s: ProfileSample) => number,
  outer: (s: ProfileSample) => number,
): Point[] {
  const way = wayOf(side) * THICK_PX;
  const edge = (of: (s: ProfileSample) => number): Point[] =>
    samples.map((s) => ({ x: way * of(s), y: yOf(s.level) }));
  return [...edge(inner), ...edge(outer).reverse()];
}

/** The wall's own edge over a run, px; `counting` keeps only the levels that count, in stretches. */
export function edgesOf({ samples }: Run, side: Side, counting: boolean): Point[][] {
  const way = wayOf(side) * THICK_PX;
  const out: Point[][] = [[]];
  for (const s of samples) {
    if (counting && !s.counts) out.push([]);
    else out[out.length - 1].push({ x: way * (s.wall ?? 0), y: yOf(s.level) });
  }
  return out.filter((points) => points.length > 1);
}

/** A side's limit as a stepped line of px: `near` is the dashed one, `beyond` the solid one. */
export const limitLine = (
  plan: Plan,
  side: Side,
  bound: 'near' | 'beyond',
  from: number,
  to: number,
): Point[] =>
  limitSteps(plan, side, bound, from, to).map(({ level, thickness }) => ({
    x: wayOf(side) * THICK_PX * thickness,
    y: yOf(level),
  }));
