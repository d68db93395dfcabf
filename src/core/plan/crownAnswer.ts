import type { Fixing } from '../measure/limit.ts';
import type { Reading, ReadingId } from '../measure/reading.ts';
import type { ExitMeaning } from '../restoration/exitMeaning.ts';
import { type Evaluation, evaluate, readingOf } from './evaluate.ts';
import type { Plan } from './plan.ts';

export const FIXINGS = ['cemented', 'screw-gum', 'screw-bone'] as const satisfies readonly Fixing[];

/** The level that a fixing judges the depth by. */
export const DEPTH_OF: Readonly<Record<Fixing, ReadingId>> = {
  cemented: 'shoulder-to-gum-margin',
  'screw-bone': 'shoulder-to-gum-margin',
  'screw-gum': 'shoulder-to-cej',
};

/** What a pose means for one way of fixing the crown. */
export interface FixingAnswer {
  readonly fixing: Fixing;
  /** The worst of its parts. */
  readonly mark: 'within' | 'near' | 'beyond';
  /** Where the axis leads: for a screw its channel, for cement the incisal line; an abutment that is one piece with the implant takes no screw. */
  readonly axis:
    | { readonly kind: 'one-piece'; readonly status: 'beyond' }
    | { readonly kind: 'screw'; readonly status: Mark; readonly exit: ExitMeaning }
    | { readonly kind: 'cement'; readonly status: Mark; readonly offset: Reading };
  readonly depth: { readonly status: Mark; readonly reading: Reading; readonly side: 'low' | 'high' | null };
  /** What the crown's wall lacks even over the least post, mm; null: nothing, or the implant has no abutment. */
  readonly lacking: number | null;
}

type Mark = 'within' | 'near' | 'beyond';

const RANK: Readonly<Record<Mark, number>> = { within: 0, near: 1, beyond: 2 };
/** A channel that runs straight suits a screw; one that bends will do; where none leads palatally a screw does not. */
const AXIS_MARK: Readonly<Record<ExitMeaning['code'], Mark>> = {
  straight: 'within',
  bent: 'near',
  beyond: 'beyond',
  'no-way': 'beyond',
  misses: 'beyond',
};
const markOf = ({ status }: Reading): Mark => (status === 'near' || status === 'beyond' ? status : 'within');
const worse = (a: Mark, b: Mark): Mark => (RANK[a] >= RANK[b] ? a : b);

function axisOf({ readings, restoration, plan }: Evaluation, fixing: Fixing): FixingAnswer['axis'] {
  if (fixing === 'cemented') {
    const offset = readingOf(readings, 'incisal-line-offset');
    return { kind: 'cement', status: markOf(offset), offset };
  }
  if (plan.implant.abutment) return { kind: 'one-piece', status: 'beyond' };
  const { exit } = restoration;
  const status = AXIS_MARK[exit.code];
  return { kind: 'screw', status, exit };
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
  const { aside } = readingOf(evaluation.readings, 'abutment-reduction-depth');
  const lacking = aside === null ? ('within' as const) : ('near' as const);
  return { fixing, mark: worse(worse(axis.status, depth.status), lacking), axis, depth, lacking: aside };
}

/** One pose, three answers. Costs an evaluation for each way that the plan has not chosen. */
export const fixingAnswers = (evaluation: Evaluation): FixingAnswer[] =>
  FIXINGS.map((fixing) => {
    const { plan } = evaluation;
    return fixingAnswer(plan.fixing === fixing ? evaluation : evaluate({ ...plan, fixing }));
  });

/** The plan with its crown fixed another way. */
export const withFixing = (plan: Plan, fixing: Fixing): Plan => ({ ...plan, fixing });
