import { limitOf } from '../core/measure/defaultLimits.ts';
import type { ProfileSample, Side } from '../core/measure/reading.ts';
import type { Plan } from '../core/plan/plan.ts';

/** Consecutive levels of a wall profile. */
export interface Run {
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

/** A place of a limit's line: the least thickness from that level on, mm. */
export interface LimitPoint {
  readonly level: number;
  readonly thickness: number;
}

/** Levels at which a side's limit line may step, mm: fine enough for any band. */
const LIMIT_STEP = 0.25;

/** A side's limit as a stepped line: `near` is the one to be within, `beyond` the one not to be inside of. */
export function limitSteps(
  plan: Plan,
  side: Side,
  bound: 'near' | 'beyond',
  from: number,
  to: number,
): LimitPoint[] {
  const points: LimitPoint[] = [];
  for (let level = from; level <= to + 1e-9; level += LIMIT_STEP) {
    const limit = limitOf(`${side}-wall-thinnest`, plan.fixing, level, plan.limits);
    const thickness = limit?.bands.low?.[bound];
    if (thickness === undefined) continue;
    const before = points[points.length - 1];
    if (before && before.thickness !== thickness) points.push({ level: before.level, thickness });
    points.push({ level, thickness });
  }
  return points;
}
