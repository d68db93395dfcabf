import { drillingOf } from '../../src/core/plan/drilling.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { drillTo, takeTool } from '../../src/core/plan/rehearse.ts';

/** A plan drilled as it is planned, step by step; `neck` false leaves the neck uncut. */
export function drilledAsPlanned(plan: Plan, neck = true): Plan {
  const steps = drillingOf(plan)?.plan.steps ?? [];
  return steps.reduce((now, { tool, reason, depth }) => {
    if (!tool || reason === 'dry-test' || (tool.kind === 'neck' && !neck)) return now;
    return drillTo(takeTool(now, tool), depth);
  }, plan);
}
