import type { Neighbour, Site, SocketState } from '../../src/core/anatomy/site.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import type { Reading, ReadingId } from '../../src/core/measure/reading.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import { PLAN_FORMAT, PLAN_VERSION, type Plan } from '../../src/core/plan/plan.ts';
import { DEFAULT_CROWN } from '../../src/core/restoration/crownChoices.ts';
import { slabSite } from './demoPlans.ts';

/** A round root standing upright, its top circle at the crest's level: `m = ±(gap/2 + crownWidth/2)`. */
export const uprightTooth = (
  radius: number,
  length: number,
  changes: Partial<Neighbour> = {},
): Neighbour => ({
  crownLength: 10,
  rootLength: length,
  crownWidth: 6,
  cervixWidth: 2 * radius,
  crownDepth: 7,
  cervixDepth: 2 * radius,
  cejCurveMesial: 3,
  cejCurveDistal: 2,
  tilt: { faciopalatal: 0, mesiodistal: 0 },
  rootTilt: { faciopalatal: 0, mesiodistal: 0 },
  boneLevel: 0,
  cejAboveBone: 0,
  ridge: slabSite().mesial.ridge,
  ...changes,
});

/** A cylinder of radius `r` and length `l`, shoulder and last thread at one level, pitch 0.8 mm. */
export const cylinder = (r: number, l: number, changes: Partial<ImplantShape> = {}): ImplantShape => ({
  name: 'cylinder',
  implantedLength: l,
  transmucosalLength: 0,
  apicalDiameter: 2 * r,
  implantedDiameter: 2 * r,
  platformDiameter: 2 * r,
  taperLength: 0,
  thread: { depth: 0.3, pitch: 0.8, starts: 1 },
  flutes: { count: 0, length: 0, depth: 0 },
  scallop: 0,
  index: 0,
  abutment: null,
  maxTorque: 35,
  ...changes,
});

/** Numbers of a slab (straight arch, constant width) with a cylinder in it; mm and degrees, site frame. */
export interface SlabNumbers {
  readonly width?: number;
  readonly r?: number;
  readonly l?: number;
  readonly m?: number;
  readonly f?: number;
  readonly c?: number;
  readonly fp?: number;
  readonly md?: number;
  readonly roll?: number;
  /** Rounding of the crest; the schema's least by default. */
  readonly rounding?: number;
  readonly state?: SocketState;
  readonly site?: Partial<Site>;
  readonly ridge?: Partial<Site['ridge']>;
  /** The ridge about both neighbours. */
  readonly about?: Neighbour['ridge'];
  readonly shape?: Partial<ImplantShape>;
  readonly plan?: Partial<Plan>;
}

/** Width 7.5, radius 1.75, length 11, upright in the middle, shoulder at the crest; what differs is given. */
export function slabPlan(n: SlabNumbers = {}): Plan {
  const site = slabSite(n.width ?? 7.5);
  return {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    title: 'slab',
    note: '',
    site: {
      ...site,
      state: n.state ?? site.state,
      ...n.site,
      ridge: { ...site.ridge, crestRounding: n.rounding ?? 0.05, ...n.ridge },
      ...(n.about && {
        mesial: { ...site.mesial, ridge: n.about },
        distal: { ...site.distal, ridge: n.about },
      }),
    },
    implant: cylinder(n.r ?? 1.75, n.l ?? 11, n.shape),
    fixing: 'screw-bone',
    pose: {
      platform: { m: n.m ?? 0, f: n.f ?? 0, c: n.c ?? 0 },
      tilt: { faciopalatal: n.fp ?? 0, mesiodistal: n.md ?? 0 },
      roll: n.roll ?? 0,
    },
    crown: DEFAULT_CROWN,
    crestMargin: 1,
    limits: {},
    rehearsal: null,
    ...n.plan,
  };
}

/** One reading of a plan. */
export const read = (plan: Plan, id: ReadingId): Reading => readingOf(evaluate(plan).readings, id);
