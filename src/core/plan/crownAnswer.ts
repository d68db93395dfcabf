import type { Fixing } from '../measure/limit.ts';
import type { Reading, ReadingId } from '../measure/reading.ts';
import { rungOf } from '../seating/ladder.ts';
import { type Evaluation, evaluate, readingOf } from './evaluate.ts';
import type { Plan } from './plan.ts';

export const FIXINGS = ['cemented', 'screw-gum', 'screw-bone'] as const satisfies readonly Fixing[];

/** The level that a fixing judges the depth by. */
export const DEPTH_OF: Readonly<Record<Fixing, ReadingId>> = {
  cemented: 'shoulder-to-gum-margin',
  'screw-bone': 'shoulder-to-gum-margin',
  'screw-gum': 'shoulder-to-cej',
};

/** Whether a channel leads a screwdriver in from the palatal side: straight; bent; bent by more than is published; no bend does; or the axis does not come out of the crown. */
export type Way = 'straight' | 'bent' | 'too-far' | 'none' | 'misses';

/** What a pose means for one way of fixing the crown. */
export interface FixingAnswer {
  readonly fixing: Fixing;
  /** The worse of its two parts. */
  readonly mark: 'within' | 'near' | 'beyond';
  /** Where the axis leads: for a screw its channel, for cement the incisal line. */
  readonly axis:
    | {
        readonly kind: 'screw';
        readonly way: Way;
        readonly status: Mark;
        readonly place: Reading;
        readonly toEdge: Reading;
        readonly turn: Reading;
      }
    | { readonly kind: 'cement'; readonly status: Mark; readonly offset: Reading };
  readonly depth: { readonly status: Mark; readonly reading: Reading; readonly side: 'low' | 'high' | null };
}

type Mark = 'within' | 'near' | 'beyond';

const RANK: Readonly<Record<Mark, number>> = { within: 0, near: 1, beyond: 2 };
const markOf = ({ status }: Reading): Mark => (status === 'near' || status === 'beyond' ? status : 'within');
const worse = (a: Mark, b: Mark): Mark => (RANK[a] >= RANK[b] ? a : b);

function wayOf(turn: Reading): Way {
  if (turn.reason === 'misses-crown') return 'misses';
  if (turn.reason === 'no-palatal-way' || turn.value === null) return 'none';
  if (turn.value === 0) return 'straight';
  return turn.status === 'beyond' ? 'too-far' : 'bent';
}

function axisOf({ readings }: Evaluation, fixing: Fixing): FixingAnswer['axis'] {
  if (fixing === 'cemented') {
    const offset = readingOf(readings, 'incisal-line-offset');
    return { kind: 'cement', status: markOf(offset), offset };
  }
  const turn = readingOf(readings, 'access-exit-correction');
  const way = wayOf(turn);
  return {
    kind: 'screw',
    way,
    status: way === 'none' || way === 'misses' ? 'beyond' : markOf(turn),
    place: readingOf(readings, 'access-exit'),
    toEdge: readingOf(readings, 'access-exit-to-edge'),
    turn,
  };
}

/** Which side of its band a reading misses; null: neither. */
function sideOf({ value, limit }: Reading): 'low' | 'high' | null {
  if (value === null || !limit) return null;
  const { low, high } = limit.bands;
  if (low && value < low.near - 1e-9) return 'low';
  return high && value > high.near + 1e-9 ? 'high' : null;
}

/** What the pose means for the way of fixing that the evaluation has. */
export function fixingAnswer(evaluation: Evaluation): FixingAnswer {
  const { fixing } = evaluation.plan;
  const axis = axisOf(evaluation, fixing);
  const reading = readingOf(evaluation.readings, DEPTH_OF[fixing]);
  const depth = { status: markOf(reading), reading, side: sideOf(reading) };
  return { fixing, mark: worse(axis.status, depth.status), axis, depth };
}

/** One pose, three answers. Costs an evaluation for each way that the plan has not chosen. */
export const fixingAnswers = (evaluation: Evaluation): FixingAnswer[] =>
  FIXINGS.map((fixing) => {
    const { plan } = evaluation;
    return fixingAnswer(plan.fixing === fixing ? evaluation : evaluate({ ...plan, fixing }));
  });

/** The part-turns of the neck that bring the depth within its band. */
export interface PartTurns {
  /** What one changes along the axis, mm. */
  readonly each: number;
  /** How many: + deeper, − higher; 0 where the depth is within; null where no whole number of them meets the band. */
  readonly count: number | null;
}

/** Most part-turns that are looked at each way. */
const MOST = 24;

/** How many part-turns mend the depth; null: a round neck has none. */
export function partTurns({ plan, readings, placement }: Evaluation): PartTurns | null {
  const each = rungOf(plan.implant);
  if (each === null) return null;
  const { value, limit } = readingOf(readings, DEPTH_OF[plan.fixing]);
  if (value === null || !limit) return { each, count: null };
  // A rung deeper lowers the shoulder along the occlusal direction by this much; one reading counts down from the margin, the other up from the CEJ.
  const gains = each * placement.a[2] * (plan.fixing === 'screw-gum' ? -1 : 1);
  const { low, high } = limit.bands;
  const within = (v: number): boolean => (!low || v >= low.near - 1e-9) && (!high || v <= high.near + 1e-9);
  for (let n = 0; n <= MOST; n++) {
    for (const count of n === 0 ? [0] : [n, -n]) {
      if (within(value + count * gains)) return { each, count };
    }
  }
  return { each, count: null };
}

/** The plan with its crown fixed another way. */
export const withFixing = (plan: Plan, fixing: Fixing): Plan => ({ ...plan, fixing });
