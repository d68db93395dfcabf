import type { SiteCode } from '../anatomy/site.ts';
import type { DrillPose, SeatAct, WrenchScript } from '../drilling/rehearsal.ts';
import { axisOf, entryOf, type Pose, platformOf, type Tilt, tiltOf } from '../geometry/pose.ts';
import { add, along, angleBetween, scale, unit, type Vec3 } from '../geometry/vec.ts';
import { type ImplantShape, leadOf } from '../implant/shape.ts';
import { facingOf } from '../measure/facing.ts';
import { causeAt, type FreeLevels, type StopCause } from './hindrance.ts';
import { rungOf } from './ladder.ts';
import { degreesFor, depthOf, rollAfter, turnSense } from './turns.ts';
import { reaches, torqueAt } from './wrench.ts';

/** Fingers take the implant to here, N·cm: assumed, ours. */
export const FINGER_TORQUE = 10;
/** After so many turns the thread has bitten and the ladder's height is known: assumed, ours. */
export const BITE_TURNS = 1;
/** Within so many turns from the start the hand can still steer: assumed, ours. */
export const STEER_TURNS = 2;
/** Over so many turns from the start pressing in makes up for thread that does not hold yet: assumed, ours. */
export const SPIN_TURNS = 4;
/** A neck this near to its facing faces, degrees: ours. */
export const FACING_TOLERANCE = 2;
/** A round neck has no rungs; its level is right to this, mm: ours. */
export const ROUND_TOLERANCE = 0.1;

export const SEAT_PHASES = ['before', 'fingers', 'wrench', 'stopped-at-max', 'backed-out', 'seated'] as const;
export type SeatPhase = (typeof SEAT_PHASES)[number];

export const SEAT_CODES = [
  'not-started',
  'started',
  'turned',
  'fingers-at-limit',
  'stop-back-out',
  'seated',
  'loosened',
  'spins',
  'steered',
  'steer-held',
  'steer-too-late',
  'backed-out',
] as const;
/** What the last act came to. */
export type SeatCode = (typeof SEAT_CODES)[number];

/** What stands before the first act. Levels are the shoulder's, mm above the planned one. */
export interface SeatSetting {
  readonly shape: ImplantShape;
  readonly tooth: SiteCode;
  readonly planned: Pose;
  readonly wrench: WrenchScript | null;
  /** Level at which the thread meets the hole's side and begins to bite. */
  readonly bite: number;
  /** Half-width of the band of levels that is right; null: half a rung. */
  readonly tolerance: number | null;
  /** Highest level that is allowed; null: what the tolerance allows. */
  readonly highest: number | null;
  readonly free: FreeLevels;
  /** How far the hole lets the implant lean at the start, degrees. */
  readonly play: number;
  /** Whether enough thread holds at a level; else the implant spins. */
  readonly holds: (above: number) => boolean;
}

export interface SeatState {
  readonly phase: SeatPhase;
  readonly code: SeatCode;
  /** Degrees really turned by the last act, + in. */
  readonly made: number;
  /** Roll of the mark, + toward mesial, degrees. */
  readonly roll: number;
  readonly above: number;
  /** Turns in since the start, backward ones taken off. */
  readonly turns: number;
  /** Whether the height of the ladder is known. */
  readonly known: boolean;
  readonly torque: number | null;
  /** Degrees turned back since the start with the thread in bone: what it has been loosened by. */
  readonly loosened: number;
  readonly backOuts: number;
  /** Level of a rung of the last seating, for the next start; null: none was known. */
  readonly lastRung: number | null;
  /** The axis as it stands. */
  readonly mouth: { readonly m: number; readonly f: number };
  readonly tilt: Tilt;
  readonly startTilt: Tilt;
  /** Only with `stop-back-out`. */
  readonly cause: StopCause | null;
}

/** The band of levels about the planned one that is right, mm: the user's own, else half a rung, since no ladder can promise more. */
export function toleranceOf({ shape, tolerance }: SeatSetting): number {
  const rung = rungOf(shape);
  return tolerance ?? (rung === null ? ROUND_TOLERANCE : rung / 2);
}

/** Where an axis crosses the plane `c = 0`, as a drill's pose has it. */
function mouthOf(pose: Pose): DrillPose['mouth'] {
  const [m, f] = entryOf(pose);
  return { m, f };
}

export function beforeSeating(setting: SeatSetting): SeatState {
  const { planned, bite, wrench } = setting;
  return {
    phase: 'before',
    code: 'not-started',
    made: 0,
    roll: planned.roll,
    above: bite,
    turns: 0,
    known: false,
    torque: torqueAt(wrench, bite),
    loosened: 0,
    backOuts: 0,
    lastRung: null,
    mouth: mouthOf(planned),
    tilt: planned.tilt,
    startTilt: planned.tilt,
    cause: null,
  };
}

/** The states before and after each act. */
export function seating(setting: SeatSetting, acts: readonly SeatAct[]): SeatState[] {
  const out = [beforeSeating(setting)];
  for (const act of acts) out.push(afterAct(setting, out[out.length - 1], act));
  return out;
}

/** One act (rules T5 to T9). Pure. */
export function afterAct(setting: SeatSetting, state: SeatState, act: SeatAct): SeatState {
  const still = { ...state, made: 0, cause: null };
  if (act.kind === 'start') {
    const { roll, pose } = act;
    const fresh = beforeSeating(setting);
    const { backOuts, lastRung } = state;
    const { mouth, tilt } = pose;
    return {
      ...fresh,
      phase: 'fingers',
      code: 'started',
      roll,
      mouth,
      tilt,
      startTilt: tilt,
      backOuts,
      lastRung,
    };
  }
  if (state.phase === 'before' || state.phase === 'backed-out') return { ...still, code: 'not-started' };
  if (act.kind === 'back-out') return backedOut(setting, still);
  if (act.kind === 'steer') return steered(setting, still, act.tilt);
  return act.degrees < 0 ? turnedBack(setting, still, act) : turnedIn(setting, still, act);
}

type Turn = Extract<SeatAct, { kind: 'turn' }>;

function turnedIn(setting: SeatSetting, state: SeatState, { by, degrees }: Turn): SeatState {
  const { shape, wrench, holds } = setting;
  const lead = leadOf(shape);
  if (state.turns >= SPIN_TURNS - 1e-9 && !holds(state.above)) {
    const roll = rollAfter(setting.tooth, state.roll, degrees);
    return { ...state, phase: by, code: 'spins', made: degrees, roll };
  }
  const limit = by === 'fingers' ? Math.min(FINGER_TORQUE, shape.maxTorque) : shape.maxTorque;
  const goal = state.above - depthOf(lead, degrees);
  const stop = reaches(wrench, state.above, goal, limit);
  const above = stop ?? goal;
  const made = stop === null ? degrees : degreesFor(lead, state.above - above);
  const torque = stop === null ? torqueAt(wrench, above) : Math.max(limit, torqueAt(wrench, above) ?? 0);
  const moved = moveTo(setting, state, above, made, torque);
  if (isSeated(setting, moved)) return { ...moved, phase: 'seated', code: 'seated' };
  if (stop === null) return { ...moved, phase: by, code: 'turned' };
  if (by === 'fingers' && limit < shape.maxTorque)
    return { ...moved, phase: made > 0 ? by : state.phase, code: 'fingers-at-limit' };
  const cause = causeAt(shape, setting.free, above);
  return { ...moved, phase: 'stopped-at-max', code: 'stop-back-out', cause };
}

/** The thread runs back in its own track; back past the bite it is out. */
function turnedBack(setting: SeatSetting, state: SeatState, { by, degrees }: Turn): SeatState {
  const above = state.above - depthOf(leadOf(setting.shape), degrees);
  if (above >= setting.bite) return backedOut(setting, state);
  const moved = moveTo(setting, state, above, degrees, torqueAt(setting.wrench, above));
  const loosened = state.loosened - degrees;
  if (isSeated(setting, moved)) return { ...moved, loosened, phase: 'seated', code: 'loosened' };
  return { ...moved, loosened, phase: by, code: 'loosened' };
}

function moveTo(
  setting: SeatSetting,
  state: SeatState,
  above: number,
  made: number,
  torque: number | null,
): SeatState {
  const roll = rollAfter(setting.tooth, state.roll, made);
  const turns = state.turns + made / 360;
  return { ...state, above, made, roll, turns, torque, known: state.known || turns >= BITE_TURNS - 1e-9 };
}

function backedOut(setting: SeatSetting, state: SeatState): SeatState {
  const lastRung = state.known ? rungLevel(setting, state) : state.lastRung;
  const { above, torque } = beforeSeating(setting);
  const made = -degreesFor(leadOf(setting.shape), above - state.above);
  return {
    ...moveTo(setting, state, above, made, torque),
    phase: 'backed-out',
    code: 'backed-out',
    turns: 0,
    known: false,
    loosened: 0,
    backOuts: state.backOuts + 1,
    lastRung,
  };
}

/** Only by hand, before the thread guides, and no further from the start than the hole's play: held at its edge. */
function steered(setting: SeatSetting, state: SeatState, tilt: Tilt): SeatState {
  if (state.phase !== 'fingers' || state.turns >= STEER_TURNS) return { ...state, code: 'steer-too-late' };
  const from = axisOf(state.startTilt);
  const to = axisOf(tilt);
  const angle = angleBetween(from, to);
  if (angle <= setting.play + 1e-9) return { ...state, code: 'steered', tilt };
  return { ...state, code: 'steer-held', tilt: tiltOf(toward(from, to, setting.play / angle)) };
}

/** Direction at a share of the angle between two unit vectors. */
function toward(from: Vec3, to: Vec3, share: number): Vec3 {
  const angle = (angleBetween(from, to) * Math.PI) / 180;
  const part = (w: number) => Math.sin(w * angle) / Math.sin(angle);
  return unit(add(scale(from, part(1 - share)), scale(to, part(share))));
}

/** A level at which the neck faces, by how it stands now (model 6: `S_0`), mm above the planned one. Of a round neck: where it stands. */
export function rungLevel({ shape, tooth }: SeatSetting, { roll, above }: SeatState): number {
  if (shape.index === 0) return above;
  return above + depthOf(leadOf(shape), turnSense(tooth) * facingOf(shape.index, roll));
}

/** The three questions of a stop (model 6), side by side. */
export interface Questions {
  /** mm above the planned level, against what counts as right. */
  readonly level: { readonly right: boolean; readonly off: number; readonly tolerance: number };
  /** Degrees off the facing; null for a round neck, which always faces. */
  readonly facing: { readonly right: boolean; readonly off: number | null };
  /** N·cm; nulls where no wrench is scripted. */
  readonly torque: { readonly right: boolean; readonly reading: number | null; readonly left: number | null };
}

export function questionsAt(setting: SeatSetting, { above, roll, torque }: SeatState): Questions {
  const { shape } = setting;
  const tolerance = toleranceOf(setting);
  const off = shape.index === 0 ? null : facingOf(shape.index, roll);
  const left = torque === null ? null : Math.max(0, shape.maxTorque - torque);
  return {
    level: { right: Math.abs(above) <= tolerance + 1e-9, off: above, tolerance },
    facing: { right: off === null || Math.abs(off) <= FACING_TOLERANCE + 1e-9, off },
    torque: { right: left === null || left > 0, reading: torque, left },
  };
}

function isSeated(setting: SeatSetting, state: SeatState): boolean {
  const { level, facing } = questionsAt(setting, state);
  const high = setting.highest !== null && state.above > setting.highest + 1e-9;
  return state.known && level.right && facing.right && !high;
}

/** Where the implant stands in a state, for drawing. It slides along the axis through the mouth, at the planned place plus what it stands above it. */
export function poseAt({ planned }: SeatSetting, { above, mouth, tilt, roll }: SeatState): Pose {
  const before = platformOf(planned);
  const height = before[2] / axisOf(planned.tilt)[2];
  const [m, f, c] = along([mouth.m, mouth.f, 0], axisOf(tilt), height + above);
  return { platform: { m, f, c }, tilt, roll };
}
