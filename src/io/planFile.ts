import { fault } from '../core/plan/fault.ts';
import type { Plan } from '../core/plan/plan.ts';
import { type ReadResult, readPlan } from '../core/plan/read.ts';

/** A plan is a few kilobytes; more than this is not read, let alone parsed. Bytes of UTF-8, or characters. */
export const LARGEST_FILE = 256 * 1024;

/** The answer to a file of that many bytes or characters, for a caller that knows before it has read them. */
export const tooLarge = (size: number): ReadResult => ({
  ok: false,
  faults: [fault('too-large', '', { value: size, high: LARGEST_FILE })],
});

/** From a plan file's text to a plan, or to its faults. Never throws on bad input. */
export function parsePlanFile(text: string): ReadResult {
  if (text.length > LARGEST_FILE) return tooLarge(text.length);
  let value: unknown;
  try {
    // Some editors begin a file with a byte order mark; JSON leaves it to the reader to pass over it (RFC 8259, 8.1).
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return { ok: false, faults: [fault('not-json', '')] };
  }
  return readPlan(value);
}

/** A plan file's text. Throws RangeError on a number that JSON cannot hold, so that nothing unreadable is ever written. */
export function printPlanFile(plan: Plan): string {
  const finite = (_key: string, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value))
      throw new RangeError(`not a finite number: ${value}`);
    return value;
  };
  return `${JSON.stringify(plan, finite, 2)}\n`;
}
