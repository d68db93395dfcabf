import { type Evaluation, evaluate } from '../plan/evaluate.ts';
import type { Plan } from '../plan/plan.ts';

const known = new WeakMap<Plan, Evaluation>();

/** The evaluation of a plan that is asked for more than once, kept as long as the plan is. */
export function evaluated(plan: Plan): Evaluation {
  const found = known.get(plan);
  if (found) return found;
  const made = evaluate(plan);
  known.set(plan, made);
  return made;
}
