import { type Anatomy, anatomyOf } from '../anatomy/anatomy.ts';
import type { Site } from '../anatomy/site.ts';
import { type Finding, findingsOf } from '../measure/findings.ts';
import { type Measurement, measure } from '../measure/measure.ts';
import type { Reading, ReadingId } from '../measure/reading.ts';
import type { Plan } from './plan.ts';

export interface Evaluation extends Measurement {
  readonly plan: Plan;
  readonly anatomy: Anatomy;
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

/** From a valid plan to solids, readings and findings. Pure: the same plan gives the same answer. */
export function evaluate(plan: Plan): Evaluation {
  const anatomy = solidsOf(plan.site);
  const measurement = measure({
    anatomy,
    shape: plan.implant,
    pose: plan.pose,
    fixing: plan.fixing,
    crestMargin: plan.crestMargin,
    limits: plan.limits,
  });
  return { plan, anatomy, ...measurement, findings: findingsOf(measurement.readings) };
}

/** One reading of an evaluation; every id is always there. */
export function readingOf(readings: readonly Reading[], id: ReadingId): Reading {
  const found = readings.find((r) => r.id === id);
  if (!found) throw new Error(`no reading ${id}`);
  return found;
}
