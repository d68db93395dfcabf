/** Compares the readings of `evaluate` with the oracle's over seeded plans, and says where they part. */

import type { ReadingId } from '../../src/core/measure/reading.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { Root, ringDistance, toTube } from './obstacles.ts';
import { type Answers, groundOf, oracleProfile, oracleReadings, placedOf } from './readings.ts';

/** How far a reading may stand from the oracle's, in its unit. */
export function toleranceOf(id: ReadingId): number {
  if (id.startsWith('exposure-')) return 0.1;
  if (id === 'bone-contact') return 0.2;
  // A twentieth of a turn of the thread.
  if (id === 'exposed-threads') return 0.05;
  return 0.01;
}

/** The neighbours of a pose among which an answer that may jump is looked for: mm and degrees. */
const NUDGES: readonly (readonly [number, number, number, number, number])[] = [
  [0.04, 0, 0, 0, 0],
  [-0.04, 0, 0, 0, 0],
  [0, 0.04, 0, 0, 0],
  [0, -0.04, 0, 0, 0],
  [0, 0, 0.04, 0, 0],
  [0, 0, -0.04, 0, 0],
  [0, 0, 0, 0.4, 0],
  [0, 0, 0, -0.4, 0],
  [0, 0, 0, 0, 0.4],
  [0, 0, 0, 0, -0.4],
];

function nudged(plan: Plan, [m, f, c, fp, md]: (typeof NUDGES)[number]): Plan {
  const { platform, tilt } = plan.pose;
  return {
    ...plan,
    pose: {
      ...plan.pose,
      platform: { m: platform.m + m, f: platform.f + f, c: platform.c + c },
      tilt: { faciopalatal: tilt.faciopalatal + fp, mesiodistal: tilt.mesiodistal + md },
    },
  };
}

export interface Parting {
  readonly id: ReadingId;
  readonly title: string;
  readonly oracle: number | null;
  readonly core: number | null;
  /** The oracle's own answer jumps within 0.04 mm or 0.4° of this pose, and the core's lies within that jump. */
  readonly jump: boolean;
}

export interface Row {
  readonly id: ReadingId;
  readonly plans: number;
  readonly notApplicable: number;
  readonly p95: number;
  readonly worst: number;
  readonly jumps: number;
}

export interface Agreement {
  readonly plans: number;
  readonly rows: readonly Row[];
  readonly partings: readonly Parting[];
  /** Profile levels compared, and those that part by more than 0.01 mm or in whether they count. */
  readonly levels: number;
  /** Levels above the crest line that the core's profile leaves out. */
  readonly leftOut: number;
  readonly partedLevels: readonly string[];
  /** Levels and ends of readings that do not fit their own value. */
  readonly illFitting: readonly string[];
}

export function compare(plans: Iterable<Plan>): Agreement {
  const differences = new Map<ReadingId, number[]>();
  const absent = new Map<ReadingId, number>();
  const partings: Parting[] = [];
  const partedLevels: string[] = [];
  const illFitting: string[] = [];
  let levels = 0;
  let leftOut = 0;
  let count = 0;
  for (const plan of plans) {
    count += 1;
    const oracle = oracleReadings(plan);
    const core = evaluate(plan);
    const values = new Map(core.readings.map((r) => [r.id, r.value] as const));
    let neighbours: Answers[] | null = null;
    for (const [id, expected] of oracle) {
      const got = values.get(id);
      if (got === undefined) throw new Error(`no reading ${id}`);
      if (expected === null) absent.set(id, (absent.get(id) ?? 0) + 1);
      if (expected === null && got === null) continue;
      const off = expected === null || got === null ? Infinity : Math.abs(expected - got);
      if (off <= toleranceOf(id) || (id === 'canal-level' && got !== null && fitsCanal(plan, got, oracle))) {
        differences.set(id, [...(differences.get(id) ?? []), off]);
        continue;
      }
      neighbours ??= NUDGES.map((n) => oracleReadings(nudged(plan, n)));
      const around = [oracle, ...neighbours];
      const jump =
        within(
          got,
          around.map((a) => a.get(id) ?? null),
          id,
        ) || joins(values, around, id);
      partings.push({ id, title: plan.title, oracle: expected, core: got, jump });
    }
    for (const profile of core.profiles) {
      for (let i = 0; i < profile.samples.length; i += 9) {
        const s = profile.samples[i]!;
        const o = oracleProfile(plan, profile.side, s.level);
        if (s.wall === null && !o.counts && o.depth !== null && o.depth < 0) {
          // Above the crest line, where nothing counts, the core draws no profile. (Readings at fixed levels are compared there too.)
          leftOut += 1;
          continue;
        }
        levels += 1;
        const same =
          (o.wall === null) === (s.wall === null) &&
          Math.abs((o.wall ?? 0) - (s.wall ?? 0)) <= 0.01 &&
          (o.wall === null || Math.abs(o.gap - s.gap) <= 0.01) &&
          // Within a hair of the margin either answer will do.
          (o.counts === s.counts || Math.abs((o.depth ?? 0) - plan.crestMargin) < 1e-5);
        if (!same) partedLevels.push(`${plan.title} ${profile.side} ${s.level}: ${JSON.stringify([o, s])}`);
      }
    }
    illFitting.push(...illFits(plan, core.readings));
  }
  const rows = [...differences].map(([id, list]): Row => {
    const sorted = list.sort((a, b) => a - b);
    return {
      id,
      plans: sorted.length,
      notApplicable: absent.get(id) ?? 0,
      p95: sorted[Math.floor(sorted.length * 0.95)]!,
      worst: sorted.at(-1)!,
      jumps: partings.filter((x) => x.id === id && x.jump).length,
    };
  });
  return { plans: count, rows, partings, levels, leftOut, partedLevels, illFitting };
}

/** Far more than a smooth reading can change between the nudged poses. */
const leapOf = (id: ReadingId): number => {
  if (id.startsWith('exposure-')) return 4;
  if (id === 'bone-contact') return 4;
  if (id === 'exposed-threads') return 0.6;
  return 0.3;
};

function within(got: number | null, around: readonly (number | null)[], id: ReadingId): boolean {
  const numbers = around.filter((x) => x !== null);
  const some = around.some((x) => x === null);
  if (got === null) return some && numbers.length > 0;
  if (numbers.length === 0) return false;
  const lo = Math.min(...numbers);
  const hi = Math.max(...numbers);
  // Where the answer comes and goes, the nudge that makes it also changes it.
  const pad = some ? leapOf(id) / 2 : toleranceOf(id);
  return got >= lo - pad && got <= hi + pad && (some || hi - lo > leapOf(id));
}

/**
 * Whether the two sides agree on what is exposed outside voids and part only in what is joined to the crest, while the oracle
 * itself finds it joined in some of the nudged poses and not in others.
 */
function joins(
  core: ReadonlyMap<ReadingId, number | null>,
  around: readonly Answers[],
  id: ReadingId,
): boolean {
  if (id !== 'exposure-dehiscence' && id !== 'exposure-fenestration') return false;
  const joined = (a: ReadonlyMap<ReadingId, number | null>) => a.get('exposure-dehiscence') ?? 0;
  const sum = (a: ReadonlyMap<ReadingId, number | null>) => joined(a) + (a.get('exposure-fenestration') ?? 0);
  const same = Math.abs(sum(core) - sum(around[0]!)) <= toleranceOf(id);
  const share = (a: ReadonlyMap<ReadingId, number | null>) => (sum(a) > 0 ? joined(a) / sum(a) : 0);
  const own = share(around[0]!);
  return same && around.some((a) => Math.abs(share(a) - share(core)) < Math.abs(share(a) - own));
}

/** A level is ill-conditioned where the distance is flat: the ring there must be as near as the nearest. */
function fitsCanal(plan: Plan, level: number, oracle: Answers): boolean {
  const tube = groundOf(plan).canal;
  const value = oracle.get('canal');
  if (!tube || value === null || value === undefined) return false;
  return Math.abs(ringDistance(placedOf(plan), level, (x) => toTube(tube, x)) - value) <= 0.01;
}

/** What a reading says of itself beside its value: its level, and that its two ends are as far apart as the value. */
function illFits(plan: Plan, readings: ReturnType<typeof evaluate>['readings']): string[] {
  const found: string[] = [];
  const p = placedOf(plan);
  const g = groundOf(plan);
  for (const r of readings) {
    if (r.value === null) continue;
    const say = (what: string): void => {
      found.push(`${plan.title} ${r.id} ${r.value}: ${what}`);
    };
    const measuredBetween = /^(root-|canal$|apex-to-concavity|(facial|palatal)-wall-true)/.test(r.id);
    if (measuredBetween && r.reason !== 'outside') {
      const apart =
        r.from && r.to ? Math.hypot(r.from[0] - r.to[0], r.from[1] - r.to[1], r.from[2] - r.to[2]) : null;
      if (apart === null || Math.abs(apart - Math.abs(r.value)) > 1e-6) say(`its ends are ${apart} apart`);
    }
    if ((r.id === 'root-mesial' || r.id === 'root-distal') && r.level !== null) {
      const root = new Root(r.id === 'root-mesial' ? g.mesial : g.distal);
      const there = ringDistance(p, r.level, (x) => root.signed(x));
      if (Math.abs(there - r.value) > 0.01) say(`at its level ${r.level} it is ${there}`);
    }
    if (r.id === 'facial-wall-thinnest' || r.id === 'palatal-wall-thinnest') {
      const side = r.id === 'facial-wall-thinnest' ? 'facial' : 'palatal';
      const there = r.level === null ? null : oracleProfile(plan, side, r.level).wall;
      if (there === null || Math.abs(there - r.value) > 0.01) say(`at its level ${r.level} it is ${there}`);
    }
  }
  return found;
}

/** The table that a run prints: p95 and worst difference per reading, how many plans it had, and how many jumps. */
export function table({ plans, rows, levels, leftOut }: Agreement): string {
  const lines = rows.map(
    (r) =>
      `${r.id.padEnd(30)} ${String(r.plans).padStart(5)} ${String(r.notApplicable).padStart(5)} ${r.p95.toExponential(1).padStart(9)} ${r.worst.toExponential(1).padStart(9)} ${String(r.jumps).padStart(3)}`,
  );
  const head = `${'reading'.padEnd(30)} ${'plans'.padStart(5)} ${'n/a'.padStart(5)} ${'p95'.padStart(9)} ${'worst'.padStart(9)} jumps`;
  return [
    `${plans} plans, ${levels} profile levels, ${leftOut} more above the crest line`,
    head,
    ...lines,
  ].join('\n');
}
