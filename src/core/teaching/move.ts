import { type DrillPose, EMPTY_REHEARSAL, type Pass } from '../drilling/rehearsal.ts';
import { axisOf, type Pose } from '../geometry/pose.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
import type { ImplantShape } from '../implant/shape.ts';
import { facingOf } from '../measure/facing.ts';
import { Placement } from '../measure/placement.ts';
import { applyEdit, type PoseEdit } from '../plan/advice.ts';
import { drillingOf } from '../plan/drilling.ts';
import { heldPose, shift, tiltTo, turn, useShape as withShape } from '../plan/edits.ts';
import { readingOf, solidsOf } from '../plan/evaluate.ts';
import { drillPoseOf, pointAt, rehearsalOf, toolOf } from '../plan/inHand.ts';
import type { Plan } from '../plan/plan.ts';
import { moved } from '../plan/rehearse.ts';
import { plannedTilt } from '../restoration/crownChoices.ts';
import { evaluated } from './evaluated.ts';

/** What a hand does wrong, as data; `most` (mm or degrees) is its size at the full amount. Rules L1, L2. */
export type Move =
  | { readonly kind: 'edit'; readonly edit: PoseEdit }
  /** Turns the axis about the entry until it leans as the ridge does faciopalatally, or as the planned crown does. */
  | { readonly kind: 'lean-as'; readonly what: 'ridge' | 'crown' }
  /** Shifts straight at the nasopalatine canal until the envelope stands `past` in it, at most by `most`. */
  | { readonly kind: 'at-canal'; readonly past: number; readonly most: number }
  /** Makes the implant longer, its shoulder kept, until it stands `past` beyond the floor, or as long as shapes may be. */
  | { readonly kind: 'longer-past-floor'; readonly past: number }
  | { readonly kind: 'wider'; readonly most: number }
  /** Turns the neck from its facing to half way between two. */
  | { readonly kind: 'turn-neck' }
  /** Carries the implant onto the axis of the socket's void, its platform's level kept. */
  | { readonly kind: 'centre-in-socket' }
  /** The drill leans off the palatal wall: its bottom drifts facially by `most` per 10 mm of depth, its mouth stands. The implant follows the hole. */
  | { readonly kind: 'drift'; readonly most: number }
  /** The last drill is pressed sideways while it runs, toward an azimuth from `e_f` to `e_m`; the implant stays as planned. */
  | { readonly kind: 'press'; readonly toward: number; readonly most: number };

/** Why a move has nothing to move in a plan. */
export type NotHere = 'canal-elsewhere' | 'round-neck' | 'healed-site' | 'nothing-to-drill' | 'already-so';

/** How much a move does at an amount, for the words: which way, and how far in mm or degrees. */
export interface Size {
  readonly kind: 'shift' | 'tilt' | 'advance' | 'length' | 'diameter' | 'turn' | 'drift' | 'press';
  readonly toward: 'facial' | 'palatal' | 'mesial' | 'distal' | 'apical' | 'coronal' | null;
  readonly value: number;
  readonly unit: 'mm' | 'deg';
}

/** Longest implanted length of a plan file, mm. */
const LONGEST = 20;
/** A move smaller than this is none, mm and degrees. */
const NOTHING = 1e-6;

const mix = (from: number, to: number, share: number): number => from + (to - from) * share;

/** A plan after a move at an amount, 0 (the plan) to 1. */
export function movedBy(plan: Plan, move: Move, amount: number): Plan {
  if (amount <= 0 || notHere(plan, move)) return plan;
  switch (move.kind) {
    case 'edit':
      return applyEdit(plan, { ...move.edit, amount: amount * move.edit.amount });
    case 'lean-as': {
      const { tilt } = plan.pose;
      const to = leanTarget(plan, move.what);
      return tiltTo(
        plan,
        {
          faciopalatal: mix(tilt.faciopalatal, to.faciopalatal, amount),
          mesiodistal: mix(tilt.mesiodistal, to.mesiodistal, amount),
        },
        'entry',
      );
    }
    case 'at-canal': {
      const { m, f, far } = towardCanal(plan, move.past, move.most);
      return shift(plan, amount * far * m, amount * far * f);
    }
    case 'longer-past-floor':
      return withShape(plan, {
        ...plan.implant,
        implantedLength: plan.implant.implantedLength + amount * lengthPastFloor(plan, move.past),
      });
    case 'wider':
      return withShape(plan, widened(plan.implant, amount * move.most));
    case 'turn-neck':
      return turn(plan, amount * turnToWorst(plan));
    case 'centre-in-socket':
      return { ...plan, pose: inSocket(plan, amount) };
    case 'drift':
      return drifted(plan, amount * move.most);
    case 'press':
      return pressed(plan, move.toward, amount * move.most);
  }
}

/** Why a move leaves a plan as it is whatever the amount; null: it moves. */
export function notHere(plan: Plan, move: Move): NotHere | null {
  switch (move.kind) {
    case 'lean-as': {
      const to = leanTarget(plan, move.what);
      const { tilt } = plan.pose;
      const by = Math.hypot(to.faciopalatal - tilt.faciopalatal, to.mesiodistal - tilt.mesiodistal);
      return by < NOTHING ? 'already-so' : null;
    }
    case 'at-canal':
      return readingOf(evaluated(plan).readings, 'canal').value === null ? 'canal-elsewhere' : null;
    case 'longer-past-floor':
      return lengthPastFloor(plan, move.past) < NOTHING ? 'already-so' : null;
    case 'turn-neck':
      if (plan.implant.index === 0) return 'round-neck';
      return Math.abs(turnToWorst(plan)) < NOTHING ? 'already-so' : null;
    case 'centre-in-socket':
      return solidsOf(plan.site).socket ? null : 'healed-site';
    case 'drift':
    case 'press':
      return drillingOf(plan)?.hole ? null : 'nothing-to-drill';
    default:
      return null;
  }
}

/** What a move comes to at an amount; empty where it does nothing. */
export function sizesOf(plan: Plan, move: Move, amount: number): Size[] {
  if (notHere(plan, move)) return [];
  const after = movedBy(plan, move, amount);
  switch (move.kind) {
    case 'edit':
      return [
        {
          kind: move.edit.kind,
          toward: move.edit.toward,
          value: amount * move.edit.amount,
          unit: move.edit.kind === 'tilt' ? 'deg' : 'mm',
        },
      ];
    case 'longer-past-floor':
      return [single('length', after.implant.implantedLength - plan.implant.implantedLength, 'mm')];
    case 'wider':
      return [single('diameter', after.implant.implantedDiameter - plan.implant.implantedDiameter, 'mm')];
    case 'turn-neck':
      return [single('turn', Math.abs(facingOf(plan.implant.index, after.pose.roll)), 'deg')];
    case 'drift':
      return [{ kind: 'drift', toward: 'facial', value: amount * move.most, unit: 'mm' }];
    case 'press':
      return [{ kind: 'press', toward: 'facial', value: amount * move.most, unit: 'mm' }];
    default:
      return poseSizes(plan.pose, after.pose);
  }
}

const single = (kind: Size['kind'], value: number, unit: Size['unit']): Size => ({
  kind,
  toward: null,
  value,
  unit,
});

/** Shift of the platform and lean of the axis between two poses, the parts that there are. */
function poseSizes(from: Pose, to: Pose): Size[] {
  const part = (
    kind: 'shift' | 'tilt',
    by: number,
    [plus, minus]: readonly ['facial' | 'mesial', 'palatal' | 'distal'],
  ): Size => ({
    kind,
    toward: by > 0 ? plus : minus,
    value: Math.abs(by),
    unit: kind === 'tilt' ? 'deg' : 'mm',
  });
  return [
    part('shift', to.platform.f - from.platform.f, ['facial', 'palatal']),
    part('shift', to.platform.m - from.platform.m, ['mesial', 'distal']),
    part('tilt', to.tilt.faciopalatal - from.tilt.faciopalatal, ['facial', 'palatal']),
    part('tilt', to.tilt.mesiodistal - from.tilt.mesiodistal, ['mesial', 'distal']),
  ].filter(({ value }) => value > 0.005);
}

/** The ridge leans faciopalatally only: mesiodistally the hand keeps to the plan. */
const leanTarget = ({ site, pose, crown }: Plan, what: 'ridge' | 'crown') =>
  what === 'crown'
    ? plannedTilt(site.crown.tilt, crown)
    : { faciopalatal: site.ridge.inclination, mesiodistal: pose.tilt.mesiodistal };

/** Direction in the plane of `m` and `f` in which the canal lies nearest to the implant's axis, unit, and how far to shift. mm. */
function towardCanal(plan: Plan, past: number, most: number): { m: number; f: number; far: number } {
  const { canal } = solidsOf(plan.site);
  const at = new Placement(solidsOf(plan.site), plan.implant, plan.pose, plan.crestMargin);
  const levels = Array.from({ length: 40 }, (_, i) => at.tP + (at.length * i) / 39);
  const clear = (t: number) => canal.distance(at.axisPoint(t)) - at.radius(t);
  const nearest = levels.reduce((p, q) => (clear(q) < clear(p) ? q : p));
  const p = at.axisPoint(nearest);
  const foot = canal.foot(p);
  const [dm, df] = [foot[0] - p[0], foot[1] - p[1]];
  const flat = Math.hypot(dm, df) || 1;
  const distance = readingOf(evaluated(plan).readings, 'canal').value ?? 0;
  return { m: dm / flat, f: df / flat, far: Math.min(most, Math.max(0, distance + past)) };
}

/** By how much the implant must grow to stand `past` beyond the floor, mm along its axis. */
function lengthPastFloor(plan: Plan, past: number): number {
  const room = readingOf(evaluated(plan).readings, 'apex-to-floor').value ?? 0;
  const needed = (room + past) / axisOf(plan.pose.tilt)[2];
  return Math.max(0, Math.min(needed, LONGEST - plan.implant.implantedLength));
}

/** Every diameter by so much more, mm; thread and neck keep their form. */
const widened = (shape: ImplantShape, by: number): ImplantShape => ({
  ...shape,
  apicalDiameter: Math.min(6, shape.apicalDiameter + by),
  implantedDiameter: Math.min(7, shape.implantedDiameter + by),
  platformDiameter: Math.min(shape.transmucosalLength === 0 ? 7 : 8, shape.platformDiameter + by),
});

const turnToWorst = ({ implant, pose }: Plan): number =>
  implant.index === 0 ? 0 : 180 / implant.index - facingOf(implant.index, pose.roll);

function inSocket(plan: Plan, amount: number): Pose {
  const { socket } = solidsOf(plan.site);
  if (!socket) return plan.pose;
  const { platform, tilt, roll } = plan.pose;
  const { a, centre, numbers } = socket;
  const [m, f] = along(centre, a, (platform.c - centre[2]) / a[2]);
  return heldPose({
    platform: { m: mix(platform.m, m, amount), f: mix(platform.f, f, amount), c: platform.c },
    tilt: {
      faciopalatal: mix(tilt.faciopalatal, numbers.axis.faciopalatal, amount),
      mesiodistal: mix(tilt.mesiodistal, numbers.axis.mesiodistal, amount),
    },
    roll,
  });
}

/** The passes that a plan means, on another line if one is given; none where nothing is to be drilled. */
export function passesAsPlanned(plan: Plan, line: DrillPose = drillPoseOf(plan.pose)): Pass[] {
  const steps = drillingOf(plan)?.plan.steps ?? [];
  return steps.flatMap(({ tool, depth }) => {
    if (!tool || depth <= 0) return [];
    const speed = toolOf(plan, tool)?.speed.high ?? 0;
    return [{ tool, pose: line, depth, press: null, speed, irrigated: true }];
  });
}

const withPasses = (plan: Plan, passes: readonly Pass[], drift = 0): Plan => ({
  ...plan,
  rehearsal: {
    ...EMPTY_REHEARSAL,
    kit: rehearsalOf(plan).kit,
    flap: rehearsalOf(plan).flap,
    spare: rehearsalOf(plan).spare,
    wander: { skid: 0, drift },
    passes,
  },
});

/** Drilled along an axis whose bottom has drifted facially by `drift` mm per 10 mm; the implant follows, as high over its bone entry as planned. */
function drifted(plan: Plan, drift: number): Plan {
  const drilling = drillingOf(plan);
  if (!drilling) return plan;
  const full = drilling.chain.fullDepth;
  const line = moved(drillPoseOf(plan.pose), 0, 0, (drift * full) / 10, full, plan);
  const entry: Vec3 = pointAt(solidsOf(plan.site), line, 0);
  const [m, f, c] = along(entry, axisOf(line.tilt), drilling.site.shoulder);
  const pose = heldPose({ platform: { m, f, c }, tilt: line.tilt, roll: plan.pose.roll });
  return { ...withPasses(plan, passesAsPlanned(plan, line), drift), pose };
}

/** Drilled as planned, the last drill pressed sideways as a shift by `by` mm. */
function pressed(plan: Plan, toward: number, by: number): Plan {
  const planned = passesAsPlanned(plan);
  const last = planned.findLastIndex(({ tool }) => tool.kind === 'drill');
  const passes = planned.map((pass, i) =>
    i === last ? { ...pass, press: { toward, mouth: by, bottom: by } } : pass,
  );
  return withPasses(plan, passes);
}
