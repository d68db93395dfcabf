import { leadOf } from '../implant/shape.ts';
import { facingOf } from '../measure/facing.ts';
import { FACING_TOLERANCE, type SeatSetting, type SeatState, toleranceOf } from './seat.ts';
import { degreesFor, depthOf, partTurn, turnSense } from './turns.ts';
import { reaches, torqueAt } from './wrench.ts';

/** A level at which the neck faces, with the way there from where it stands. */
export interface Rung {
  /** mm above the planned level. */
  readonly above: number;
  /** To turn in from here, degrees; 0: it stands there. */
  readonly degrees: number;
  /** Whole part-turns of the neck after it first faces. */
  readonly parts: number;
  /** The wrench's reading there, N·cm; null: not scripted. */
  readonly torque: number | null;
  /** The maximum is reached before. */
  readonly blocked: boolean;
}

/** Rungs left, from where the implant stands down to the first below the planned level; none while the ladder's height is unknown or the neck is round. */
export function rungsLeft(setting: SeatSetting, state: SeatState): Rung[] {
  const { shape, tooth } = setting;
  const part = partTurn(shape);
  if (!part || !state.known) return [];
  const off = facingOf(shape.index, state.roll);
  const way = -turnSense(tooth) * off;
  const first =
    Math.abs(off) <= FACING_TOLERANCE + 1e-9 ? 0 : way - part.degrees * Math.floor(way / part.degrees);
  const out: Rung[] = [];
  for (let parts = 0; ; parts++) {
    // Where it already faces, the next rungs are counted from the exact facing.
    const degrees = parts === 0 ? first : (first === 0 ? way : first) + parts * part.degrees;
    const rung = rungAt(setting, state, degrees, parts);
    out.push(rung);
    if (rung.above <= 0) return out;
  }
}

function rungAt(setting: SeatSetting, state: SeatState, degrees: number, parts: number): Rung {
  const { shape, wrench } = setting;
  const above = state.above - depthOf(leadOf(shape), degrees);
  const stop = degrees === 0 ? null : reaches(wrench, state.above, above, shape.maxTorque);
  const blocked = stop !== null && stop > above + 1e-9;
  return { above, degrees, parts, torque: torqueAt(wrench, above), blocked };
}

export const FINISH_CODES = ['unknown', 'here', 'turn-in', 'blocked', 'too-deep'] as const;
/**
 * `unknown`: the ladder's height is not known yet; `here`: it stands at its best; `turn-in`: so many degrees more; `blocked`: the maximum is reached
 * before; `too-deep`: it stands below all that is right, and the next rung is deeper still.
 */
export type FinishCode = (typeof FINISH_CODES)[number];

/** How to come to an end from a stop. */
export interface Finish {
  readonly code: FinishCode;
  /** The rung nearest to the planned level. */
  readonly nearest: Rung | null;
  /** The nearest of those that do not stand higher than is allowed. */
  readonly allowed: Rung | null;
  /** The one to go for. */
  readonly best: Rung | null;
  /** Degrees to turn in for it; null: none is known. */
  readonly degrees: number | null;
}

export function planFinish(setting: SeatSetting, state: SeatState): Finish {
  const rungs = setting.shape.index === 0 ? roundRungs(setting, state) : rungsLeft(setting, state);
  const highest = setting.highest ?? toleranceOf(setting);
  const nearest = nearestOf(rungs);
  const allowed = nearestOf(rungs.filter(({ above }) => above <= highest + 1e-9));
  const best = allowed ?? nearest;
  if (!best) return { code: 'unknown', nearest, allowed, best, degrees: null };
  const deep = best.above < -toleranceOf(setting) - 1e-9;
  const code = deep ? 'too-deep' : best.blocked ? 'blocked' : best.degrees === 0 ? 'here' : 'turn-in';
  return { code, nearest, allowed, best, degrees: best.degrees };
}

/** A round neck may stop at the planned level itself, or where it stands if that is deeper. */
function roundRungs(setting: SeatSetting, state: SeatState): Rung[] {
  if (!state.known) return [];
  return [rungAt(setting, state, degreesFor(leadOf(setting.shape), Math.max(0, state.above)), 0)];
}

const nearestOf = (rungs: readonly Rung[]): Rung | null =>
  rungs.reduce<Rung | null>(
    (best, r) => (best && Math.abs(best.above) <= Math.abs(r.above) ? best : r),
    null,
  );
