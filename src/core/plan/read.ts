import { contradictions } from './check.ts';
import { type Fault, fault } from './fault.ts';
import { migrate } from './migrations.ts';
import { PLAN_FORMAT, PLAN_VERSION, type Plan } from './plan.ts';
import { planJsonSchema, planSchema } from './schema.ts';

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
  if (!parsed.success) return refuse(...parsed.error.issues.map((i) => faultOf(i as Issue, current)));
  const plan = parsed.data as Plan;
  const wrong = contradictions(plan);
  return wrong.length > 0 ? refuse(...wrong) : { ok: true, plan, migrated: ran };
}

/** What this file reads of an issue of the schema library. */
interface Issue {
  readonly code?: string;
  readonly path: readonly PropertyKey[];
  readonly keys?: readonly string[];
  readonly values?: readonly unknown[];
  readonly options?: readonly unknown[];
  readonly expected?: string;
}

function faultOf(issue: Issue, file: unknown): Fault {
  const path = issue.path.map(String);
  const field = path.join('.');
  const found = path.reduce<unknown>(step, file);
  const value = shown(found);
  const { low, high } = rangeOf(path);
  switch (issue.code) {
    case 'unrecognized_keys': {
      return fault('unknown-field', [...path, named(issue.keys?.[0] ?? '')].join('.'));
    }
    case 'too_small':
    case 'too_big':
      if (Array.isArray(found)) return fault('wrong-count', field, { value: found.length, low, high });
      if (typeof found === 'string') return fault('too-long', field, { value: found.length, high });
      return fault('out-of-range', field, { value, low, high });
    case 'invalid_value':
    case 'invalid_union': {
      const values = issue.code === 'invalid_value' ? issue.values : issue.options;
      const allowed = values?.join(', ') ?? allowedAt(path);
      return fault(found === undefined ? 'missing' : 'not-allowed', field, { value, allowed });
    }
    default:
      if (found === undefined) return missing(path, field);
      // A number that is none, or not finite; one that is only not whole is of the wrong type.
      if (typeof found === 'number' && (issue.expected === 'number' || !Number.isFinite(found)))
        return fault('out-of-range', field, { value, low, high });
      return fault('wrong-type', field, { value, low, high, allowed: issue.expected ?? null });
  }
}

function missing(path: readonly string[], field: string): Fault {
  const numeric = nodesAt(path).some((n) => n.type === 'number' || n.type === 'integer');
  return fault('missing', field, numeric ? rangeOf(path) : { allowed: allowedAt(path) });
}

/** A key as it may stand in a message of one line. */
const named = (key: string): string => (/^[\w-]{1,40}$/.test(key) ? key : (shown(key) as string));

const step = (at: unknown, key: string): unknown =>
  typeof at === 'object' && at !== null && Object.hasOwn(at, key)
    ? (at as Record<string, unknown>)[key]
    : undefined;

/** A short text of what was found, for the message; never a look inside, which may be deep. */
function shown(value: unknown): number | string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? value : String(value);
  if (value === undefined) return null;
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? '[…]' : '{…}';
  const text = JSON.stringify(value) ?? typeof value;
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}

/** The schema's node at a path of the file; unions are searched branch by branch. */
function nodesAt(path: readonly string[]): Record<string, unknown>[] {
  let nodes: Record<string, unknown>[] = [planJsonSchema()];
  const branches = (n: Record<string, unknown>): Record<string, unknown>[] => {
    const more = (n.oneOf ?? n.anyOf) as Record<string, unknown>[] | undefined;
    return more ? more.flatMap(branches) : [n];
  };
  for (const key of path) {
    nodes = nodes.flatMap(branches).flatMap((n) => {
      const found = step(n.properties, key) ?? (n.type === 'array' ? n.items : n.additionalProperties);
      return typeof found === 'object' && found !== null ? [found as Record<string, unknown>] : [];
    });
  }
  return nodes.flatMap(branches);
}

/** The allowed range at a path of the plan file, from its schema; null where it has none. */
export function rangeOf(path: readonly string[]): { low: number | null; high: number | null } {
  const node = nodesAt(path).find((n) =>
    ['minimum', 'maximum', 'minItems', 'maxItems', 'maxLength'].some((k) => k in n),
  );
  const pick = (...keys: string[]) => {
    const key = keys.find((k) => typeof node?.[k] === 'number');
    return key ? (node?.[key] as number) : null;
  };
  return { low: pick('minimum', 'minItems'), high: pick('maximum', 'maxItems', 'maxLength') };
}

function allowedAt(path: readonly string[]): string | null {
  const values = nodesAt(path).flatMap((n) =>
    'const' in n ? [n.const] : Array.isArray(n.enum) ? n.enum : [],
  );
  return values.length > 0 ? values.join(', ') : null;
}
