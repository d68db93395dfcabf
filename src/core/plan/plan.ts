import type { Site } from '../anatomy/site.ts';
import type { Rehearsal } from '../drilling/rehearsal.ts';
import type { Pose } from '../geometry/pose.ts';
import type { ImplantShape } from '../implant/shape.ts';
import type { Bands, Fixing } from '../measure/limit.ts';
import type { CrownChoices } from '../restoration/crownChoices.ts';

export const PLAN_FORMAT = 'ridgewright-plan';
export const PLAN_VERSION = 3;

/** Everything that is saved: a small plain object, mm and degrees (the schema in `schema.ts` has the ranges). */
export interface Plan {
  readonly format: typeof PLAN_FORMAT;
  readonly version: typeof PLAN_VERSION;
  readonly title: string;
  readonly note: string;
  readonly site: Site;
  readonly implant: ImplantShape;
  readonly fixing: Fixing;
  readonly pose: Pose;
  /** What is chosen for the crown. */
  readonly crown: CrownChoices;
  /** The least depth below the crest at which a wall counts, mm (rule M2). */
  readonly crestMargin: number;
  /** Own bands in place of the default limits, by the limit's key. */
  readonly limits: Readonly<Record<string, Bands>>;
  /** Drilling and seating as they were rehearsed; null: not begun. */
  readonly rehearsal: Rehearsal | null;
}
