import { totalLength } from '../core/implant/shape.ts';
import { shortfall } from '../core/measure/limit.ts';
import type { Reading, ReadingId } from '../core/measure/reading.ts';
import { toolOf } from '../core/plan/inHand.ts';
import type { Plan } from '../core/plan/plan.ts';
import { deviation } from '../core/spread/deviation.ts';
import type { Break, Breaks } from '../core/teaching/breaks.ts';
import type { Change, Cost } from '../core/teaching/cost.ts';
import type { Mending } from '../core/teaching/mending.ts';
import { wayBack } from '../core/teaching/mending.ts';
import type { MouthSign } from '../core/teaching/mouth.ts';
import type { Size } from '../core/teaching/move.ts';
import type { BrokenRule } from '../core/teaching/rules.ts';
import { sizesAt, type TrajectoryId } from '../core/teaching/trajectories.ts';
import { formatQuantity, type Unit } from './format.ts';
import { presentEdit } from './presentAdvice.ts';
import { presentReading, sourceText } from './presentReading.ts';
import { say } from './sayTeach.ts';
import { sayDepth, sayTool } from './sayTool.ts';

const mm = (value: number): string => formatQuantity({ value, unit: 'mm' });

/** Name of a bad trajectory, as its button has it. */
export const sayTrajectory = (id: TrajectoryId): string => say(`trajectory.${id}`);

/** What went wrong, in a sentence: "Entered 0.8 mm too far facially, and 7.0° too upright." */
export function sayGoneWrong(
  plan: Plan,
  { id, amount, plan: wrong, notHere }: Pick<Cost, 'id' | 'amount' | 'plan' | 'notHere'>,
): string {
  if (notHere) return say(`gone.notHere.${notHere}`);
  if (amount <= 0) return say('gone.plan');
  const key = `gone.${id}` as 'gone.facial-and-upright';
  return say(key, slotsOf(plan, wrong, sizesAt(plan, id, amount)) as { shift: string; tilt: string });
}

/** The parts of a size by their names; several shifts or tilts are told as one, the true angle between the axes. */
function slotsOf(plan: Plan, wrong: Plan, sizes: readonly Size[]): Record<string, string> {
  const { angle } = deviation(plan.pose, wrong.pose, totalLength(plan.implant), 0);
  const out: Record<string, string> = { shift: mm(0), tilt: formatQuantity({ value: angle, unit: 'deg' }) };
  for (const kind of new Set(sizes.map((size) => size.kind))) {
    const same = sizes.filter((size) => size.kind === kind);
    const one = same.length === 1 ? same[0].value : Math.hypot(...same.map(({ value }) => value));
    const value = kind === 'tilt' && same.length > 1 ? angle : one;
    out[kind] = formatQuantity({ value, unit: same[0].unit });
  }
  return out;
}

const CROSSED: readonly ReadingId[] = [
  'root-mesial',
  'root-distal',
  'apex-to-floor',
  'canal',
  'facial-wall-thinnest',
  'palatal-wall-thinnest',
];

/** How it ends, in a sentence: what is entered or laid bare, else the worst reading, else that it costs nothing. */
export function sayEnds(cost: Cost): string {
  if (cost.notHere || cost.nothing) return say('gone.ends.nothing');
  const worse = (id: ReadingId) => cost.worse.find(({ after }) => after.id === id)?.after;
  const entered = CROSSED.map(worse).find((r) => r?.value !== undefined && r.value !== null && r.value < 0);
  if (entered) return enteredText(entered, cost.plan);
  for (const kind of ['dehiscence', 'fenestration'] as const)
    if (worse(`exposure-${kind}`)) return say(`gone.ends.${kind}`);
  const [first] = cost.worse;
  const [rule] = cost.rules;
  if (rule && first?.after.status !== 'beyond') {
    if (rule.code === 'neck-off-facing') return say('gone.ends.neck-off-facing');
    return say('gone.ends.rule', { rule: sayRule(rule) });
  }
  return first ? changeText(first) : say('gone.ends.nothing');
}

function enteredText({ id, level }: Reading, { site }: Plan): string {
  if (id === 'root-mesial' || id === 'root-distal') return say(`gone.ends.${id}`);
  if (id === 'apex-to-floor') return say(`gone.ends.${site.ridge.floor}`);
  if (id === 'canal') return say('gone.ends.canal');
  const side = id.startsWith('facial') ? 'facial' : 'palatal';
  return say(`gone.ends.${side}`, { where: where(level ?? 0) });
}

const changeText = ({ before, after }: Change): string =>
  say('gone.ends.reading', {
    reading: presentReading(after).label,
    before: presentReading(before).quantity,
    after: presentReading(after).quantity,
  });

/** One reading that a trajectory has changed, as a row. */
export interface PresentedChange {
  readonly id: ReadingId;
  readonly mark: 'within' | 'near' | 'beyond' | 'none';
  readonly label: string;
  /** The number in the plan, and here with its unit; both together. */
  readonly before: string;
  readonly after: string;
  readonly fromTo: string;
  /** What it lacks, and where. */
  readonly note: string;
  /** Whose number the limit is. */
  readonly by: string;
  /** At how much of the trajectory it breaks; '' where that is not known yet. */
  readonly breaks: string;
}

/** Where on the axis: at the crest, or so far below the entry. */
const where = (level: number): string =>
  level < 0.05 ? say('cost.atCrest') : say('cost.below', { level: mm(level) });

function lackText(after: Reading): string {
  const { value, limit, level, judgedAt } = after;
  if (value === null || !limit) return '';
  const wall = after.id.includes('-wall-');
  if (wall && value < 0 && level !== null)
    return say('cost.outside', { by: mm(-value), where: where(level) });
  const unit: Unit = after.unit === 'place' ? 'count' : after.unit;
  const lacking = shortfall(judgedAt?.value ?? value, limit.bands);
  const by = formatQuantity({ value: lacking, unit, limits: [0] });
  const slots = { by, limit: presentReading({ ...after, judgedAt: null }).limit };
  const at = judgedAt?.level ?? level;
  return wall && at !== null
    ? say('cost.missesAt', { ...slots, where: where(at) })
    : say('cost.misses', slots);
}

export function presentChange(
  change: Change,
  kind: 'worse' | 'silent' | 'better',
  at?: Break,
): PresentedChange {
  const before = presentReading(change.before);
  const after = presentReading(change.after);
  const notes = { worse: lackText(change.after), silent: say('cost.silent'), better: say('cost.better') };
  const { source, strength, known } = after;
  return {
    id: change.after.id,
    mark: after.mark,
    label: after.label,
    before: before.number,
    after: after.quantity,
    fromTo: say('cost.from', { before: before.number, after: after.quantity }),
    note: notes[kind],
    by: source === '' ? '' : say('cost.by', { source, strength, known }),
    breaks: at ? breakText(at) : '',
  };
}

const percent = (value: number): string => formatQuantity({ value, unit: 'percent' });

function breakText({ near, beyond }: Break): string {
  if (beyond !== null) return say('breaks.beyond', { percent: percent(beyond) });
  return near === null ? '' : say('breaks.near', { percent: percent(near) });
}

/** Rows of a cost: what is worse, then the reading of the crown that gives no warning. */
export function presentCost(cost: Cost, breaks: Breaks | null): PresentedChange[] {
  const at = (id: ReadingId) => breaks?.readings.find(({ reading }) => reading === id);
  const rows = cost.worse.map((change) => presentChange(change, 'worse', at(change.after.id)));
  return cost.silent ? [...rows, presentChange(cost.silent, 'silent')] : rows;
}

/** Where the whole trajectory breaks, as the lines beside the dial, near only where it comes before beyond; one line where nothing does. */
export function presentBreaks({
  near,
  beyond,
  outside,
}: Breaks): { mark: 'near' | 'beyond' | 'none'; text: string }[] {
  const lines = [
    near === null || (beyond !== null && beyond <= near)
      ? null
      : { mark: 'near' as const, text: say('breaks.near', { percent: percent(near) }) },
    beyond === null
      ? null
      : { mark: 'beyond' as const, text: say('breaks.beyond', { percent: percent(beyond) }) },
    outside === null
      ? null
      : { mark: 'none' as const, text: say('breaks.outside', { percent: percent(outside) }) },
  ].filter((line) => line !== null);
  return lines.length > 0 ? lines : [{ mark: 'none', text: say('breaks.never') }];
}

/** A rule of drilling or seating that is broken. */
export function sayRule({ code, value, limit, unit }: BrokenRule): string {
  const text = (n: number) =>
    unit === 'none' ? '' : formatQuantity({ value: n, unit, limits: unit === 'rpm' ? [] : [limit] });
  const key = `rule.${code}` as 'rule.oval';
  return say(key, {
    value: text(value),
    limit: formatQuantity({ value: limit, unit: unit === 'none' ? 'count' : unit }),
  });
}

/** What would be seen in the mouth, with whose observation it is. */
export function presentSign(sign: MouthSign, { site }: Plan): { text: string; by: string } {
  const by = say('sign.by', { source: sourceText(sign.source), known: say(`known.${sign.known}`) });
  const unit: Unit = sign.unit === 'place' ? 'count' : sign.unit;
  const value = formatQuantity({ value: Math.abs(sign.value), unit, limits: [0] });
  if (sign.code === 'floor-entered') return { text: say(`sign.floor-entered.${site.ridge.floor}`), by };
  return { text: say(`sign.${sign.code}` as 'sign.bump', { value }), by };
}

/** The signs, or that nothing would be seen. */
export const presentSigns = ({ signs, plan }: Cost): { text: string; by: string }[] =>
  signs.length > 0 ? signs.map((sign) => presentSign(sign, plan)) : [{ text: say('sign.none'), by: '' }];

export interface PresentedMending {
  readonly mark: 'within' | 'near' | 'beyond' | 'none';
  readonly text: string;
  readonly steps: readonly { mark: 'within' | 'near' | 'beyond'; step: string; answer: string }[];
}

const MARK = { round: 'within', covered: 'near', open: 'beyond' } as const;

/** Whether and until which drill a trajectory could have been mended. */
export function presentMending(plan: Plan, mending: Mending): PresentedMending {
  const steps = mending.steps.map(({ tool, depth, answer, void: left }) => ({
    mark: MARK[answer],
    step: say('mend.step', { tool: toolText(plan, tool), depth: sayDepth(depth) }),
    answer: answer === 'open' ? say('mend.answer.open', { void: mm(left) }) : say(`mend.answer.${answer}`),
  }));
  return { ...mendingText(mending), steps };
}

const toolText = (plan: Plan, tool: Mending['steps'][number]['tool']): string => {
  const found = toolOf(plan, tool);
  return found ? sayTool(found) : '';
};

function mendingText({ steps, round, covered, until }: Mending): Omit<PresentedMending, 'steps'> {
  const last = steps.length - 1;
  if (last < 0) return { mark: 'none', text: say('mend.none') };
  if (round === last) return { mark: 'within', text: say('mend.always') };
  if (covered === last) return { mark: 'near', text: say('mend.alwaysCovered') };
  const next = steps[covered + 1];
  const left = mm(next.void);
  const deep = until?.covered ?? null;
  if (deep !== null) {
    const slots = { diameter: mm(next.diameter), depth: sayDepth(deep), void: left };
    return { mark: 'near', text: say('mend.untilDepth', slots) };
  }
  if (covered < 0) return { mark: 'beyond', text: say('mend.never', { void: left }) };
  const { diameter, depth } = steps[covered];
  const slots = { diameter: mm(diameter), depth: sayDepth(depth), void: left };
  return { mark: 'near', text: say('mend.until', slots) };
}

/** The edits that lead back to the plan, one after the other; of a hole there are none. */
export function sayWayBack(plan: Plan, wrong: Plan): string {
  const edits = wayBack(plan, wrong).filter(({ amount }) => amount >= 0.05);
  if (edits.length > 0) return say('mend.back', { edits: edits.map(presentEdit).join(', ') });
  if (wrong.implant !== plan.implant) return say('mend.backShape');
  return say(wrong.pose.roll === plan.pose.roll ? 'mend.backHole' : 'mend.backTurn');
}
