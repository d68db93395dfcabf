import { SITE_FACT } from '../measure/margin.ts';
import type { Reading, ReadingId, Status } from '../measure/reading.ts';
import { advance, type Pivot, shift, tiltTo } from './edits.ts';
import { type Evaluation, evaluate, readingOf } from './evaluate.ts';
import type { Plan } from './plan.ts';

/** One edit of the pose, as a hand would make it; amounts positive, in mm or degrees, the direction is the way the implant or its coronal end goes. */
export type PoseEdit =
  | {
      readonly kind: 'shift';
      readonly toward: 'facial' | 'palatal' | 'mesial' | 'distal';
      readonly amount: number;
    }
  | {
      readonly kind: 'tilt';
      readonly toward: 'facial' | 'palatal' | 'mesial' | 'distal';
      readonly pivot: Pivot;
      readonly amount: number;
    }
  | { readonly kind: 'advance'; readonly toward: 'apical' | 'coronal'; readonly amount: number };

/** An edit that mends the worst finding, with the promise that a test can hold it to. */
export interface Advice {
  readonly edit: PoseEdit;
  readonly mends: ReadingId;
  readonly before: number;
  readonly after: number;
  /** Status of the mended reading after the edit. */
  readonly status: Status;
}

export interface AdviceResult {
  /** The finding that is to be mended; null where nothing that a pose can change is near or beyond. */
  readonly worst: ReadingId | null;
  /** At most two, the smaller first; empty: nothing in reach mends it without breaking something else. */
  readonly advice: readonly Advice[];
}

/** Amounts are whole steps of these, so that the words say exactly what the test applies. */
const STEP = { shift: 0.1, tilt: 0.5, advance: 0.1 } as const;
const MOST = { shift: 1.5, tilt: 12, advance: 2 } as const;
/** What a degree weighs against a millimetre when the smaller edit is chosen: about its movement at half the implant's length. */
const DEGREE = 0.1;

const RANK: Readonly<Record<string, number>> = { within: 0, near: 1, beyond: 2 };
const rank = (r: Reading): number => (r.status ? (RANK[r.status] ?? 0) : 0);

/** Never a wall traded for a root, the floor or the canal: these may not become worse by a whole status. */
export const GUARDED = /^(root-|apex-to-floor$|canal$)/;

export function applyEdit(plan: Plan, edit: PoseEdit): Plan {
  const sign = edit.toward === 'facial' || edit.toward === 'mesial' || edit.toward === 'apical' ? 1 : -1;
  const by = sign * edit.amount;
  if (edit.kind === 'advance') return advance(plan, by);
  const across = edit.toward === 'facial' || edit.toward === 'palatal';
  if (edit.kind === 'shift') return across ? shift(plan, 0, by) : shift(plan, by, 0);
  const { faciopalatal, mesiodistal } = plan.pose.tilt;
  const tilt = across
    ? { faciopalatal: faciopalatal + by, mesiodistal }
    : { faciopalatal, mesiodistal: mesiodistal + by };
  return tiltTo(plan, tilt, edit.pivot);
}

function families(): ((steps: number) => PoseEdit)[] {
  const amount = (kind: keyof typeof STEP, steps: number) => Math.round(steps * STEP[kind] * 10) / 10;
  const out: ((steps: number) => PoseEdit)[] = [];
  for (const toward of ['facial', 'palatal', 'mesial', 'distal'] as const) {
    out.push((n) => ({ kind: 'shift', toward, amount: amount('shift', n) }));
    for (const pivot of ['entry', 'apex'] as const) {
      out.push((n) => ({ kind: 'tilt', toward, pivot, amount: amount('tilt', n) }));
    }
  }
  for (const toward of ['apical', 'coronal'] as const) {
    out.push((n) => ({ kind: 'advance', toward, amount: amount('advance', n) }));
  }
  return out;
}

const FAMILIES = families();

/** How much further beyond its limit an already broken reading may go, mm, degrees or mm²: nothing that a hand would see. */
const NO_WORSE = 0.05;

/** A reading may not be broken that was not, one that is may not get worse, and what is guarded may not lose a status. */
function breaks(before: Evaluation, after: Evaluation): boolean {
  return after.readings.some((r, i) => {
    const old = before.readings[i];
    if (rank(r) > rank(old)) return r.status === 'beyond' || GUARDED.test(r.id);
    return r.status === 'beyond' && shortfall(r) > shortfall(old) + NO_WORSE;
  });
}

/**
 * What would mend the worst finding (rule of the house: advice is computed, and a test applies it). Every family of single edits is asked for
 * its least amount that brings the reading within, or else out of beyond, and breaks nothing. A generator, so that a page can spread the evaluations (about 70)
 * over idle time; it yields between them.
 */
export function* searchAdvice(plan: Plan, start: Evaluation = evaluate(plan)): Generator<void, AdviceResult> {
  const worst = start.findings.find(({ reading }) => !SITE_FACT.test(reading));
  if (!worst) return { worst: null, advice: [] };
  const id = worst.reading;
  const before = readingOf(start.readings, id);
  const found: Advice[] = [];
  for (const family of FAMILIES) {
    const best = yield* follow(plan, start, before, family);
    if (best) found.push(best);
  }
  const reached = found.filter((a) => a.status === 'within');
  const usable = reached.length > 0 ? reached : found;
  usable.sort((a, b) => weight(a.edit) - weight(b.edit));
  const first = usable[0];
  const second = usable.find((a) => a.edit.kind !== first?.edit.kind);
  return { worst: id, advice: first ? (second ? [first, second] : [first]) : [] };
}

const weight = (edit: PoseEdit): number => edit.amount * (edit.kind === 'tilt' ? DEGREE : 1);

type Target = 'within' | 'near';

/** How much a reading lacks of a target; ≤ 0: it is reached. */
function lack(r: Reading, target: Target): number {
  // A reading that no longer counts is not mended, only out of sight.
  if (r.value === null || r.status === null || !r.limit) return Infinity;
  if (rank(r) <= RANK[target]) return 0;
  const { low, high } = r.limit.bands;
  const bound = target === 'within' ? 'near' : 'beyond';
  const most = Math.max(low ? low[bound] - r.value : -Infinity, high ? r.value - high[bound] : -Infinity);
  return Math.max(most, Number.MIN_VALUE);
}

/** Steps by which a guess may be off before a family is given up. */
const WALK = 6;

/**
 * The least number of steps of a family that reaches the target: guessed from the first step as if the reading ran straight, then walked on or
 * back. Undefined where it is out of reach.
 */
function* leastSteps(
  before: Reading,
  target: Target,
  most: number,
  at: (steps: number) => Generator<void, Reading>,
): Generator<void, number | undefined> {
  const need = lack(before, target);
  let first = 1;
  let left = lack(yield* at(1), target);
  if (left <= 0) return 1;
  // A first step may stand still where a search's answer jumps; three may not.
  if (left >= need) {
    first = Math.min(3, most);
    left = lack(yield* at(first), target);
  }
  if (left >= need) return undefined;
  let n = Math.min(most, Math.max(first, Math.ceil((need * first) / (need - left))));
  for (let i = 0; i < WALK; i++) {
    if (lack(yield* at(n), target) > 0) {
      if (n === most) return undefined;
      n += 1;
    } else if (n > 1 && lack(yield* at(n - 1), target) <= 0) n -= 1;
    else return n;
  }
  return undefined;
}

/** The least edit of a family that brings the reading within, else to near, and breaks nothing. */
function* follow(
  plan: Plan,
  start: Evaluation,
  before: Reading,
  family: (steps: number) => PoseEdit,
): Generator<void, Advice | null> {
  const { kind } = family(1);
  const most = Math.round(MOST[kind] / STEP[kind]);
  const made = new Map<number, Evaluation>();
  function* evaluated(n: number): Generator<void, Evaluation> {
    const known = made.get(n);
    if (known) return known;
    const after = evaluate(applyEdit(plan, family(n)));
    made.set(n, after);
    yield;
    return after;
  }
  function* at(n: number): Generator<void, Reading> {
    return readingOf((yield* evaluated(n)).readings, before.id);
  }
  for (const target of ['within', 'near'] as const) {
    if (rank(before) <= RANK[target]) continue;
    const n = yield* leastSteps(before, target, most, at);
    if (n === undefined) continue;
    const after = yield* evaluated(n);
    if (breaks(start, after)) continue;
    const { value, status } = readingOf(after.readings, before.id);
    if (value === null || status === null) continue;
    return { edit: family(n), mends: before.id, before: before.value ?? 0, after: value, status };
  }
  return null;
}

function shortfall(r: Reading): number {
  if (r.value === null || !r.limit) return Infinity;
  const { low, high } = r.limit.bands;
  return Math.max(low ? low.near - r.value : -Infinity, high ? r.value - high.near : -Infinity);
}

/** {@link searchAdvice} in one go. */
export function advise(plan: Plan): AdviceResult {
  const search = searchAdvice(plan);
  for (;;) {
    const next = search.next();
    if (next.done) return next.value;
  }
}
