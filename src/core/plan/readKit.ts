import type { Kit } from '../drilling/kit.ts';
import { type Fault, fault } from './fault.ts';
import { kitFaults } from './kitFaults.ts';
import { KIT_FORMAT, KIT_VERSION, kitFileSchema, kitJsonSchema } from './kitSchema.ts';
import { schemaFaults, shown } from './schemaFaults.ts';

export type KitResult =
  | { readonly ok: true; readonly kit: Kit }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const refuse = (...faults: Fault[]): KitResult => ({ ok: false, faults });

/** From any parsed value to a user's own kit, or to the faults that forbid it. A missing number is never guessed. */
export function readKit(value: unknown): KitResult {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return refuse(fault('wrong-type', '', { value: shown(value), allowed: 'object' }));
  const file = value as Record<string, unknown>;
  if (file.format === undefined) return refuse(fault('missing', 'format', { allowed: KIT_FORMAT }));
  if (file.format !== KIT_FORMAT)
    return refuse(fault('not-allowed', 'format', { value: shown(file.format), allowed: KIT_FORMAT }));
  if (file.version !== KIT_VERSION)
    return refuse(
      fault('unknown-version', 'version', {
        value: shown(file.version),
        low: KIT_VERSION,
        high: KIT_VERSION,
      }),
    );
  const parsed = kitFileSchema.safeParse(file);
  if (!parsed.success) return refuse(...schemaFaults(parsed.error.issues, file, kitJsonSchema()));
  const { format: _, version: __, ...kit } = parsed.data;
  const wrong = kitFaults(kit);
  return wrong.length > 0 ? refuse(...wrong) : { ok: true, kit };
}

/** A kit as the value of a file of its own; the inverse of {@link readKit}. */
export const kitFile = (kit: Kit) => ({ format: KIT_FORMAT, version: KIT_VERSION, ...kit });
