import { type Mends, mendsOf } from '../drilling/mend.ts';
import { type MendableUntil, mendableUntil, type Outlook, outlookOf } from '../drilling/outlook.ts';
import { PassBody, passBody } from '../drilling/passBody.ts';
import { holeReadings, passReadings } from '../drilling/passReadings.ts';
import { holeVolume, lastPassVolume } from '../drilling/volume.ts';
import type { Reading } from '../measure/reading.ts';
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
  /** Readings of each pass, in their order; empty where its axis meets no bone. */
  readonly passes: readonly (readonly Reading[])[];
  /** The worst of every reading over the passes. */
  readonly hole: readonly Reading[];
  /** Bone taken by all passes, and by the last: no more than this can be collected. */
  readonly removed: number;
  readonly collected: number;
}

/** Readings of every pass, and the worst of each over the hole. */
function readingsOf(plan: Plan): Pick<DrillReport, 'passes' | 'hole'> {
  const anatomy = solidsOf(plan.site);
  const { fixing, crestMargin, limits } = plan;
  const passes = passesShown(plan).map((pass) => {
    const body = passBody(anatomy.ridge, kitOf(plan), pass);
    return body ? passReadings({ anatomy, fixing, crestMargin, limits }, body) : [];
  });
  return { passes, hole: holeReadings(passes.filter((made) => made.length > 0)) };
}

function standingOf(plan: Plan): Standing | null {
  const drilling = drillingOf(plan);
  const made = passBodies(plan);
  const last = made.at(-1);
  if (!drilling || !last) return null;
  const { hole } = drilling;
  const straight = new PassBody({ ...last, press: null, pose: last.endPose() });
  return {
    outlook: outlookOf(made, hole),
    mends: mendsOf(solidsOf(plan.site).ridge, made, hole),
    until: mendableUntil(straight, hole),
  };
}

/** The report of a rehearsal. Pure; cost some 100 ms: a worker's work. */
export function drillReport(plan: Plan): DrillReport {
  const anatomy = solidsOf(plan.site);
  const bodies = passBodies(plan);
  return {
    standing: standingOf(plan),
    ...readingsOf(plan),
    removed: holeVolume(anatomy, bodies),
    collected: lastPassVolume(anatomy, bodies),
  };
}
