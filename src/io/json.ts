import { type Fault, fault } from '../core/plan/fault.ts';
import { LARGEST_FILE } from './largestFile.ts';

export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] };

export const refused = (...faults: Fault[]): { readonly ok: false; readonly faults: readonly Fault[] } => ({
  ok: false,
  faults,
});

/** A file's text as a value, or why it is none. Never throws. */
export function parseJson(text: string): Parsed<unknown> {
  if (text.length > LARGEST_FILE)
    return refused(fault('too-large', '', { value: text.length, high: LARGEST_FILE }));
  try {
    return { ok: true, value: JSON.parse(text.replace(/^\uFEFF/, '')) };
  } catch {
    return refused(fault('not-json', ''));
  }
}

/** A value as a file's text. Throws RangeError on a number that JSON cannot hold. */
export function printJson(value: unknown): string {
  const finite = (_key: string, part: unknown) => {
    if (typeof part === 'number' && !Number.isFinite(part))
      throw new RangeError(`not a finite number: ${part}`);
    return part;
  };
  return `${JSON.stringify(value, finite, 2)}\n`;
}
