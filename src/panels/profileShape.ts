import { limitOf } from '../core/measure/defaultLimits.ts';
import type { ProfileSample, Side } from '../core/measure/reading.ts';
import type { Plan } from '../core/plan/plan.ts';
import type { Point } from '../marks/path.ts';
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

interface Run {
  readonly samples: readonly ProfileSample[];
}

/** Consecutive levels that have a wall; where there is none the profile stays blank. */
export function runsOf(samples: readonly ProfileSample[]): Run[] {
  const runs: ProfileSample[][] = [];
  let open = false;
  for (const sample of samples) {
    // A surface that stands out above the counting window is the neck over the crest, not a lost wall.
    if (sample.wall === null || (sample.wall < 0 && !sample.counts)) open = false;
    else {
      if (!open) runs.push([]);
      runs[runs.length - 1].push(sample);
      open = true;
    }
  }
  return runs.filter((run) => run.length > 1).map((run) => ({ samples: run }));
}

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

/** Levels at which a side's limit line may step, mm: fine enough for any band. */
const LIMIT_STEP = 0.25;

/** A side's limit as a stepped line of px: `near` is the dashed one, `beyond` the solid one. */
export function limitLine(
  plan: Plan,
  side: Side,
  bound: 'near' | 'beyond',
  from: number,
  to: number,
): Point[] {
  const way = wayOf(side) * THICK_PX;
  const points: Point[] = [];
  for (let level = from; level <= to + 1e-9; level += LIMIT_STEP) {
    const limit = limitOf(`${side}-wall-thinnest`, plan.fixing, level, plan.limits);
    const thickness = limit?.bands.low?.[bound];
    if (thickness === undefined) continue;
    const x = way * thickness;
    const before = points[points.length - 1];
    if (before && before.x !== x) points.push({ x, y: before.y });
    points.push({ x, y: yOf(level) });
  }
  return points;
}
