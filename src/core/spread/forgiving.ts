import type { Pose } from '../geometry/pose.ts';
import { SITE_FACT } from '../measure/margin.ts';
import type { Reading, ReadingId } from '../measure/reading.ts';
import { evaluate } from '../plan/evaluate.ts';
import type { Plan } from '../plan/plan.ts';
import { type Hand, STRAYS, type Stray, type StrayKey, strayedPose } from './straying.ts';

/** How far one reading is from being broken, under a hand. */
export interface Forgiveness {
  readonly id: ReadingId;
  /** Distance to the nearer bound of "beyond", + inside, in the reading's unit; for bare thread at the crest the depth of the last thread below it, mm. */
  readonly margin: number;
  /** SD of the same under the hand. */
  readonly sd: number;
  /** margin / sd. */
  readonly score: number;
}

/** What forgives a hand most, and what holds it back. */
export interface Forgiving {
  readonly pose: Pose;
  /** The reading with the least score at the start, and at the pose that was found. */
  readonly before: Forgiveness;
  readonly after: Forgiveness;
}

/** A pose as a hand would meet it: every judged reading with its margin, its slopes over one SD of each straying, its spread. */
interface Ground {
  readonly pose: Pose;
  readonly readings: readonly (Forgiveness & { readonly slopes: readonly number[] })[];
  readonly worst: Forgiveness;
}

/** Areas and corrections that cannot be less than 0: walls and angles say the same with a margin. */
const BOUNDED = /^exposure-|^access-exit-correction$/;

/** A reading that a hand moves less than this in one SD (its unit) is left out: it cannot be forgiven, nor lost. */
const UNMOVED = 1e-3;

/** Distance to the nearer bound of "beyond", + inside; null for a reading that is not judged or that no pose changes. */
export function roomOf(r: Reading): number | null {
  if (r.value === null || !r.limit || r.status === null || r.status === 'not-applicable') return null;
  if (SITE_FACT.test(r.id) || BOUNDED.test(r.id)) return null;
  const value = r.judgedAt?.value ?? r.value;
  const { low, high } = r.limit.bands;
  return Math.min(low ? value - low.beyond : Infinity, high ? high.beyond - value : Infinity);
}

/** How far the last thread lies below a healed ridge's edge where that is lowest, mm: less than 0 and thread is bare from the crest down. */
function coverOf(readings: readonly Reading[], smooth: number): number | null {
  const above = readings.filter(({ id }) => id.startsWith('shoulder-to-crest-'));
  return above.some(({ value }) => value === null)
    ? null
    : smooth - Math.max(...above.map(({ value }) => value as number));
}

function roomsAt(plan: Plan, pose: Pose): ReadonlyMap<ReadingId, number> {
  const rooms = new Map<ReadingId, number>();
  const { readings } = evaluate({ ...plan, pose });
  for (const reading of readings) {
    const room = roomOf(reading);
    if (room !== null) rooms.set(reading.id, room);
  }
  const cover = plan.site.state.kind === 'healed' ? coverOf(readings, plan.implant.transmucosalLength) : null;
  if (cover !== null) rooms.set('exposure-dehiscence', cover);
  return rooms;
}

const NOWHERE = Object.fromEntries(STRAYS.map((key) => [key, 0])) as Stray;
const only = (key: StrayKey, amount: number): Stray => ({ ...NOWHERE, [key]: amount });

/**
 * Surveys a pose: eleven evaluations, one there and one an SD to either side in each of the five strayings. Independent strayings add by their squares:
 * `SD² = Σ ((r₊ − r₋)/2)²`. Null where no judged reading is moved by the hand.
 */
function* survey(plan: Plan, pose: Pose, hand: Hand): Generator<void, Ground | null> {
  yield;
  const here = roomsAt(plan, pose);
  const sides: [ReadonlyMap<ReadingId, number>, ReadonlyMap<ReadingId, number>][] = [];
  for (const key of STRAYS) {
    yield;
    const up = roomsAt(plan, strayedPose(pose, only(key, hand.sd[key])));
    yield;
    sides.push([up, roomsAt(plan, strayedPose(pose, only(key, -hand.sd[key])))]);
  }
  const readings = [...here].flatMap(([id, margin]) => {
    // Where a reading has no value on one side, the other and the middle say how it moves.
    const slopes = sides.map(([up, down]) => ((up.get(id) ?? margin) - (down.get(id) ?? margin)) / 2);
    const sd = Math.hypot(...slopes);
    return sd < UNMOVED ? [] : [{ id, margin, sd, score: margin / sd, slopes }];
  });
  if (readings.length === 0) return null;
  const { id, margin, sd, score } = readings.reduce((a, b) => (b.score < a.score ? b : a));
  return { pose, readings, worst: { id, margin, sd, score } };
}

/** Steps of the climb on slopes alone; they cost no evaluation. */
const CLIMB = 600;

/**
 * The straying (in SDs) within a box of half-width `reach` that lifts the worst score most if all readings ran straight: subgradient steps up
 * whatever is worst, shrinking; the best one seen.
 */
function lift({ readings }: Ground, reach: number): number[] {
  const at = STRAYS.map(() => 0);
  const scoreOf = ({ margin, sd, slopes }: Ground['readings'][number]) =>
    (margin + slopes.reduce((sum, slope, j) => sum + slope * at[j], 0)) / sd;
  let best = [...at];
  let most = -Infinity;
  for (let i = 0; i < CLIMB; i++) {
    let worst = readings[0];
    let least = Infinity;
    for (const reading of readings) {
      const score = scoreOf(reading);
      if (score < least) [least, worst] = [score, reading];
    }
    if (least > most) [most, best] = [least, [...at]];
    const step = reach / Math.sqrt(1 + i / 4);
    for (let j = 0; j < at.length; j++) {
      at[j] = Math.max(-reach, Math.min(reach, at[j] + (step * worst.slopes[j]) / worst.sd));
    }
  }
  return best;
}

/** The first box, and the last, in SDs of each straying. */
const REACH = { first: 1, last: 0.02 } as const;
/** Surveys at most; each is eleven evaluations. */
const SURVEYS = 30;
/** Less than this in score is no gain. */
const GAIN = 1e-4;

/**
 * The pose whose worst margin, divided by that reading's SD under the hand, is the largest (rule H3): from the plan's own pose, by steps that are best where
 * all readings run straight, each tried for true and taken only when it is better, the box halved when it is not. A local search: it never ends worse than it
 * began. The turn is kept. Null where nothing judged is moved by the hand. A generator, so that a page can spread the evaluations (at most 330) over idle time.
 */
export function* searchForgiving(plan: Plan, hand: Hand): Generator<void, Forgiving | null> {
  const start = yield* survey(plan, plan.pose, hand);
  if (!start) return null;
  let best = start;
  let reach: number = REACH.first;
  for (let left = SURVEYS - 1; left > 0 && reach >= REACH.last; left--) {
    const step = lift(best, reach);
    const stray = Object.fromEntries(STRAYS.map((key, j) => [key, step[j] * hand.sd[key]])) as Stray;
    const tried = yield* survey(plan, strayedPose(best.pose, stray), hand);
    if (tried && tried.worst.score > best.worst.score + GAIN) best = tried;
    else reach /= 2;
  }
  return { pose: best.pose, before: start.worst, after: best.worst };
}
