import { drillingOf } from '../../src/core/plan/drilling.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { drillTo, takeTool, toPlannedAxis } from '../../src/core/plan/rehearse.ts';

/** A plan whose order of drilling has been carried out, step by step, on the planned axis. */
export const rehearsed = (plan: Plan): Plan =>
  (drillingOf(plan)?.plan.steps ?? []).reduce((now, { tool, depth }) => {
    if (!tool || depth === 0) return now;
    return drillTo(toPlannedAxis(takeTool(now, tool)), depth);
  }, plan);
