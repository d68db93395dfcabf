import type { Reading, Unit } from './reading.ts';

/** What counts as one unit of margin, so that lengths, angles and areas can be weighed against each other (ours): 1 mm, 10°, 10 mm². */
const SCALE: Readonly<Partial<Record<Unit, number>>> = { mm: 1, deg: 10, mm2: 10 };

/** A share or an amount of a unit weighed against the others. */
export const inMargins = (value: number, unit: Unit): number => value / (SCALE[unit] ?? 1);

/** Facts of the site that are judged: no pose changes them. */
export const SITE_FACT = /^contact-to-crest-/;

/** Areas and amounts of which 0 is the best. */
const LEAST_IS_0 = /^exposure-|^access-exit-correction$/;

/** Taken off what is beyond: more than any pose within its ranges can lack, so that beyond is always worse than near. */
export const BEYOND = 1000;

/**
 * Signed distance of a judged reading to the nearer bound of "within", + inside, by the scale above. Where the status was decided at another level
 * (M14), from there. Null for a reading that is not judged or that no pose changes, and for one that could not be less: an area, a correction of 0.
 */
export function marginOf(r: Reading): number | null {
  if (r.value === null || !r.limit || r.status === null || r.status === 'not-applicable') return null;
  if (SITE_FACT.test(r.id) || (r.value === 0 && LEAST_IS_0.test(r.id))) return null;
  const value = r.judgedAt?.value ?? r.value;
  const { low, high } = r.limit.bands;
  const room = Math.min(low ? value - low.near : Infinity, high ? high.near - value : Infinity);
  return inMargins(room, r.unit) - (r.status === 'beyond' ? BEYOND : 0);
}
