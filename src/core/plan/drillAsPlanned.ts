import { drillingOf } from './drilling.ts';
import { rehearsalOf } from './inHand.ts';
import type { Plan } from './plan.ts';
import { drillTo, setWander, startAnew, takeTool, toPlannedAxis } from './rehearse.ts';

/** The plan with its own order of drilling carried out from the beginning, each tool on the planned axis to its planned depth, nothing dialled in; null: there is nothing that its kit could drill. */
export function drilledAsPlanned(plan: Plan): Plan | null {
  const steps = drillingOf(plan)?.plan.steps ?? [];
  const cuts = steps.filter(({ tool, reason }) => tool !== null && reason !== 'dry-test');
  if (cuts.length === 0) return null;
  const steady = setWander(startAnew(plan), { skid: 0, drift: 0 });
  const drilled = cuts.reduce(
    (now, { tool, depth }) => (tool ? drillTo(toPlannedAxis(takeTool(now, tool)), depth) : now),
    steady,
  );
  return setWander(drilled, rehearsalOf(plan).wander);
}
