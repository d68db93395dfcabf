/**
 * `npm run test:long`: 100,000 random plans, far beyond sensible anatomy: nothing throws, nothing is infinite, and every reading's status is the one that
 * its own value and band give. Source: rules M1–M14; no outside numbers. RUNS in the environment asks for another count.
 */
import { describe, expect, it } from 'vitest';
import { SITES, type Site, type SiteCode } from '../../src/core/anatomy/site.ts';
import { IMPLANT_LIBRARY } from '../../src/core/implant/library.ts';
import { judge } from '../../src/core/measure/limit.ts';
import { READING_IDS, type Reading } from '../../src/core/measure/reading.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { heldPose } from '../../src/core/plan/edits.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { POSE_RANGE } from '../../src/core/plan/ranges.ts';
import { readPlan } from '../../src/core/plan/read.ts';
import { randomSite, seeded } from '../oracle/plans.ts';
import { MEAN_PLANS } from '../support/meanPlans.ts';

const RUNS = Number(process.env.RUNS ?? 100_000);
/** Poses a site: the solids are made once for all of them. */
const POSES = 50;
/** About 40 ms a plan where half of the implants are far outside the bone: an hour or more in all. */
const HOUR = 3_600_000;
const FIXINGS = ['screw-bone', 'screw-gum', 'cemented'] as const;

type Random = () => number;
const between = (random: Random, low: number, high: number) => low + (high - low) * random();

/** Half of the poses about the bone, as a hand leaves them; half anywhere in the ranges of the plan file. */
function posed(random: Random, site: Site, index: number): Plan {
  const r = POSE_RANGE;
  const near = index % 2 === 0;
  const any = ([low, high]: readonly [number, number]) => between(random, low, high);
  const implant = IMPLANT_LIBRARY[Math.floor(random() * IMPLANT_LIBRARY.length)];
  const lean = site.ridge.inclination;
  return {
    ...MEAN_PLANS[0].plan,
    title: `plan ${index}`,
    site,
    implant,
    fixing: FIXINGS[index % 3],
    pose: heldPose({
      platform: near
        ? { m: between(random, -2, 2), f: between(random, -3, 3), c: between(random, -4, 3) }
        : { m: any(r.m), f: any(r.f), c: any(r.c) },
      tilt: near
        ? { faciopalatal: lean + between(random, -25, 15), mesiodistal: between(random, -15, 15) }
        : { faciopalatal: any(r.faciopalatal), mesiodistal: any(r.mesiodistal) },
      roll: any(r.roll),
    }),
    crestMargin: index % 7 === 0 ? between(random, 0, 3) : 1,
  };
}

/** What is wrong with a reading, or null. */
function wrong(r: Reading): string | null {
  const finite = (p: readonly number[] | null) => p === null || p.every(Number.isFinite);
  if (!finite(r.from) || !finite(r.to)) return 'a point that is not finite';
  if (r.level !== null && !Number.isFinite(r.level)) return 'a level that is not finite';
  if (r.aside !== null && !Number.isFinite(r.aside)) return 'an aside that is not finite';
  if (r.value === null) return r.status === 'not-applicable' && r.reason ? null : 'no value and no reason';
  if (!Number.isFinite(r.value)) return 'a value that is not finite';
  if (r.status === 'not-applicable') return 'a value that does not apply';
  if (r.status === null) return r.reason ? null : 'no status and no reason';
  if (!r.limit) return 'a status without a limit';
  const verdict = judge(r.judgedAt?.value ?? r.value, r.limit.bands);
  return verdict === r.status ? null : `judged ${r.status}, but its value is ${verdict}`;
}

describe(`${RUNS} random plans`, () => {
  it(
    'throw nothing, answer nothing infinite, and judge every value by its own band',
    () => {
      const random = seeded(97);
      const faults: string[] = [];
      let usable = 0;
      let judged = 0;
      for (let n = 0; n < RUNS; ) {
        const index = n / POSES;
        const drawn =
          index % 5 === 0 ? defaultSite(SITES[index % SITES.length] as SiteCode) : randomSite(random, index);
        if (readPlan({ ...MEAN_PLANS[0].plan, site: drawn }).ok) usable++;
        for (let k = 0; k < POSES && n < RUNS; k++, n++) {
          const plan = posed(random, drawn, n);
          try {
            const { readings, findings, profiles } = evaluate(plan);
            if (readings.length !== READING_IDS.length) faults.push(`plan ${n}: ${readings.length} readings`);
            for (const r of readings) {
              const fault = wrong(r);
              if (fault) faults.push(`plan ${n}: ${r.id}: ${fault} (${r.value})`);
              if (r.status === 'near' || r.status === 'beyond') judged++;
            }
            for (const f of findings)
              if (!(f.by > 0)) faults.push(`plan ${n}: ${f.reading}: ${f.by} missing`);
            for (const { side, samples } of profiles)
              for (const s of samples)
                if (s.wall !== null && !Number.isFinite(s.wall))
                  faults.push(`plan ${n}: ${side} wall at ${s.level}`);
          } catch (error) {
            faults.push(`plan ${n}: ${error instanceof Error ? error.message : String(error)}`);
          }
          if (faults.length > 20) break;
        }
        expect(faults).toEqual([]);
      }
      expect(usable).toBeGreaterThan(RUNS / POSES / 2);
      expect(judged).toBeGreaterThan(RUNS);
    },
    8 * HOUR,
  );
});
