import type { Plane } from '../core/geometry/slice.ts';
import { dot, sub, type Vec3 } from '../core/geometry/vec.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';

/** The plane through the axis and `e_f`: x + facial, y + coronal, the entry at the origin. Site frame, mm. */
export function planeOf({ placement }: Evaluation): Plane {
  return { origin: placement.entry, x: placement.ef, y: placement.a };
}

/** A point in the section: `x` + facial of the axis, `level` apical of the entry, `off` its distance from the plane; mm. */
export interface SectionPoint {
  readonly x: number;
  readonly level: number;
  readonly off: number;
}

/** Carries points of the jaw frame, as readings have them, into the section's plane. */
export function intoSection({ anatomy, placement }: Evaluation): (p: Vec3) => SectionPoint {
  const origin = anatomy.toJaw(placement.entry);
  const ef = anatomy.toJawDirection(placement.ef);
  const a = anatomy.toJawDirection(placement.a);
  const em = anatomy.toJawDirection(placement.em);
  return (p) => {
    const v = sub(p, origin);
    return { x: dot(v, ef), level: -dot(v, a), off: dot(v, em) };
  };
}
