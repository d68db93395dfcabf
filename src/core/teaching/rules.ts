import { outlookOf, VOID_ALLOWED } from '../drilling/outlook.ts';
import { passFaults } from '../drilling/passFaults.ts';
import { passViews } from '../drilling/passView.ts';
import type { Pass } from '../drilling/rehearsal.ts';
import { facingOf } from '../measure/facing.ts';
import { drillingOf } from '../plan/drilling.ts';
import { solidsOf } from '../plan/evaluate.ts';
import { kitOf, passesShown } from '../plan/inHand.ts';
import type { Plan } from '../plan/plan.ts';
import { FACING_TOLERANCE } from '../seating/seat.ts';
import { passesAsPlanned } from './move.ts';
import type { RuleCode } from './trajectories.ts';

/** A rule of drilling or seating that is broken: how much, against which threshold; all thresholds are this project's. */
export interface BrokenRule {
  readonly code: RuleCode;
  readonly value: number;
  readonly limit: number;
  readonly unit: 'mm' | 'deg' | 'rpm' | 'none';
}

/** Rules that the plan gone wrong breaks and the plan, drilled as it is meant, keeps or breaks less; of each code the worst. */
export function rulesBroken(plan: Plan, wrong: Plan): BrokenRule[] {
  const passes = passesShown(wrong);
  const asMeant =
    passes.length > 0 ? worstOf(holeRules(plan, passesAsPlanned(plan))) : new Map<RuleCode, BrokenRule>();
  const found = [...worstOf(holeRules(plan, passes)).values()].filter((rule) => {
    const meant = asMeant.get(rule.code);
    return !meant || graver(rule, meant) > NO_WORSE;
  });
  return [...found, ...neckRule(plan, wrong)];
}

/** How much worse counts as worse, mm, degrees: rounding is far below it. */
const NO_WORSE = 1e-3;

/** By how much one is worse than another of its code; from the floor less is worse. */
const graver = (rule: BrokenRule, than: BrokenRule): number =>
  (rule.value - than.value) * (rule.code === 'near-floor' ? -1 : 1);

function worstOf(rules: readonly BrokenRule[]): Map<RuleCode, BrokenRule> {
  const worst = new Map<RuleCode, BrokenRule>();
  for (const rule of rules) {
    const known = worst.get(rule.code);
    if (!known || graver(rule, known) > 0) worst.set(rule.code, rule);
  }
  return worst;
}

/** Faults of passes, held against the plan as it was meant, and the void they leave beside its implant. */
function holeRules(plan: Plan, passes: readonly Pass[]): BrokenRule[] {
  const drilling = drillingOf(plan);
  if (!drilling?.hole || passes.length === 0) return [];
  const { fixing, crestMargin, limits } = plan;
  const input = { anatomy: solidsOf(plan.site), fixing, crestMargin, limits };
  const kit = kitOf(plan);
  const views = passViews(input, kit, passes);
  const faults = passFaults({ site: drilling.site, kit, plan: drilling.plan, views });
  const outlook = outlookOf(
    views.map(({ body }) => body),
    drilling.hole,
  );
  const open: BrokenRule[] =
    outlook.answer === 'open'
      ? [{ code: 'hole-open', value: outlook.void, limit: VOID_ALLOWED, unit: 'mm' }]
      : [];
  return [...faults.filter(({ mendedBy }) => mendedBy === null), ...open].map(
    ({ code, value, limit, unit }) => ({ code, value, limit, unit }),
  );
}

/** A neck that no longer faces (rule T6). */
function neckRule(plan: Plan, wrong: Plan): BrokenRule[] {
  const off = ({ implant, pose }: Plan): number =>
    implant.index === 0 ? 0 : Math.abs(facingOf(implant.index, pose.roll));
  const value = off(wrong);
  if (value <= FACING_TOLERANCE || off(plan) > FACING_TOLERANCE) return [];
  return [{ code: 'neck-off-facing', value, limit: FACING_TOLERANCE, unit: 'deg' }];
}
