import type { Reading, Unit } from './reading.ts';

/** What counts as one unit of margin, so that lengths, angles and areas can be weighed against each other (ours): 1 mm, 10°, 10 mm². */
const SCALE: Readonly<Partial<Record<Unit, number>>> = { mm: 1, deg: 10, mm2: 10 };

/** Taken off what is beyond: more than any pose within its ranges can lack, so that beyond is always worse than near. */
export const BEYOND = 1000;

/**
 * Signed distance of a judged reading to the nearer bound of "within", + inside, by the scale above. Where the status was decided at another level
 * (M14), from there. Null for a reading that is not judged, and for an area of 0, which could not be less.
 */
export function marginOf(r: Reading): number | null {
  if (r.value === null || !r.limit || r.status === null || r.status === 'not-applicable') return null;
  if (r.unit === 'mm2' && r.value === 0) return null;
  const value = r.judgedAt?.value ?? r.value;
  const { low, high } = r.limit.bands;
  const room = Math.min(low ? value - low.near : Infinity, high ? high.near - value : Infinity);
  return room / (SCALE[r.unit] ?? 1) - (r.status === 'beyond' ? BEYOND : 0);
}
