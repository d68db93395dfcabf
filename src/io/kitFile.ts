import type { Kit } from '../core/drilling/kit.ts';
import { fault } from '../core/plan/fault.ts';
import { type KitResult, kitFile, readKit } from '../core/plan/readKit.ts';
import { LARGEST_FILE } from './largestFile.ts';

/** From a kit file's text to a user's own kit, or to its faults. Never throws on bad input. */
export function parseKitFile(text: string): KitResult {
  if (text.length > LARGEST_FILE)
    return { ok: false, faults: [fault('too-large', '', { value: text.length, high: LARGEST_FILE })] };
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return { ok: false, faults: [fault('not-json', '')] };
  }
  return readKit(value);
}

/** A kit file's text; the inverse of {@link parseKitFile}. */
export const printKitFile = (kit: Kit): string => `${JSON.stringify(kitFile(kit), null, 2)}\n`;
