import { holeReadings } from '../drilling/passReadings.ts';
import { passViews } from '../drilling/passView.ts';
import { shortfall } from '../measure/limit.ts';
import { inMargins, SITE_FACT } from '../measure/margin.ts';
import type { Reading, ReadingId } from '../measure/reading.ts';
import { solidsOf } from '../plan/evaluate.ts';
import { kitOf, passesShown } from '../plan/inHand.ts';
import type { Plan } from '../plan/plan.ts';
import { evaluated } from './evaluated.ts';
import { type MouthSign, newSigns } from './mouth.ts';
import type { NotHere } from './move.ts';
import { passesAsPlanned } from './move.ts';
import { type BrokenRule, rulesBroken } from './rules.ts';
import { goneWrong, notInPlan, type Trajectory, type TrajectoryId, trajectoryOf } from './trajectories.ts';

/** One reading in the plan and in the plan gone wrong. */
export interface Change {
  readonly before: Reading;
  readonly after: Reading;
}

/** What a bad trajectory costs in a plan, at an amount (rule L3). Codes and numbers: the catalogue makes the sentences. */
export interface Cost {
  readonly id: TrajectoryId;
  readonly amount: number;
  /** The plan gone wrong. */
  readonly plan: Plan;
  /** Why this trajectory is none in this plan. */
  readonly notHere: NotHere | null;
  /** Readings that lost a status, what is beyond before what is near, where most is lost first. */
  readonly worse: readonly Change[];
  /** Readings that gained one. */
  readonly better: readonly Change[];
  /** A reading of the crown that keeps its status although bone, root, floor or canal is lost: by the crown alone nobody is warned. */
  readonly silent: Change | null;
  /** Rules of drilling and seating that are broken. */
  readonly rules: readonly BrokenRule[];
  /** What would be seen in the mouth and is not to be expected of the plan. */
  readonly signs: readonly MouthSign[];
  /** Nothing lost a status and no rule is broken: in this plan it costs nothing. */
  readonly nothing: boolean;
}

const RANK = { within: 0, near: 1, beyond: 2 } as const;

/** 0 within, 1 near, 2 beyond; null: not judged. */
export const rankOf = ({ status }: Reading): 0 | 1 | 2 | null =>
  status === null || status === 'not-applicable' ? null : RANK[status];

/** By how much a reading has come further from being within, in margins. */
function lost({ before, after }: Change): number {
  const lack = (r: Reading) =>
    r.value === null || !r.limit ? 0 : shortfall(r.judgedAt?.value ?? r.value, r.limit.bands);
  return inMargins(lack(after) - lack(before), after.unit);
}

/**
 * Readings of a plan as a trajectory is judged by: the implant's; for an error of the hole alone (`oval-hole`) those of the hole (rule D10), of the passes as planned
 * where none was made.
 */
export function readingsUnder(plan: Plan, trajectory: Trajectory): readonly Reading[] {
  if (!holeAlone(trajectory)) return evaluated(plan).readings;
  const { fixing, crestMargin, limits } = plan;
  const passes = passesShown(plan).length > 0 ? passesShown(plan) : passesAsPlanned(plan);
  const input = { anatomy: solidsOf(plan.site), fixing, crestMargin, limits };
  return holeReadings(passViews(input, kitOf(plan), passes).map(({ readings }) => readings));
}

/** The implant stands where it was planned; only the hole is wrong. */
export const holeAlone = ({ moves }: Trajectory): boolean => moves.every(({ kind }) => kind === 'press');

/** The plan without what has been drilled in it: a trajectory goes wrong from the plan. */
export const unbegun = (plan: Plan): Plan =>
  plan.rehearsal && plan.rehearsal.passes.length > 0
    ? { ...plan, rehearsal: { ...plan.rehearsal, passes: [], shown: null, hand: null, seating: [] } }
    : plan;

function changesOf(before: readonly Reading[], after: readonly Reading[]): Change[] {
  const old = new Map(before.map((r) => [r.id, r]));
  return after.flatMap((r) => {
    const was = old.get(r.id);
    return was && !SITE_FACT.test(r.id) ? [{ before: was, after: r }] : [];
  });
}

const step = ({ before, after }: Change): number => {
  const [a, b] = [rankOf(before), rankOf(after)];
  return a === null || b === null ? 0 : b - a;
};

const CROWN: readonly ReadingId[] = [
  'incisal-line-offset',
  'access-exit-correction',
  'shoulder-to-gum-margin',
];
const BONE = /-wall-|^root-|^apex-to-|^canal$|^exposure-/;

/** The first reading of the crown that is judged and no worse, where what is worse is bone, root, floor or canal. */
function silentOf(all: readonly Change[], worse: readonly Change[]): Change | null {
  if (!worse.some(({ after }) => BONE.test(after.id))) return null;
  const crown = CROWN.flatMap((id) => all.filter(({ after }) => after.id === id && rankOf(after) !== null));
  return crown.every((change) => step(change) <= 0)
    ? ([...crown].sort((p, q) => (rankOf(p.after) ?? 0) - (rankOf(q.after) ?? 0))[0] ?? null)
    : null;
}

/** What a trajectory costs at an amount. Two evaluations, one of them kept; a drilled one some 30 ms more. */
export function costOf(plan: Plan, id: TrajectoryId, amount: number): Cost {
  const trajectory = trajectoryOf(id);
  const start = unbegun(plan);
  const wrong = goneWrong(start, id, amount);
  const all = changesOf(readingsUnder(start, trajectory), readingsUnder(wrong, trajectory));
  const worse = all
    .filter((change) => step(change) > 0)
    .sort((p, q) => (rankOf(q.after) ?? 0) - (rankOf(p.after) ?? 0) || lost(q) - lost(p));
  const rules = rulesBroken(start, wrong);
  return {
    id,
    amount,
    plan: wrong,
    notHere: notInPlan(start, id),
    worse,
    better: all.filter((change) => step(change) < 0),
    silent: silentOf(all, worse),
    rules,
    signs: newSigns(start, wrong),
    nothing: worse.length === 0 && rules.length === 0,
  };
}
