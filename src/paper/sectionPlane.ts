import type { Plane } from '../core/geometry/slice.ts';
import { dot, sub, type Vec3 } from '../core/geometry/vec.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';

/** Which way a section runs: through the axis faciopalatally or mesiodistally, or across it. */
export type SectionKind = 'faciopalatal' | 'mesiodistal' | 'across';

/**
 * The plane of a section, site frame, mm. Through the axis: the entry at the origin, `y` + coronal, `x` + facial or + mesial. Across it: the
 * axis at that level at the origin, `x` + facial, `y` + mesial.
 */
export function planeOf({ placement }: Evaluation, kind: SectionKind, level: number): Plane {
  const { entry, ef, em, a } = placement;
  if (kind === 'across') return { origin: placement.axisPoint(level), x: ef, y: em };
  return { origin: entry, x: kind === 'faciopalatal' ? ef : em, y: a };
}

/** A point in a section through the axis: `x` + facial or + mesial of it, `level` apical of the entry, `off` its distance from the plane; mm. */
export interface SectionPoint {
  readonly x: number;
  readonly level: number;
  readonly off: number;
}

/** Carries points of the jaw frame, as readings have them, into the plane of a section through the axis. */
export function intoSection(
  { anatomy, placement }: Evaluation,
  kind: Exclude<SectionKind, 'across'> = 'faciopalatal',
): (p: Vec3) => SectionPoint {
  const origin = anatomy.toJaw(placement.entry);
  const ef = anatomy.toJawDirection(placement.ef);
  const em = anatomy.toJawDirection(placement.em);
  const a = anatomy.toJawDirection(placement.a);
  const [along, across] = kind === 'faciopalatal' ? [ef, em] : [em, ef];
  return (p) => {
    const v = sub(p, origin);
    return { x: dot(v, along), level: -dot(v, a), off: dot(v, across) };
  };
}
