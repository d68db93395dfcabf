import type { Reading, ReadingId } from '../measure/reading.ts';
import type { Plan } from '../plan/plan.ts';
import { rankOf, readingsUnder, unbegun } from './cost.ts';
import { goneWrong, type TrajectoryId, trajectoryOf } from './trajectories.ts';

/** At how much of a trajectory a reading first stands worse, in whole per cent of its full size (rule L5); null: nowhere up to 100, or the plan has it so already. */
export interface Break {
  readonly reading: ReadingId;
  readonly near: number | null;
  readonly beyond: number | null;
  /** Below 0: outside the bone, in a root, canal or floor; bare. */
  readonly crossed: number | null;
}

/** Over all readings, the first of each. */
export interface Breaks {
  readonly id: TrajectoryId;
  readonly readings: readonly Break[];
  readonly near: number | null;
  readonly beyond: number | null;
  /** A thinnest wall below 0: outside the bone. */
  readonly outside: number | null;
}

/** Per cent between looks; where one of them stands worse than the last, the whole per cent is halved for. */
const STEP = 5;

type Test = (r: Reading) => boolean;

const IS_NEAR: Test = (r) => (rankOf(r) ?? 0) >= 1;
const IS_BEYOND: Test = (r) => rankOf(r) === 2;
const CROSSES = /-wall-(thinnest|true)$|^root-(mesial|distal)$|^canal$|^apex-to-/;
const BARE = /^exposure-(dehiscence|fenestration)$/;
const IS_CROSSED: Test = ({ id, value }) =>
  value !== null && ((CROSSES.test(id) && value < 0) || (BARE.test(id) && value > 0));

/** Readings of the plan gone wrong by whole per cents, each made once. */
class Looks {
  private readonly made = new Map<number, ReadonlyMap<ReadingId, Reading>>();
  constructor(
    private readonly plan: Plan,
    private readonly id: TrajectoryId,
  ) {}

  *at(percent: number): Generator<void, ReadonlyMap<ReadingId, Reading>> {
    const known = this.made.get(percent);
    if (known) return known;
    const trajectory = trajectoryOf(this.id);
    const readings = readingsUnder(goneWrong(this.plan, this.id, percent / 100), trajectory);
    const byId = new Map(readings.map((r) => [r.id, r]));
    this.made.set(percent, byId);
    yield;
    return byId;
  }

  /** The first whole per cent at which a test holds that does not hold at 0; null: none was found. */
  *first(id: ReadingId, test: Test): Generator<void, number | null> {
    const holds = function* (this: Looks, percent: number): Generator<void, boolean> {
      const reading = (yield* this.at(percent)).get(id);
      return reading !== undefined && test(reading);
    }.bind(this);
    if (yield* holds(0)) return null;
    for (let percent = STEP; percent <= 100; percent += STEP) {
      if (!(yield* holds(percent))) continue;
      let [good, bad] = [percent - STEP, percent];
      while (bad - good > 1) {
        const middle = Math.floor((good + bad) / 2);
        if (yield* holds(middle)) bad = middle;
        else good = middle;
      }
      return bad;
    }
    return null;
  }
}

/**
 * Where each limit breaks along a trajectory. A generator, so that a page can spread the evaluations (21, and at most three for each crossing) over idle time.
 */
export function* searchBreaks(plan: Plan, id: TrajectoryId): Generator<void, Breaks> {
  const looks = new Looks(unbegun(plan), id);
  const start = yield* looks.at(0);
  const readings: Break[] = [];
  for (const reading of start.keys()) {
    const found: Break = {
      reading,
      near: yield* looks.first(reading, IS_NEAR),
      beyond: yield* looks.first(reading, IS_BEYOND),
      crossed: yield* looks.first(reading, IS_CROSSED),
    };
    if (found.near !== null || found.beyond !== null || found.crossed !== null) readings.push(found);
  }
  readings.sort((p, q) => (p.beyond ?? 101) - (q.beyond ?? 101) || (p.near ?? 101) - (q.near ?? 101));
  const thinnest = readings.filter(({ reading }) => reading.endsWith('-wall-thinnest'));
  return {
    id,
    readings,
    near: least(readings.map(({ near }) => near)),
    beyond: least(readings.map(({ beyond }) => beyond)),
    outside: least(thinnest.map(({ crossed }) => crossed)),
  };
}

const least = (found: readonly (number | null)[]): number | null => {
  const some = found.filter((percent) => percent !== null);
  return some.length > 0 ? Math.min(...some) : null;
};

/** {@link searchBreaks} in one go. */
export function breaksOf(plan: Plan, id: TrajectoryId): Breaks {
  const search = searchBreaks(plan, id);
  for (;;) {
    const next = search.next();
    if (next.done) return next.value;
  }
}
