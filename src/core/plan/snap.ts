import { plannedTilt } from '../restoration/crownChoices.ts';
import { rungOf } from '../seating/ladder.ts';
import { advance, type Pivot, shift, shoulderLevel, tiltTo } from './edits.ts';
import { type Evaluation, evaluate, readingOf } from './evaluate.ts';
import type { Plan } from './plan.ts';

/** What a pose can be brought to in one step. */
export const SNAPS = [
  'bone-faciopalatal',
  'bone-mesiodistal',
  'ridge-axis',
  'crown-axis',
  'incisal-line',
  'deeper-rung',
  'higher-rung',
] as const;
export type Snap = (typeof SNAPS)[number];

/** Palatal of the incisal line that a screw aims at, mm (ours; a cemented crown aims at the line itself). */
const SCREW_AIM = -1;
/** As near as a hand could ever tell, mm. */
const CLOSE = 1e-8;

/**
 * Moves by one amount until a measure is 0: secant from two steps. Null where the measure has no answer on the way or does not come to
 * rest: then nothing should move.
 */
function brought(
  plan: Plan,
  move: (by: number) => Plan,
  measure: (at: Evaluation) => number | null,
  first: number,
): Plan | null {
  const miss = (by: number) => measure(evaluate(move(by)));
  let [x0, y0] = [0, measure(evaluate(plan))];
  if (y0 === null) return null;
  if (Math.abs(y0) < CLOSE) return plan;
  let [x1, y1] = [first, miss(first)];
  for (let i = 0; i < 20; i++) {
    if (y1 === null || y0 === null) return null;
    if (Math.abs(y1) < CLOSE) return move(x1);
    const next = x1 - (y1 * (x1 - x0)) / (y1 - y0);
    if (!Number.isFinite(next) || Math.abs(next) > 40) return null;
    [x0, y0] = [x1, y1];
    [x1, y1] = [next, miss(next)];
  }
  return null;
}

const answer = (id: 'centring-crest' | 'centring-mesiodistal-crest') => (at: Evaluation) =>
  readingOf(at.readings, id).value;

/** One rung deeper (+1) or higher (−1): the next level of a ladder that stands as the pose does now. */
function byRung(plan: Plan, way: 1 | -1): Plan | null {
  const rung = rungOf(plan.implant);
  if (rung === null) return null;
  const moved = advance(plan, way * rung);
  return Math.abs(shoulderLevel(plan.pose) - shoulderLevel(moved.pose) - way * rung) < 1e-9 ? moved : null;
}

/**
 * A plan brought to a mark: the middle of the bone by a shift (between both walls at the crest, or between both roots), an axis by a tilt about
 * the pivot (the ridge's, the planned crown's), the incisal line's aim for the fixing by a tilt, or one part-turn of the neck deeper or
 * higher. Null where there is no such place.
 */
export function snapTo(plan: Plan, snap: Snap, pivot: Pivot): Plan | null {
  const { tilt } = plan.pose;
  const { ridge, crown } = plan.site;
  switch (snap) {
    case 'bone-faciopalatal':
      return brought(plan, (f) => shift(plan, 0, f), answer('centring-crest'), 0.05);
    case 'bone-mesiodistal':
      return brought(plan, (m) => shift(plan, m, 0), answer('centring-mesiodistal-crest'), 0.05);
    case 'ridge-axis':
      return tiltTo(plan, { ...tilt, faciopalatal: ridge.inclination }, pivot);
    case 'crown-axis':
      return tiltTo(plan, plannedTilt(crown.tilt, plan.crown), pivot);
    case 'incisal-line': {
      const aim = plan.fixing === 'cemented' ? 0 : SCREW_AIM;
      const tilted = (by: number) => tiltTo(plan, { ...tilt, faciopalatal: tilt.faciopalatal + by }, pivot);
      return brought(plan, tilted, ({ line }) => line.offset - aim, 0.5);
    }
    case 'deeper-rung':
      return byRung(plan, 1);
    case 'higher-rung':
      return byRung(plan, -1);
  }
}
