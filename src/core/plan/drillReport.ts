import { type Mends, mendsOf } from '../drilling/mend.ts';
import { type MendableUntil, mendableUntil, type Outlook, outlookOf } from '../drilling/outlook.ts';
import { PassBody } from '../drilling/passBody.ts';
import { holeReadings } from '../drilling/passReadings.ts';
import { type PassView, passViews } from '../drilling/passView.ts';
import { type RehearsalSummary, rehearsalSummary } from '../drilling/rehearsalSummary.ts';
import { holeVolume, lastPassVolume } from '../drilling/volume.ts';
import type { Reading } from '../measure/reading.ts';
import { plannedTilt } from '../restoration/crownChoices.ts';
import { drillingOf } from './drilling.ts';
import { solidsOf } from './evaluate.ts';
import { kitOf, passBodies, passesShown } from './inHand.ts';
import type { Plan } from './plan.ts';

/** How the passes made so far end if the plan is gone on with, and how the last of them may be mended. */
export interface Standing {
  readonly outlook: Outlook;
  readonly mends: Mends;
  readonly until: MendableUntil;
}

/** Everything that is worked out when a pass has been made: plain data, made in a worker. mm, degrees, mm³. */
export interface DrillReport {
  /** Null where no pass met bone, or the plan has no hole to be drilled. */
  readonly standing: Standing | null;
  /** The passes beside the plan, their faults and the verdict; null where the plan has no hole to be drilled. */
  readonly summary: RehearsalSummary | null;
  /** Readings of each pass, in their order; empty where its axis meets no bone. */
  readonly passes: readonly (readonly Reading[])[];
  /** The worst of every reading over the passes. */
  readonly hole: readonly Reading[];
  /** Bone taken by all passes, and by the last: no more than this can be collected. */
  readonly removed: number;
  readonly collected: number;
}

/** Every pass that met bone, with its body and its readings. */
const viewsOf = (plan: Plan): PassView[] => {
  const { fixing, crestMargin, limits } = plan;
  const crownTilt = plannedTilt(plan.site.crown.tilt, plan.crown);
  const input = { anatomy: solidsOf(plan.site), fixing, crestMargin, limits, crownTilt };
  return passViews(input, kitOf(plan), passesShown(plan));
};

function readingsOf(plan: Plan, views: readonly PassView[]): Pick<DrillReport, 'passes' | 'hole'> {
  const passes = passesShown(plan).map((_, i) => views.find(({ index }) => index === i)?.readings ?? []);
  return { passes, hole: holeReadings(views.map(({ readings }) => readings)) };
}

function standingOf(plan: Plan): Standing | null {
  const hole = drillingOf(plan)?.hole;
  const made = passBodies(plan);
  const last = made.at(-1);
  if (!hole || !last) return null;
  const straight = new PassBody({ ...last, press: null, pose: last.endPose() });
  return {
    outlook: outlookOf(made, hole),
    mends: mendsOf(solidsOf(plan.site).ridge, made, hole),
    until: mendableUntil(straight, hole),
  };
}

/** The passes beside the plan; null where the plan has no hole to be drilled. */
function summaryOf(plan: Plan, views: readonly PassView[], outlook: Outlook | null): RehearsalSummary | null {
  const drilling = drillingOf(plan);
  if (!drilling?.hole) return null;
  const { site, plan: order, hole } = drilling;
  return rehearsalSummary({ site, kit: kitOf(plan), plan: order, views, hole, outlook });
}

/** The report of a rehearsal. Pure; cost some 100 ms: a worker's work. */
export function drillReport(plan: Plan): DrillReport {
  const anatomy = solidsOf(plan.site);
  const bodies = passBodies(plan);
  const views = viewsOf(plan);
  const standing = standingOf(plan);
  return {
    standing,
    summary: summaryOf(plan, views, standing?.outlook ?? null),
    ...readingsOf(plan, views),
    removed: holeVolume(anatomy, bodies),
    collected: lastPassVolume(anatomy, bodies),
  };
}
