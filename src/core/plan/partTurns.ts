import { type Bands, type Judgement, judge, shortfall } from '../measure/limit.ts';
import { partTurn } from '../seating/turns.ts';
import { advance } from './edits.ts';
import { type Evaluation, readingOf } from './evaluate.ts';
import type { Plan } from './plan.ts';

/** The two depths that the crown's side asks for. */
export type DepthReading = 'shoulder-to-gum-margin' | 'shoulder-to-cej';

/** What part-turns of the neck would make of a depth (rule C11). Codes and numbers; a test turns and finds the promise. */
export interface DepthTurns {
  readonly reading: DepthReading;
  /** One part-turn in, degrees, and by how much it changes the reading, mm with its sign. */
  readonly degrees: number;
  readonly change: number;
  /** Null: the plan's fixing does not judge this depth. */
  readonly promise: DepthPromise | null;
}

export interface DepthPromise {
  /** The fewest whole part-turns that bring the reading within its limit, or as near to it as they can; + deeper, 0: it is there. */
  readonly turns: number;
  /** The reading after them, mm, and how it is judged. */
  readonly after: number;
  readonly status: Judgement;
  readonly bands: Bands;
}

/** A plan after so many part-turns of its neck, + deeper: along the axis by its ladder's rungs, facing as before. */
export function byPartTurns(plan: Plan, turns: number): Plan {
  const part = partTurn(plan.implant);
  return part ? advance(plan, turns * part.depth) : plan;
}

/** Further than this nobody turns, in part-turns. */
const MOST = 40;

function promiseOf(value: number, change: number, bands: Bands): DepthPromise {
  const lack = (turns: number): number => {
    const then = value + turns * change;
    return judge(then, bands) === 'within' ? 0 : shortfall(then, bands);
  };
  let turns = 0;
  const way = lack(1) < lack(0) ? 1 : -1;
  while (Math.abs(turns) < MOST && lack(turns + way) < lack(turns)) turns += way;
  const after = value + turns * change;
  return { turns, after, status: judge(after, bands), bands };
}

/** Both depths. Empty for a round neck, which may stop anywhere. */
export function depthTurns({ plan, readings, placement }: Evaluation): DepthTurns[] {
  const part = partTurn(plan.implant);
  if (!part) return [];
  return (['shoulder-to-gum-margin', 'shoulder-to-cej'] as const).map((reading) => {
    const { value, limit } = readingOf(readings, reading);
    // Both run along `z`; a deeper shoulder lies further below the margin and less coronal of the CEJ.
    const change = part.depth * placement.a[2] * (reading === 'shoulder-to-cej' ? -1 : 1);
    const promise = value === null || !limit ? null : promiseOf(value, change, limit.bands);
    return { reading, degrees: part.degrees, change, promise };
  });
}
