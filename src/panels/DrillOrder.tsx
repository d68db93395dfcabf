import { memo } from 'react';
import type { PlanStep } from '../core/drilling/drillingPlan.ts';
import type { ToolRef } from '../core/drilling/kit.ts';
import { drillingOf } from '../core/plan/drilling.ts';
import { passesShown, toolOf } from '../core/plan/inHand.ts';
import type { Plan } from '../core/plan/plan.ts';
import { holdAt, takeTool } from '../core/plan/rehearse.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { say } from '../words/sayDrill.ts';
import { sayDepth, sayTool } from '../words/sayTool.ts';

/** A pass this near to a step's depth has made it, mm. */
const REACHED = 0.15;

/** Whether a step has been made: its tool has been as deep. */
const madeBy = (plan: Plan, { tool, depth, reason }: PlanStep): boolean => {
  const passes = passesShown(plan);
  if (reason === 'dry-test') return passes.length > 0;
  return (
    tool !== null &&
    passes.some(
      (pass) =>
        pass.tool.kind === tool.kind && pass.tool.index === tool.index && pass.depth >= depth - REACHED,
    )
  );
};

/** The step that comes next, or null when all are made. */
export const nextStep = (plan: Plan): PlanStep | null =>
  drillingOf(plan)?.plan.steps.find((step) => !madeBy(plan, step)) ?? null;

/** How deep the next step with this tool goes, mm; null: it has no step left. */
export const dueDepth = (plan: Plan, { kind, index }: ToolRef): number | null =>
  drillingOf(plan)?.plan.steps.find(
    (step) =>
      step.reason !== 'dry-test' &&
      step.tool?.kind === kind &&
      step.tool.index === index &&
      !madeBy(plan, step),
  )?.depth ?? null;

const nameOf = (plan: Plan, { tool, depth, reason }: PlanStep): string => {
  const taken = tool && toolOf(plan, tool);
  if (!taken || reason === 'dry-test') return say(`hand.stop.${reason}`);
  return say('hand.step', { tool: sayTool(taken), depth: sayDepth(depth) });
};

/** The order of drilling as planned; pressing a step takes its tool in the hand. */
export const DrillOrder = memo(function DrillOrder({ stores }: { stores: PlanStores }) {
  const { document } = stores;
  const plan = usePlan(stores);
  const steps = drillingOf(plan)?.plan.steps ?? [];
  const next = nextStep(plan);
  if (steps.length === 0) return <p className="rail-hint">{say('hand.none')}</p>;
  const take = (step: PlanStep) => {
    const { tool } = step;
    const taken = tool && toolOf(plan, tool);
    if (!tool || !taken) return;
    document.edit(say('edit.takeTool', { tool: sayTool(taken) }), (now) => {
      const held = takeTool(now, tool);
      return held === now ? holdAt(now, 0) : held;
    });
  };
  return (
    <ol className="drill-order">
      {steps.map((step, i) => {
        const made = madeBy(plan, step);
        const now = step === next;
        return (
          <li
            key={`${step.reason}${step.diameter}${step.depth}`}
            data-step={made ? 'made' : now ? 'next' : 'later'}
          >
            <button
              type="button"
              disabled={step.tool === null}
              aria-current={now ? 'step' : undefined}
              onClick={() => take(step)}
            >
              <b>{i + 1}</b>
              <span>
                {nameOf(plan, step)}
                {step.reason !== 'dry-test' && step.tool && <small>{say(`hand.stop.${step.reason}`)}</small>}
              </span>
              <i>{made ? say('hand.stepDone') : now ? say('hand.stepNow') : ''}</i>
            </button>
          </li>
        );
      })}
    </ol>
  );
});
