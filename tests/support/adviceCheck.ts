import { expect } from 'vitest';
import { advise, applyEdit } from '../../src/core/plan/advice.ts';
import { advance, shift, tiltTo } from '../../src/core/plan/edits.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { SITES_DEMO } from './demoPlans.ts';

/** A small generator with a seed (Park and Miller 1988), so that the same poses come every time. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

function* poses(): Generator<Plan> {
  const random = seeded(20261125);
  const within = (most: number) => (2 * random() - 1) * most;
  for (;;) {
    const { plan } = SITES_DEMO[Math.floor(random() * SITES_DEMO.length)];
    const shifted = advance(shift(plan, within(1), within(1.2)), within(1));
    const { mesiodistal, faciopalatal } = shifted.pose.tilt;
    yield tiltTo(
      shifted,
      { mesiodistal: mesiodistal + within(6), faciopalatal: faciopalatal + within(10) },
      'entry',
    );
  }
}

/** What is beyond, but for facts of the site, which no pose mends. */
const broken = (plan: Plan): string[] =>
  evaluate(plan).readings.flatMap(({ id, status }) =>
    status === 'beyond' && !id.startsWith('contact-to-crest') ? [id] : [],
  );

const GUARDED = /^(root-|apex-to-floor$|canal$)/;
const rank = { within: 0, near: 1, beyond: 2 } as const;

/**
 * Looks at so many seeded poses with one broken limit and no more: each edit that is advised mends it and breaks nothing. Says how many were
 * mended and for how many nothing was in reach.
 */
export function checkAdvice(wanted: number): { mended: number; none: number } {
  let [looked, mended, none] = [0, 0, 0];
  for (const plan of poses()) {
    const before = broken(plan);
    if (before.length !== 1) continue;
    looked += 1;
    const start = evaluate(plan);
    const { worst, advice } = advise(plan);
    expect(worst).toBe(before[0]);
    if (advice.length === 0) none += 1;
    else mended += 1;
    for (const { edit, mends, after, status } of advice) {
      const made = evaluate(applyEdit(plan, edit));
      const reading = readingOf(made.readings, mends);
      expect(reading.value).toBe(after);
      expect(reading.status).toBe(status);
      expect(status).not.toBe('beyond');
      expect(broken(applyEdit(plan, edit))).toEqual([]);
      for (const { id, status: now } of made.readings) {
        const old = readingOf(start.readings, id).status;
        if (GUARDED.test(id) && now && old && now !== 'not-applicable' && old !== 'not-applicable')
          expect(rank[now], id).toBeLessThanOrEqual(rank[old]);
      }
    }
    if (looked === wanted) break;
  }
  return { mended, none };
}
