import type { Pose } from '../geometry/pose.ts';
import { SITE_FACT } from '../measure/margin.ts';
import type { ReadingId } from '../measure/reading.ts';
import { evaluate } from '../plan/evaluate.ts';
import type { Plan } from '../plan/plan.ts';
import { normalPoints } from './normals.ts';
import { type Hand, STRAYS, type Stray, strayedPose } from './straying.ts';

/** Placements in a cloud: a share is right to two or three in a hundred (a test holds it to the normal table). */
export const CLOUD = 200;

/** One placement of a cloud. */
export interface Placed {
  readonly pose: Pose;
  /** At least one reading is beyond. */
  readonly broken: boolean;
}

/** Where a hand would put a plan, time after time. */
export interface Cloud {
  readonly placed: readonly Placed[];
  /** Share of placements in which a reading is beyond its limit, 0…1; those that ever were, the commonest first. */
  readonly crossed: readonly { readonly id: ReadingId; readonly share: number }[];
  /** Share of placements in which at least one is. */
  readonly any: number;
}

/** The strayings of a cloud, the same for the same hand. */
export const straysOf = ({ mean, sd }: Hand, count = CLOUD): Stray[] =>
  normalPoints(count, STRAYS.length).map(
    (point) => Object.fromEntries(STRAYS.map((key, j) => [key, mean[key] + sd[key] * point[j]])) as Stray,
  );

/**
 * The cloud of a plan under a hand (rule H2). A generator that yields how many are placed, an evaluation each, so that a page can spread it over idle
 * time. Facts of the site are left out; a reading that has no value or does not apply in a placement does not cross there.
 */
export function* searchCloud(plan: Plan, hand: Hand, count = CLOUD): Generator<number, Cloud> {
  const counts = new Map<ReadingId, number>();
  const placed: Placed[] = [];
  for (const stray of straysOf(hand, count)) {
    const pose = strayedPose(plan.pose, stray);
    const beyond = evaluate({ ...plan, pose }).readings.filter(
      ({ id, status }) => status === 'beyond' && !SITE_FACT.test(id),
    );
    for (const { id } of beyond) counts.set(id, (counts.get(id) ?? 0) + 1);
    placed.push({ pose, broken: beyond.length > 0 });
    yield placed.length;
  }
  const crossed = [...counts].map(([id, times]) => ({ id, share: times / placed.length }));
  return {
    placed,
    crossed: crossed.sort((a, b) => b.share - a.share),
    any: placed.filter(({ broken }) => broken).length / placed.length,
  };
}
