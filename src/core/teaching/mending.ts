import type { ToolRef } from '../drilling/kit.ts';
import {
  type Answer,
  type MendableUntil,
  mendableUntil,
  outlookOf,
  type PlannedHole,
} from '../drilling/outlook.ts';
import { type PassBody, passBody } from '../drilling/passBody.ts';
import type { Pass } from '../drilling/rehearsal.ts';
import { axisOf } from '../geometry/pose.ts';
import type { PoseEdit } from '../plan/advice.ts';
import { drillingOf } from '../plan/drilling.ts';
import { solidsOf } from '../plan/evaluate.ts';
import { kitOf, passesShown } from '../plan/inHand.ts';
import type { Plan } from '../plan/plan.ts';
import { holeAlone, unbegun } from './cost.ts';
import { passesAsPlanned } from './move.ts';
import { goneWrong, type TrajectoryId, trajectoryOf } from './trajectories.ts';

/** One pass drilled wrongly, and how the hole would end if from there on it were drilled as planned. */
export interface MendStep {
  readonly tool: ToolRef;
  /** mm. */
  readonly diameter: number;
  readonly depth: number;
  readonly answer: Answer;
  /** Void that would stay beside the implant, mm. */
  readonly void: number;
}

/** Whether and until when a trajectory could have been mended while drilling (rule L6). */
export interface Mending {
  /** In the kit's order; empty: the hole is the plan's own (a neck turned, a shape changed only above it), or nothing is drilled. */
  readonly steps: readonly MendStep[];
  /** Place of the last step after which all would be taken up; −1: not even after the first. */
  readonly round: number;
  /** The same with what the implant itself covers. */
  readonly covered: number;
  /** How deep the first step that cannot be mended may go and still could; null: every step can, or there is none. */
  readonly until: (MendableUntil & { readonly step: number }) | null;
}

/** The bodies of the passes that lead to a plan gone wrong, on their own axis. */
function bodiesOf(wrong: Plan, trajectory: TrajectoryId, start: Plan): { pass: Pass; body: PassBody }[] {
  const passes = holeAlone(trajectoryOf(trajectory))
    ? pressedEach(start, passesShown(wrong))
    : passesAsPlanned(wrong);
  const { ridge } = solidsOf(wrong.site);
  return passes.flatMap((pass) => {
    const body = passBody(ridge, kitOf(wrong), pass);
    return body ? [{ pass, body }] : [];
  });
}

/** Every drill of the plan pressed as the last one was. */
function pressedEach(start: Plan, passes: readonly Pass[]): Pass[] {
  const press = passes.find((pass) => pass.press !== null)?.press ?? null;
  return passesAsPlanned(start).map((pass) => (pass.tool.kind === 'drill' ? { ...pass, press } : pass));
}

function stepOf(pass: Pass, body: PassBody, hole: PlannedHole): MendStep {
  const { answer, void: left } = outlookOf([body], hole);
  return { tool: pass.tool, diameter: 2 * body.radius, depth: pass.depth, answer, void: left };
}

const NONE: Mending = { steps: [], round: -1, covered: -1, until: null };

/** The last place up to which every step answers so. */
const upTo = (steps: readonly MendStep[], ok: (answer: Answer) => boolean): number => {
  const first = steps.findIndex(({ answer }) => !ok(answer));
  return first < 0 ? steps.length - 1 : first - 1;
};

/** Cost: 0.1 to 1 s, most of it the depth of the step that can no longer be mended: a worker's work, or an idle page's. */
export function mendingOf(plan: Plan, id: TrajectoryId, amount: number): Mending {
  const start = unbegun(plan);
  const hole = drillingOf(start)?.hole;
  if (!hole || amount <= 0) return NONE;
  const wrong = goneWrong(start, id, amount);
  if (sameHole(start, wrong)) return NONE;
  const made = bodiesOf(wrong, id, start);
  const steps = made.map(({ pass, body }) => stepOf(pass, body, hole));
  const covered = upTo(steps, (answer) => answer !== 'open');
  const first = made[covered + 1];
  return {
    steps,
    round: upTo(steps, (answer) => answer === 'round'),
    covered,
    until: first?.body.press === null ? { step: covered + 1, ...mendableUntil(first.body, hole) } : null,
  };
}

/** Two plans whose passes are the same. */
const sameHole = (plan: Plan, wrong: Plan): boolean =>
  passesShown(wrong).length === 0 &&
  JSON.stringify(passesAsPlanned(plan)) === JSON.stringify(passesAsPlanned(wrong));

/** Less than this is no edit, mm and degrees. */
const NOTHING = 1e-9;

/** The edits that carry a pose gone wrong back to the plan's, one after the other: the lean about the platform, the depth along the axis, the rest as a shift. */
export function wayBack(plan: Plan, wrong: Plan): PoseEdit[] {
  const [to, from] = [plan.pose, wrong.pose];
  const c = axisOf(to.tilt)[2];
  const deeper = (from.platform.c - to.platform.c) / c;
  const a = axisOf(to.tilt);
  const m = to.platform.m - (from.platform.m - deeper * a[0]);
  const f = to.platform.f - (from.platform.f - deeper * a[1]);
  const edits: PoseEdit[] = [
    tiltEdit(to.tilt.faciopalatal - from.tilt.faciopalatal, 'facial', 'palatal'),
    tiltEdit(to.tilt.mesiodistal - from.tilt.mesiodistal, 'mesial', 'distal'),
    { kind: 'advance', toward: deeper > 0 ? 'apical' : 'coronal', amount: Math.abs(deeper) },
    { kind: 'shift', toward: f > 0 ? 'facial' : 'palatal', amount: Math.abs(f) },
    { kind: 'shift', toward: m > 0 ? 'mesial' : 'distal', amount: Math.abs(m) },
  ];
  return edits.filter(({ amount }) => amount > NOTHING);
}

const tiltEdit = (by: number, plus: 'facial' | 'mesial', minus: 'palatal' | 'distal'): PoseEdit => ({
  kind: 'tilt',
  toward: by > 0 ? plus : minus,
  pivot: 'platform',
  amount: Math.abs(by),
});
