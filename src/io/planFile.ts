import { fault } from '../core/plan/fault.ts';
import type { Plan } from '../core/plan/plan.ts';
import { type ReadResult, readPlan } from '../core/plan/read.ts';

/** A plan is a few kilobytes; more than this is not read, let alone parsed. Bytes of UTF-8, or characters. */
export const LARGEST_FILE = 256 * 1024;

/** From a plan file's text to a plan, or to its faults. Never throws on bad input. */
export function parsePlanFile(text: string): ReadResult {
  if (text.length > LARGEST_FILE) {
    return { ok: false, faults: [fault('too-large', '', { value: text.length, high: LARGEST_FILE })] };
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
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
