import { fault } from '../core/plan/fault.ts';
import { type ReadResult, readPlan } from '../core/plan/read.ts';
import { LARGEST_FILE } from './largestFile.ts';

export { LARGEST_FILE } from './largestFile.ts';
export { printPlanFile } from './printPlanFile.ts';

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
