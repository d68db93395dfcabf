import type { NeckCutter } from '../drilling/kit.ts';
import { deg, rad } from '../geometry/vec.ts';
import type { ImplantShape } from '../implant/shape.ts';

export const HINDRANCES = ['hole-short', 'neck-uncut', 'hard-bone'] as const;
/** Why the thread takes no more: the apex stands on the floor of the hole, the neck has come past what the cutter took, or neither. */
export type Hindrance = (typeof HINDRANCES)[number];

/** Shoulder levels above the planned one down to which nothing but the thread holds the implant up, mm; −Infinity: never. */
export interface FreeLevels {
  /** Below it the apex would stand lower than the floor of the hole. */
  readonly hole: number;
  /** Below it the flared neck is wider than what was cut for it. */
  readonly neck: number;
}

/** What was made for the implant: depths below the bone entry along the axis, mm. */
export interface Prepared {
  /** Full-diameter depth of the hole. */
  readonly hole: number;
  /** Depth of the neck cutter's neck notch; null: not used. */
  readonly neck: { readonly cutter: NeckCutter; readonly depth: number } | null;
}

/** Flare of the neck from the last thread to the platform, half-angle, degrees; 0: none. */
export function flareOf(shape: ImplantShape): number {
  const rise = (shape.platformDiameter - shape.implantedDiameter) / 2;
  return shape.transmucosalLength > 0 && rise > 0 ? deg(Math.atan2(rise, shape.transmucosalLength)) : 0;
}

/**
 * `shoulder`: planned height of the shoulder above the bone entry (`S` of model 5), mm. The apical rim lies `L + H − S` deep, the neck's base `H − S`. The
 * point of the drill below the full diameter is left out: the flat end of the apex does not go into it unless it is slimmer. A cutter that is wider than the
 * neck lets it deeper by the difference of radii over the tangent of the flare.
 */
export function freeLevels(shape: ImplantShape, shoulder: number, made: Prepared): FreeLevels {
  const { implantedLength, transmucosalLength } = shape;
  const hole = implantedLength + transmucosalLength - made.hole - shoulder;
  const flare = flareOf(shape);
  if (flare === 0) return { hole, neck: Number.NEGATIVE_INFINITY };
  const wider = made.neck ? (made.neck.cutter.neckDiameter - shape.implantedDiameter) / 2 : 0;
  const depth = made.neck ? made.neck.depth + wider / Math.tan(rad(flare)) : 0;
  return { hole, neck: transmucosalLength - depth - shoulder };
}

/** Why an implant that reads its maximum stands too high (rule T8). mm. */
export interface StopCause {
  readonly reason: Hindrance;
  /** Radial press of the neck past what was cut: depth past the cutter × tan(flare). */
  readonly press: number;
  /** How much the hole is too short for the planned level. */
  readonly short: number;
  /** How much deeper the neck must be cut for the planned level. */
  readonly uncut: number;
}

/** Nearer to a floor than this the apex stands on it, mm: ours. */
const ON_FLOOR = 0.05;

export function causeAt(shape: ImplantShape, free: FreeLevels, above: number): StopCause {
  const press = Math.max(0, free.neck - above) * Math.tan(rad(flareOf(shape)));
  const reason: Hindrance =
    above <= free.hole + ON_FLOOR ? 'hole-short' : above < free.neck ? 'neck-uncut' : 'hard-bone';
  return { reason, press, short: Math.max(0, free.hole), uncut: Math.max(0, free.neck) };
}
