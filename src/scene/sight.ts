import { dot, sub, unit, type Vec3 } from '../core/geometry/vec.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import type { Lens } from './lens.ts';

/** From where the implant is looked at: along the arch, across it, or down the axis. */
export type Sight = 'side' | 'front' | 'top';

/** A direction that is nearer to the line of sight than this (cosine) is the one looked along. */
const ALONG = { top: 0.86, front: 0.7 } as const;

export function sightOf({ anatomy, placement }: Evaluation, { eye }: Lens): Sight {
  const toward = unit(sub(eye, anatomy.toJaw(placement.platform)));
  const along = (v: Vec3): number => Math.abs(dot(anatomy.toJawDirection(v), toward));
  if (along(placement.a) > ALONG.top) return 'top';
  return along(placement.ef) > ALONG.front ? 'front' : 'side';
}
