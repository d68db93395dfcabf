import { type Anatomy, anatomyOf } from '../anatomy/anatomy.ts';
import type { Site } from '../anatomy/site.ts';
import { type Finding, findingsOf } from '../measure/findings.ts';
import { type Measurement, measure } from '../measure/measure.ts';
import { READING_IDS, type Reading, type ReadingId } from '../measure/reading.ts';
import { plannedTilt } from '../restoration/crownChoices.ts';
import { plannedCrownOf } from '../restoration/plannedCrown.ts';
import { type Restoration, restore } from '../restoration/restoration.ts';
import type { Plan } from './plan.ts';

export interface Evaluation extends Measurement {
  readonly plan: Plan;
  readonly anatomy: Anatomy;
  /** What the pose means for the crown; its readings stand among the others. */
  readonly restoration: Restoration;
  /** What is near or beyond, the worst first. */
  readonly findings: readonly Finding[];
}

/** Solids of a site, kept as long as its numbers are: a drag changes the pose a hundred times on one site. */
const solids = new WeakMap<Site, Anatomy>();

export function solidsOf(site: Site): Anatomy {
  const known = solids.get(site);
  if (known) return known;
  const made = anatomyOf(site);
  solids.set(site, made);
  return made;
}

/** Readings of several rooms in the order of the model. */
function inOrder(...parts: readonly (readonly Reading[])[]): Reading[] {
  const found = new Map(parts.flat().map((r) => [r.id, r]));
  return READING_IDS.flatMap((id) => found.get(id) ?? []);
}

/** From a valid plan to solids, readings and findings. Pure: the same plan gives the same answer. */
export function evaluate(plan: Plan): Evaluation {
  const anatomy = solidsOf(plan.site);
  const { fixing, limits, crown: choices } = plan;
  const { readings: ofBone, ...measurement } = measure({
    anatomy,
    shape: plan.implant,
    pose: plan.pose,
    fixing,
    crestMargin: plan.crestMargin,
    limits,
    crownTilt: plannedTilt(plan.site.crown.tilt, choices),
  });
  const { placement } = measurement;
  const crown = plannedCrownOf(anatomy, choices);
  const restoration = restore({ placement, crown, fixing, choices, limits });
  const readings = inOrder(ofBone, restoration.readings);
  return { plan, anatomy, ...measurement, readings, restoration, findings: findingsOf(readings) };
}

/** One reading of an evaluation; every id is always there. */
export function readingOf(readings: readonly Reading[], id: ReadingId): Reading {
  const found = readings.find((r) => r.id === id);
  if (!found) throw new Error(`no reading ${id}`);
  return found;
}
