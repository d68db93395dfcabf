import { type Fault, fault } from './fault.ts';

/** A schema in its published form. */
export type JsonSchema = Readonly<Record<string, unknown>>;

/** What this file reads of an issue of the schema library. */
interface Issue {
  readonly code?: string;
  readonly path: readonly PropertyKey[];
  readonly keys?: readonly string[];
  readonly values?: readonly unknown[];
  readonly options?: readonly unknown[];
  readonly expected?: string;
}

/** The schema library's issues as faults, with the field, what was found there and the allowed range. */
export const schemaFaults = (issues: readonly unknown[], file: unknown, schema: JsonSchema): Fault[] =>
  issues.map((issue) => faultOf(issue as Issue, file, schema));

function faultOf(issue: Issue, file: unknown, schema: JsonSchema): Fault {
  const path = issue.path.map(String);
  const field = path.join('.');
  const found = path.reduce<unknown>(step, file);
  const value = shown(found);
  const { low, high } = rangeIn(schema, path);
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
      const allowed = values?.join(', ') ?? allowedAt(schema, path);
      return fault(found === undefined ? 'missing' : 'not-allowed', field, { value, allowed });
    }
    default:
      if (found === undefined) return missing(schema, path, field);
      // A number that is none, or not finite; one that is only not whole is of the wrong type.
      if (typeof found === 'number' && (issue.expected === 'number' || !Number.isFinite(found)))
        return fault('out-of-range', field, { value, low, high });
      return fault('wrong-type', field, { value, low, high, allowed: issue.expected ?? null });
  }
}

function missing(schema: JsonSchema, path: readonly string[], field: string): Fault {
  const numeric = nodesAt(schema, path).some((n) => n.type === 'number' || n.type === 'integer');
  return fault('missing', field, numeric ? rangeIn(schema, path) : { allowed: allowedAt(schema, path) });
}

/** A key as it may stand in a message of one line. */
const named = (key: string): string => (/^[\w-]{1,40}$/.test(key) ? key : (shown(key) as string));

const step = (at: unknown, key: string): unknown =>
  typeof at === 'object' && at !== null && Object.hasOwn(at, key)
    ? (at as Record<string, unknown>)[key]
    : undefined;

/** A short text of what was found, for the message; never a look inside, which may be deep. */
export function shown(value: unknown): number | string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? value : String(value);
  if (value === undefined) return null;
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? '[…]' : '{…}';
  const text = JSON.stringify(value) ?? typeof value;
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}

/** The schema's node at a path of the file; unions are searched branch by branch. */
function nodesAt(schema: JsonSchema, path: readonly string[]): Record<string, unknown>[] {
  let nodes: Record<string, unknown>[] = [schema];
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

/** The allowed range at a path; null where it has none. */
export function rangeIn(
  schema: JsonSchema,
  path: readonly string[],
): { low: number | null; high: number | null } {
  const node = nodesAt(schema, path).find((n) =>
    ['minimum', 'maximum', 'minItems', 'maxItems', 'maxLength'].some((k) => k in n),
  );
  const pick = (...keys: string[]) => {
    const key = keys.find((k) => typeof node?.[k] === 'number');
    return key ? (node?.[key] as number) : null;
  };
  return { low: pick('minimum', 'minItems'), high: pick('maximum', 'maxItems', 'maxLength') };
}

function allowedAt(schema: JsonSchema, path: readonly string[]): string | null {
  const values = nodesAt(schema, path).flatMap((n) =>
    'const' in n ? [n.const] : Array.isArray(n.enum) ? n.enum : [],
  );
  return values.length > 0 ? values.join(', ') : null;
}
