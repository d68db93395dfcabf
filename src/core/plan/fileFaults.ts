import { type Fault, fault } from './fault.ts';
import { shown } from './schemaFaults.ts';

/** Why a parsed value is no file of a format and version; null: it is one, as far as these two say. */
export function notOfFormat(value: unknown, format: string, version: number): Fault | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return fault('wrong-type', '', { value: shown(value), allowed: 'object' });
  const file = value as Record<string, unknown>;
  if (file.format === undefined) return fault('missing', 'format', { allowed: format });
  if (file.format !== format)
    return fault('not-allowed', 'format', { value: shown(file.format), allowed: format });
  if (file.version === version) return null;
  return fault('unknown-version', 'version', { value: shown(file.version), low: 1, high: version });
}
