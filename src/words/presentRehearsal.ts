import { circlesNow, drillingOf } from '../core/plan/drilling.ts';
import type { DrillReport } from '../core/plan/drillReport.ts';
import { handOf, passesShown, toolOf } from '../core/plan/inHand.ts';
import type { Plan } from '../core/plan/plan.ts';
import { formatQuantity } from './format.ts';
import { say } from './sayDrill.ts';
import { sayDepth, sayTool } from './sayTool.ts';

export interface RehearsalSummary {
  readonly mark: 'within' | 'near' | 'beyond' | 'none';
  readonly lead: string;
  readonly rest: string;
  /** What would mend it, where there is anything to mend. */
  readonly mend: string;
}

/** A hole this near to the plan follows it, mm (ours). */
const ON_PLAN = 0.2;

/** An axis this near to the planned one has no direction to mend, degrees (ours). */
const STRAIGHT = 0.5;

const MARK = { round: 'within', covered: 'near', open: 'beyond' } as const;

/** Before anything is drilled: the dry test, and how far the first step goes. */
function before(plan: Plan): RehearsalSummary {
  const drilling = drillingOf(plan);
  const tool = toolOf(plan, handOf(plan).tool);
  const first = drilling?.plan.steps.find(({ reason }) => reason !== 'dry-test');
  if (!drilling || !first || !tool)
    return { mark: 'none', lead: say('rehearse.nothing'), rest: '', mend: '' };
  return {
    mark: 'none',
    lead: say('rehearse.dry', { tool: sayTool(tool) }),
    rest: say('rehearse.dryMore', { depth: sayDepth(first.depth) }),
    mend: '',
  };
}

/** How long the direction of the last pass may still be mended. */
function untilWords(plan: Plan, { standing }: DrillReport): string {
  const full = drillingOf(plan)?.chain.fullDepth ?? 0;
  if (!standing) return '';
  const open = standing.outlook.answer === 'open';
  const { round, covered } = standing.until;
  if (round === null) return say(open ? 'rehearse.openNever' : 'rehearse.untilNever');
  if (round >= full - 1e-6) return say(open ? 'rehearse.openMore' : 'rehearse.untilAlways');
  return say(open ? 'rehearse.openUntil' : 'rehearse.until', {
    round: sayDepth(round),
    covered: sayDepth(covered ?? round),
  });
}

/** The state of the rehearsal in a sentence: where the hole is against the plan, how it ends, and until when it can be mended. */
export function presentRehearsal(plan: Plan, report: DrillReport | null): RehearsalSummary {
  const circles = circlesNow(plan);
  if (passesShown(plan).length === 0 || !circles) return before(plan);
  const off = ({ facial, mesial }: { facial: number; mesial: number }) => Math.hypot(facial, mesial);
  const [mouth, apex] = [off(circles.crest), off(circles.apex)];
  const lead =
    Math.max(mouth, apex) <= ON_PLAN
      ? say('rehearse.onPlan')
      : say('rehearse.off', { mouth: sayDepth(mouth), apex: sayDepth(apex) });
  if (!report?.standing) return { mark: 'none', lead, rest: report ? '' : say('rehearse.working'), mend: '' };
  const { outlook } = report.standing;
  const rest =
    outlook.answer === 'round'
      ? say('rehearse.ends.round')
      : say(`rehearse.ends.${outlook.answer}`, {
          void: formatQuantity({ value: outlook.void, unit: 'mm', limits: [0] }),
        });
  const last = passesShown(plan).at(-1);
  const leans = last?.tool.kind === 'drill' && (circles.angle > STRAIGHT || outlook.answer !== 'round');
  const nothing = outlook.answer === 'open' ? say('rehearse.openMore') : '';
  return { mark: MARK[outlook.answer], lead, rest, mend: leans ? untilWords(plan, report) : nothing };
}
