import { Hole } from '../drilling/hole.ts';
import type { SeatAct, WrenchScript } from '../drilling/rehearsal.ts';
import type { Tilt } from '../geometry/pose.ts';
import { type Contact, contactOf } from '../seating/contact.ts';
import { type Finish, planFinish, type Rung, rungsLeft } from '../seating/finish.ts';
import { type Play, playOf } from '../seating/play.ts';
import { poseAt, type SeatSetting, type SeatState, seating } from '../seating/seat.ts';
import { placedInState, seatSetting, sparse } from '../seating/setup.ts';
import { type TorqueEstimate, torqueEstimate } from '../seating/torque.ts';
import { causesOf, drillingOf, keptBy } from './drilling.ts';
import { drillPoseOf, kitOf, passBodies, passesShown, rehearsalOf } from './inHand.ts';
import type { Plan } from './plan.ts';

/** What the seating of a plan starts from: nothing of it changes while the implant is turned in. */
interface Seat {
  readonly setting: SeatSetting;
  readonly hole: Hole;
}

const seatCauses = (plan: Plan) => [...causesOf(plan), passesShown(plan), rehearsalOf(plan).wrench] as const;

const seatOf = keptBy(seatCauses, (plan): Seat | null => {
  const drilling = drillingOf(plan);
  const bodies = passBodies(plan);
  if (!drilling || bodies.length === 0) return null;
  const hole = sparse(new Hole(bodies));
  const setting = seatSetting(drilling.site, hole, {
    kit: kitOf(plan),
    passes: passesShown(plan),
    wrench: rehearsalOf(plan).wrench,
    tolerance: null,
    highest: null,
  });
  return { setting, hole };
});

/** The implant as it stands after the acts of the seating made so far. */
export interface SeatNow {
  readonly setting: SeatSetting;
  readonly states: readonly SeatState[];
  readonly state: SeatState;
  readonly finish: Finish;
  readonly rungs: readonly Rung[];
  readonly contact: Contact;
  readonly play: Play;
  /** An engineering model with its range: a caution, never a status. */
  readonly estimate: TorqueEstimate;
}

/** Null before anything is drilled. Cost: some 5 ms, more the first time after a pass. */
export const seatNow = keptBy(
  (plan) => [...seatCauses(plan), rehearsalOf(plan).seating] as const,
  (plan): SeatNow | null => {
    const seat = seatOf(plan);
    const drilling = drillingOf(plan);
    if (!seat || !drilling) return null;
    const { setting, hole } = seat;
    const states = seating(setting, rehearsalOf(plan).seating);
    const state = states[states.length - 1];
    const contact = contactOf(placedInState(drilling.site.at, setting, state), hole);
    const { boneClass } = plan.site.ridge;
    return {
      setting,
      states,
      state,
      finish: planFinish(setting, state),
      rungs: rungsLeft(setting, state),
      contact,
      play: playOf(contact),
      estimate: torqueEstimate(contact, plan.implant, boneClass),
    };
  },
);

const withActs = (plan: Plan, seating: readonly SeatAct[]): Plan => ({
  ...plan,
  rehearsal: { ...rehearsalOf(plan), seating },
});

const act = (plan: Plan, next: SeatAct): Plan => withActs(plan, [...rehearsalOf(plan).seating, next]);

/** Sets the implant into the mouth of the hole with its mark turned to `roll` (degrees, + from facial toward mesial) and begins to turn. */
export const startSeating = (plan: Plan, roll: number): Plan =>
  act(plan, { kind: 'start', roll, pose: drillPoseOf(plan.pose) });

/** Turns the implant in, or back if negative, degrees. */
export const turnIn = (plan: Plan, by: 'fingers' | 'wrench', degrees: number): Plan =>
  act(plan, { kind: 'turn', by, degrees });

export const steer = (plan: Plan, tilt: Tilt): Plan => act(plan, { kind: 'steer', tilt });
export const backOut = (plan: Plan): Plan => act(plan, { kind: 'back-out' });
export const seatAnew = (plan: Plan): Plan => withActs(plan, []);

export const setWrench = (plan: Plan, wrench: WrenchScript | null): Plan => ({
  ...plan,
  rehearsal: { ...rehearsalOf(plan), wrench },
});

const seen = new WeakMap<Plan, Plan>();

/** The plan with its implant where the seating has brought it. */
export function planInSeat(plan: Plan): Plan {
  const known = seen.get(plan);
  if (known) return known;
  const now = seatNow(plan);
  const made = now ? { ...plan, pose: poseAt(now.setting, now.state) } : plan;
  seen.set(plan, made);
  return made;
}

/** Takes back what a hand did to {@link planInSeat}: only how the implant leans can be steered. */
export function withSeatSteered(plan: Plan, moved: Plan): Plan {
  const { tilt } = planInSeat(plan).pose;
  const to = moved.pose.tilt;
  return to.faciopalatal === tilt.faciopalatal && to.mesiodistal === tilt.mesiodistal
    ? plan
    : steer(plan, to);
}
