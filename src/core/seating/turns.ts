import type { SiteCode } from '../anatomy/site.ts';
import { type ImplantShape, leadOf } from '../implant/shape.ts';

/** How deep a right-handed thread goes for so many degrees turned in, mm. */
export const depthOf = (lead: number, degrees: number): number => (lead * degrees) / 360;

/** Degrees to turn in for so much depth. */
export const degreesFor = (lead: number, depth: number): number => (360 * depth) / lead;

/** Which way turning in carries the mark: +1 from facial toward mesial (the patient's right), −1 toward distal (the left). Clockwise seen from the crown. */
export const turnSense = (tooth: SiteCode): 1 | -1 => (tooth < 20 ? 1 : -1);

/** Roll (+ toward mesial, degrees, in (−180, 180]) after turning in by so many degrees. */
export function rollAfter(tooth: SiteCode, roll: number, degrees: number): number {
  const turned = 180 - (roll + turnSense(tooth) * degrees);
  return 180 - (turned - 360 * Math.floor(turned / 360));
}

/** One part-turn of a neck that looks the same every `degrees`: what it costs in depth, mm. Null for a round neck. */
export function partTurn(shape: ImplantShape): { readonly degrees: number; readonly depth: number } | null {
  if (shape.index === 0) return null;
  const degrees = 360 / shape.index;
  return { degrees, depth: depthOf(leadOf(shape), degrees) };
}

/** How far coronally the ladder moves when the implant is set to the hole turned in further by `degrees` at the same level, mm. */
export const startShift = (lead: number, degrees: number): number => depthOf(lead, degrees);

/**
 * How much further turned in (+) or less (−) to set the implant to the hole, so that a rung met last time at `rung` (mm above the planned level) meets the
 * planned level: the smallest turn, degrees. It presumes that the thread bites at the same level again.
 */
export function startTurn(shape: ImplantShape, rung: number): number {
  const part = partTurn(shape);
  if (!part) return 0;
  const miss = rung - part.depth * Math.round(rung / part.depth);
  return -degreesFor(leadOf(shape), miss);
}
