import type { Ridge } from '../anatomy/ridge.ts';
import type { Interval } from '../geometry/interval.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { Void } from './bodies.ts';
import type { Kit } from './kit.ts';
import { type PassBody, passBody, unionOf } from './passBody.ts';
import type { Pass } from './rehearsal.ts';

/** A union of bodies as one void. Site frame, mm. */
export class Hole implements Void {
  constructor(readonly bodies: readonly PassBody[]) {}

  contains(p: Vec3): boolean {
    return this.bodies.some((body) => body.contains(p));
  }

  stretches(p: Vec3, v: Vec3): readonly NonNullable<Interval>[] {
    if (this.bodies.length === 1) return this.bodies[0].stretches(p, v);
    return unionOf(this.bodies.flatMap((body) => body.stretches(p, v)));
  }
}

/** The hole that a list of passes has made (rule D2); a pass whose axis meets no bone leaves nothing. */
export const holeOf = (ridge: Ridge, kit: Kit, passes: readonly Pass[]): Hole =>
  new Hole(passes.map((pass) => passBody(ridge, kit, pass)).filter((body) => body !== null));
