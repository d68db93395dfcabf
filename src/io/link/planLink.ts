import type { Fault } from '../../core/plan/fault.ts';
import type { Plan } from '../../core/plan/plan.ts';
import { wordless } from '../../core/plan/wordless.ts';
import { parsePlanFile, printPlanFile } from '../planFile.ts';
import { PLAN_TAG } from './address.ts';
import { LONGEST_PACKED, pack, unpack } from './pack.ts';

export type LinkResult =
  | { readonly ok: true; readonly plan: Plan; readonly migrated: readonly string[] }
  /** Too long to be looked at; of a newer program; or not what was packed (cut off, mistyped). */
  | { readonly ok: false; readonly why: 'long' | 'newer' | 'broken' }
  /** It was read, and holds no plan that can be used. */
  | { readonly ok: false; readonly why: 'plan'; readonly faults: readonly Fault[] };

/** What stands after `#` in a link to the plan: all of it but the texts a person wrote. Null where it would be longer than what is read. */
export function planHash(plan: Plan): string | null {
  const packed = pack(JSON.stringify(JSON.parse(printPlanFile(wordless(plan)))));
  return packed.length > LONGEST_PACKED ? null : `${PLAN_TAG}${packed}`;
}

/** The plan of what stands after `#` in an address. Never throws on bad input. */
export function readPlanHash(hash: string): LinkResult {
  if (!hash.startsWith(PLAN_TAG)) return { ok: false, why: 'newer' };
  const packed = hash.slice(PLAN_TAG.length);
  if (packed.length > LONGEST_PACKED) return { ok: false, why: 'long' };
  const text = unpack(packed);
  if (text === null) return { ok: false, why: 'broken' };
  const read = parsePlanFile(text);
  return read.ok ? read : { ok: false, why: 'plan', faults: read.faults };
}
