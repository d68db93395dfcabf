import type { PassFaultCode } from '../drilling/passFaults.ts';
import type { ReadingId } from '../measure/reading.ts';
import type { Plan } from '../plan/plan.ts';
import { type Move, movedBy, type NotHere, notHere, type Size, sizesOf } from './move.ts';

export const TRAJECTORY_IDS = [
  'too-facial',
  'too-palatal',
  'apex-facial',
  'apex-palatal',
  'facial-and-upright',
  'along-ridge',
  'along-crown',
  'mesial-root',
  'distal-root',
  'too-shallow',
  'too-deep',
  'past-floor',
  'into-canal',
  'off-palatal-wall',
  'neck-turned',
  'oval-hole',
  'too-wide',
  'centred-in-socket',
] as const;
export type TrajectoryId = (typeof TRAJECTORY_IDS)[number];

/** What goes wrong beside a reading's limit. */
export type RuleCode = PassFaultCode | 'neck-off-facing' | 'hole-open';

/** A bad trajectory, as data (rules L1, L2). */
export interface Trajectory {
  readonly id: TrajectoryId;
  /** In order, each at the same amount. */
  readonly moves: readonly Move[];
  /** What it is brought up for: readings of which it breaks one on a site where it costs what it is known for. */
  readonly breaks: readonly ReadingId[];
  /** Rules that it breaks, of drilling or seating. */
  readonly rules: readonly RuleCode[];
  /** The mistake is made while drilling: the plan it leads to has a rehearsal of its own. */
  readonly drilled: boolean;
}

type Toward = 'facial' | 'palatal' | 'mesial' | 'distal';

const shifted = (toward: Toward, amount: number): Move => ({
  kind: 'edit',
  edit: { kind: 'shift', toward, amount },
});
/** `toward`: where the crown end goes; the apex goes the other way, the entry stands. */
const tilted = (toward: Toward, amount: number): Move => ({
  kind: 'edit',
  edit: { kind: 'tilt', toward, pivot: 'entry', amount },
});
const advanced = (toward: 'apical' | 'coronal', amount: number): Move => ({
  kind: 'edit',
  edit: { kind: 'advance', toward, amount },
});

const FACIAL = ['facial-wall-thinnest', 'facial-wall-1mm', 'exposure-dehiscence'] as const;
const PALATAL = ['palatal-wall-thinnest', 'palatal-wall-true', 'exposure-dehiscence'] as const;
const WINDOW = ['facial-wall-thinnest', 'apex-to-concavity', 'exposure-fenestration'] as const;
const DEPTHS = ['shoulder-to-gum-margin', 'shoulder-to-cej'] as const;

const bad = (
  id: TrajectoryId,
  moves: readonly Move[],
  breaks: readonly ReadingId[],
  more: Partial<Pick<Trajectory, 'rules' | 'drilled'>> = {},
): Trajectory => ({ id, moves, breaks, rules: [], drilled: false, ...more });

/** The bad trajectories. Their full sizes are this project's: of the order of the largest errors that studies of freehand placement report (Varga 2020: angle up to 21.3°). */
export const TRAJECTORIES: readonly Trajectory[] = [
  bad('too-facial', [shifted('facial', 2)], FACIAL),
  bad('too-palatal', [shifted('palatal', 3)], [...PALATAL, 'incisal-line-offset']),
  bad('apex-facial', [tilted('palatal', 15)], WINDOW),
  bad('apex-palatal', [tilted('facial', 20)], ['incisal-line-offset', 'access-exit-correction', ...PALATAL]),
  bad('facial-and-upright', [shifted('facial', 0.8), tilted('palatal', 7)], [...FACIAL, ...WINDOW]),
  bad('along-ridge', [{ kind: 'lean-as', what: 'ridge' }], ['incisal-line-offset', 'access-exit-correction']),
  bad('along-crown', [{ kind: 'lean-as', what: 'crown' }], WINDOW),
  bad('mesial-root', [shifted('mesial', 1.5), tilted('distal', 15)], ['root-mesial', 'root-mesial-shoulder']),
  bad('distal-root', [shifted('distal', 1.5), tilted('mesial', 15)], ['root-distal', 'root-distal-shoulder']),
  bad('too-shallow', [advanced('coronal', 3)], [...DEPTHS, 'crown-height']),
  bad('too-deep', [advanced('apical', 3)], DEPTHS),
  bad('past-floor', [{ kind: 'longer-past-floor', past: 1 }], ['apex-to-floor']),
  bad('into-canal', [{ kind: 'at-canal', past: 0.5, most: 4 }], ['canal']),
  bad('off-palatal-wall', [{ kind: 'drift', most: 2 }], WINDOW, {
    rules: ['drifted-facially'],
    drilled: true,
  }),
  bad('neck-turned', [{ kind: 'turn-neck' }], DEPTHS, { rules: ['neck-off-facing'] }),
  bad('oval-hole', [{ kind: 'press', toward: 0, most: 1.5 }], ['facial-wall-thinnest', 'facial-wall-true'], {
    rules: ['oval', 'hole-open'],
    drilled: true,
  }),
  bad('too-wide', [{ kind: 'wider', most: 1.5 }], ['root-mesial', 'root-distal', ...FACIAL]),
  bad('centred-in-socket', [{ kind: 'centre-in-socket' }], ['facial-wall-thinnest', 'facial-wall-1mm']),
];

export function trajectoryOf(id: TrajectoryId): Trajectory {
  const found = TRAJECTORIES.find((t) => t.id === id);
  if (!found) throw new Error(`no trajectory ${id}`);
  return found;
}

/** The plan gone wrong: 0 is the plan itself, 1 the full size. A drilled trajectory brings its passes along. */
export const goneWrong = (plan: Plan, id: TrajectoryId, amount: number): Plan =>
  trajectoryOf(id).moves.reduce((from, move) => movedBy(from, move, amount), plan);

/** Why a trajectory is none in this plan, whatever the amount; null: it is one. */
export function notInPlan(plan: Plan, id: TrajectoryId): NotHere | null {
  const reasons = trajectoryOf(id).moves.map((move) => notHere(plan, move));
  return reasons.every((reason) => reason !== null) ? (reasons[0] ?? null) : null;
}

/** What it comes to at an amount, part by part. */
export const sizesAt = (plan: Plan, id: TrajectoryId, amount: number): Size[] =>
  trajectoryOf(id).moves.flatMap((move) => sizesOf(plan, move, amount));
