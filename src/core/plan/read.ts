import { contradictions } from './check.ts';
import { type Fault, fault } from './fault.ts';
import { migrate } from './migrations.ts';
import { PLAN_FORMAT, PLAN_VERSION, type Plan } from './plan.ts';
import { planJsonSchema, planSchema } from './schema.ts';
import { rangeIn, schemaFaults, shown } from './schemaFaults.ts';

export type ReadResult =
  | { readonly ok: true; readonly plan: Plan; readonly migrated: readonly string[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const refuse = (...faults: Fault[]): ReadResult => ({ ok: false, faults });

/** From any parsed value to a plan that can be used, or to the faults that forbid it. A missing number is never guessed. */
export function readPlan(value: unknown): ReadResult {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return refuse(fault('not-a-plan', '', { value: shown(value) }));
  const file = value as Record<string, unknown>;
  if (file.format === undefined) return refuse(fault('missing', 'format', { allowed: PLAN_FORMAT }));
  if (file.format !== PLAN_FORMAT) {
    return refuse(fault('not-a-plan', 'format', { value: shown(file.format), allowed: PLAN_FORMAT }));
  }
  const version = file.version;
  if (version === undefined) return refuse(fault('missing', 'version', { low: 0, high: PLAN_VERSION }));
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    return refuse(fault('unknown-version', 'version', { value: shown(version), low: 0, high: PLAN_VERSION }));
  }
  if (version > PLAN_VERSION) {
    return refuse(fault('newer-version', 'version', { value: version, low: 0, high: PLAN_VERSION }));
  }
  const { file: current, ran } = migrate(file, version, PLAN_VERSION);
  // The schema library passes over this one key of a record without a word.
  if (
    typeof current.limits === 'object' &&
    current.limits !== null &&
    Object.hasOwn(current.limits, '__proto__')
  )
    return refuse(fault('unknown-field', 'limits.__proto__'));
  const parsed = planSchema.safeParse(current);
  if (!parsed.success) return refuse(...schemaFaults(parsed.error.issues, current, planJsonSchema()));
  const plan = parsed.data as Plan;
  const wrong = contradictions(plan);
  return wrong.length > 0 ? refuse(...wrong) : { ok: true, plan, migrated: ran };
}

/** The allowed range at a path of the plan file, from its schema; null where it has none. */
export const rangeOf = (path: readonly string[]) => rangeIn(planJsonSchema(), path);
