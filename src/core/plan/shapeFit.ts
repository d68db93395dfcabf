import { axisOf, type Pose } from '../geometry/pose.ts';
import { angleBetween, scale } from '../geometry/vec.ts';
import { IMPLANT_LIBRARY } from '../implant/library.ts';
import type { ImplantShape } from '../implant/shape.ts';
import { BEYOND, marginOf } from '../measure/margin.ts';
import type { Reading } from '../measure/reading.ts';
import { plannedTilt } from '../restoration/crownChoices.ts';
import { GUARDED } from './advice.ts';
import { advance, heldPose, shift, tiltTo, useShape as withShape } from './edits.ts';
import { evaluate } from './evaluate.ts';
import { planAlongCrown } from './newPlan.ts';
import type { Plan } from './plan.ts';

/** The best pose that was found for a shape in a site, and what holds it back there. */
export interface ShapeFit {
  readonly shape: ImplantShape;
  readonly pose: Pose;
  /** The reading with the least margin against its limit; its status is the worst of the pose. */
  readonly worst: Reading;
}

/** A pose that was looked at. */
interface Place {
  readonly plan: Plan;
  readonly worst: Reading;
  /** Margins of all judged readings (`measure/margin.ts`), the least first; what is guarded is worse beyond its limit than anything else. */
  readonly margins: readonly number[];
  /** What the axis costs: taken off every margin when poses are compared. */
  readonly cost: number;
}

/** Margin that a pose must gain for each degree away from the planned crown's axis (ours): no steep tilt for a few hundredths. */
const PER_DEGREE = 0.02;

/** Evaluations a shape, at most; one takes 1 to 3 ms. */
export const MOST_LOOKS = 150;
/** Of these, what each start may take before the best one goes on alone. */
const OPENING = 36;

/** Steps of the search, in mm; a degree weighs as much as the apex moves by it, about. */
const COARSE = 0.4;
const OPENED = 0.1;
const FINE = 0.02;
const DEGREES = 6;

/** Without this reading a wall would be out of sight, not sound. */
const NEEDED = ['facial-wall-thinnest', 'palatal-wall-thinnest'];

/** The moves of a hand, by a signed amount of mm: axis kept, entry kept, apex kept, along the axis. */
const MOVES: readonly ((plan: Plan, by: number) => Plan)[] = [
  (plan, by) => shift(plan, 0, by),
  (plan, by) => shift(plan, by, 0),
  advance,
  (plan, by) => tilted(plan, 0, by, 'entry'),
  (plan, by) => tilted(plan, by, 0, 'entry'),
  (plan, by) => tilted(plan, 0, by, 'apex'),
  (plan, by) => tilted(plan, by, 0, 'apex'),
];

function tilted(plan: Plan, md: number, fp: number, pivot: 'entry' | 'apex'): Plan {
  const { mesiodistal, faciopalatal } = plan.pose.tilt;
  const tilt = { mesiodistal: mesiodistal + md * DEGREES, faciopalatal: faciopalatal + fp * DEGREES };
  return tiltTo(plan, tilt, pivot);
}

function look(plan: Plan): Place {
  const judged = evaluate(plan).readings.flatMap((reading) => {
    const lost = reading.value === null && NEEDED.includes(reading.id);
    const margin = lost ? -Infinity : marginOf(reading);
    if (margin === null) return [];
    const harm = reading.status === 'beyond' && GUARDED.test(reading.id);
    return [{ reading, margin: harm ? margin - BEYOND : margin }];
  });
  judged.sort((a, b) => a.margin - b.margin);
  const crownTilt = plannedTilt(plan.site.crown.tilt, plan.crown);
  const away = angleBetween(axisOf(plan.pose.tilt), axisOf(crownTilt));
  return {
    plan,
    worst: judged[0].reading,
    margins: judged.map(({ margin }) => margin),
    cost: PER_DEGREE * away,
  };
}

/** Differences below this are arithmetic, in units of margin. */
const SAME = 1e-9;

/** The worst margin decides, less what the axis costs; where two poses share it, the next worst, and so on. */
function isBetter(a: Place, b: Place): boolean {
  const count = Math.min(a.margins.length, b.margins.length);
  for (let i = 0; i < count; i++) {
    const x = a.margins[i] - a.cost;
    const y = b.margins[i] - b.cost;
    if (x !== y && Math.abs(x - y) > SAME) return x > y;
  }
  return false;
}

/** Evaluations that are left. */
interface Purse {
  left: number;
}

/**
 * Compass search over the moves: a move that is better is taken and tried again, the step is halved when none is. Stops at kinks and edges
 * where the worst reading changes, needs no derivative, and never leaves the start for a worse place. Yields before each evaluation.
 */
function* climb(start: Place, from: number, to: number, purse: Purse): Generator<null, Place> {
  let best = start;
  for (let step = from; step >= to; step /= 2) {
    for (let idle = 0, i = 0; idle < 2 * MOVES.length && purse.left > 0; i++) {
      const way = i % (2 * MOVES.length);
      const by = way % 2 === 0 ? step : -step;
      yield null;
      purse.left -= 1;
      const tried = look(MOVES[way >> 1](best.plan, by));
      if (tried.margins[0] >= start.margins[0] && isBetter(tried, best)) {
        best = tried;
        idle = 0;
        i -= 1;
      } else idle += 1;
    }
  }
  return best;
}

/**
 * Where the search begins: the present pose, the planned crown's axis, and, as deep, the ridge's own axis through the middle of its crest. The
 * turn is kept.
 */
function startsOf(plan: Plan, shape: ImplantShape): Plan[] {
  const here = withShape(plan, shape);
  const crown = planAlongCrown(plan.site, shape, plan.fixing, plan.title, plan.crown).pose;
  const tilt = { faciopalatal: plan.site.ridge.inclination, mesiodistal: 0 };
  const [m, f, c] = scale(axisOf(tilt), crown.platform.c / axisOf(tilt)[2]);
  const ridge = heldPose({ platform: { m, f, c }, tilt, roll: 0 });
  return [here, ...[crown, ridge].map((pose) => ({ ...here, pose: { ...pose, roll: plan.pose.roll } }))];
}

/**
 * Looks for the pose of one shape whose worst margin is the largest; the turn is kept. A local search in this model: a better place may exist,
 * but the worst margin is nowhere less than at any of its starts.
 */
export function* searchFit(plan: Plan, shape: ImplantShape): Generator<null, ShapeFit> {
  const purse: Purse = { left: MOST_LOOKS };
  let least = -Infinity;
  const opened: Place[] = [];
  for (const begin of startsOf(plan, shape)) {
    const share: Purse = { left: OPENING - 1 };
    yield null;
    const start = look(begin);
    least = Math.max(least, start.margins[0]);
    opened.push(yield* climb(start, COARSE, OPENED, share));
    purse.left -= OPENING - share.left;
  }
  const held = opened.filter(({ margins }) => margins[0] >= least);
  const best = held.reduce((a, b) => (isBetter(b, a) ? b : a));
  const { plan: found, worst } = yield* climb(best, OPENED, FINE, purse);
  return { shape, pose: found.pose, worst };
}

/**
 * {@link searchFit} for every shape of the library, in its order. A generator, so that a page can spread the evaluations over idle time: it
 * yields a fit when one is found and null between evaluations.
 */
export function* searchFits(plan: Plan): Generator<ShapeFit | null, void> {
  for (const shape of IMPLANT_LIBRARY) yield yield* searchFit(plan, shape);
}
