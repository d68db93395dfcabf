import type { Interval } from '../geometry/interval.ts';
import type { Vec3 } from '../geometry/vec.ts';

/** A space out of which bone has been taken, site frame, mm. */
export interface Void {
  /** Whether a point lies in it. */
  readonly contains: (p: Vec3) => boolean;
  /** Where the line `p + λ v` (unit `v`) lies in it: stretches in rising order, apart from one another. */
  readonly stretches: (p: Vec3, v: Vec3) => readonly NonNullable<Interval>[];
}
