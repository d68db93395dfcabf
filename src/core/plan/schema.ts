import * as z from 'zod/mini';
import { SITES } from '../anatomy/site.ts';
import { LIMIT_KEYS } from '../measure/defaultLimits.ts';
import { MATERIAL_NAMES, type Material } from '../restoration/material.ts';
import { PLAN_FORMAT, PLAN_VERSION } from './plan.ts';
import { POSE_RANGE } from './ranges.ts';
import { rehearsalSchema } from './rehearsalSchema.ts';

/** A finite number within a closed range. */
const num = (low: number, high: number) => z.number().check(z.minimum(low), z.maximum(high));
const ranged = ([low, high]: readonly [number, number]) => num(low, high);
const text = (most: number) => z.string().check(z.maxLength(most));

const tilt = z.strictObject({
  faciopalatal: ranged(POSE_RANGE.faciopalatal),
  mesiodistal: ranged(POSE_RANGE.mesiodistal),
});
const smallTilt = z.strictObject({ faciopalatal: num(-20, 20), mesiodistal: num(-20, 20) });

const widths = z
  .array(z.strictObject({ depth: num(0.2, 25), facial: num(0.5, 12), palatal: num(0.5, 14) }))
  .check(z.minLength(2), z.maxLength(6));

const tooth = {
  crownLength: num(5, 15),
  rootLength: num(6, 24),
  crownWidth: num(3, 12),
  cervixWidth: num(2, 11),
  crownDepth: num(3, 12),
  cervixDepth: num(2, 11),
  cejCurveMesial: num(0, 5),
  cejCurveDistal: num(0, 5),
};
const neighbour = z.strictObject({
  ...tooth,
  tilt,
  rootTilt: smallTilt,
  boneLevel: num(-5, 8),
  cejAboveBone: num(0, 8),
  ridge: z.strictObject({ widths, inclination: num(-10, 60) }),
});

const ridge = z.strictObject({
  widths,
  blend: z.strictObject({ from: num(0, 6), to: num(1, 12) }),
  crestRounding: num(0.05, 4),
  undercut: z.strictObject({ depth: num(0, 4), level: num(0, 20), halfHeight: num(0.5, 10) }),
  inclination: num(-10, 60),
  height: num(6, 35),
  floor: z.enum(['nose', 'sinus']),
  eminence: z.strictObject({ height: num(0, 2), halfWidth: num(1, 6) }),
  cortex: z.strictObject({ facial: num(0.2, 3), palatal: num(0.2, 4) }),
  boneClass: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)]),
  scallop: num(0, 3),
  crestDrop: num(-3, 8),
});

const healed = z.strictObject({ kind: z.literal('healed') });
const socket = z.strictObject({
  kind: z.literal('socket'),
  axis: tilt,
  width: num(2, 10),
  breadth: num(2, 11),
  depth: num(3, 20),
  parallel: num(0, 15),
  wall: z.strictObject({ thickness: num(0, 4), level: num(0.5, 10) }),
  dehiscence: z.strictObject({ depth: num(0, 15), width: num(0.5, 10) }),
});

const site = z.strictObject({
  tooth: z.literal(SITES),
  arch: z.strictObject({ width: num(20, 60), depth: num(0, 20) }),
  ridge,
  state: z.discriminatedUnion('kind', [healed, socket]),
  gap: num(3, 14),
  mesial: neighbour,
  distal: neighbour,
  reference: z.strictObject({
    kind: z.enum(['tooth', 'recession', 'typed']),
    cej: num(-6, 10),
    margin: num(-6, 12),
  }),
  gum: z.strictObject({
    crest: num(0.5, 8),
    facial: num(0.3, 5),
    palatal: num(0.3, 8),
    papillaMesial: num(0, 8),
    papillaDistal: num(0, 8),
  }),
  crown: z.strictObject({ ...tooth, tilt }),
  canal: z.strictObject({
    behind: num(2, 16),
    below: num(0, 10),
    inclination: num(-20, 60),
    length: num(4, 20),
    foramen: num(1, 8),
    middle: num(0.5, 8),
    nasal: num(0.5, 8),
  }),
  opposing: z.strictObject({ overjet: num(-3, 10), overbite: num(-3, 8) }),
});

export const implantSchema = z.strictObject({
  name: text(80),
  implantedLength: num(4, 20),
  transmucosalLength: num(0, 5),
  apicalDiameter: num(1, 6),
  implantedDiameter: num(2, 7),
  platformDiameter: num(2, 8),
  taperLength: num(0, 20),
  thread: z.strictObject({
    depth: num(0.05, 1),
    pitch: num(0.3, 2),
    starts: z.int().check(z.minimum(1), z.maximum(4)),
  }),
  flutes: z.strictObject({ count: z.literal([0, 2, 3, 4]), length: num(0, 20), depth: num(0, 2) }),
  scallop: num(0, 2),
  index: z.int().check(z.minimum(0), z.maximum(12)),
  abutment: z.nullable(
    z.strictObject({ height: num(2, 10), baseDiameter: num(2, 8), topDiameter: num(1.5, 8) }),
  ),
  maxTorque: num(10, 100),
});

const crownChoices = z.strictObject({
  material: z.enum(MATERIAL_NAMES as [Material, ...Material[]]),
  wear: num(0, 2),
  tilt: z.strictObject({ faciopalatal: num(-15, 15), mesiodistal: num(-10, 10) }),
  cementGap: num(0, 0.3),
  post: z.strictObject({ diameter: num(1, 3), height: num(1, 6) }),
  belowGum: num(0, 1.5),
  overBone: num(0, 3),
  channelBend: num(0, 5),
  tray: num(0.3, 4),
});

const bound = z.strictObject({ near: num(-50, 50), beyond: num(-50, 50) });
const bands = z.strictObject({ low: z.optional(bound), high: z.optional(bound) });

export const poseSchema = z.strictObject({
  platform: z.strictObject({
    m: ranged(POSE_RANGE.m),
    f: ranged(POSE_RANGE.f),
    c: ranged(POSE_RANGE.c),
  }),
  tilt,
  roll: ranged(POSE_RANGE.roll),
});

/** The plan file, strict: no unknown key, a range on every number (mm, degrees, N·cm). Cross-checks between numbers are in `check.ts`. */
export const planSchema = z.strictObject({
  format: z.literal(PLAN_FORMAT),
  version: z.literal(PLAN_VERSION),
  title: text(120),
  note: text(2000),
  site,
  implant: implantSchema,
  fixing: z.enum(['screw-bone', 'screw-gum', 'cemented']),
  pose: poseSchema,
  crown: crownChoices,
  crestMargin: num(0, 3),
  limits: z.partialRecord(z.enum(LIMIT_KEYS), bands),
  rehearsal: z.nullable(rehearsalSchema),
});

let published: Record<string, unknown> | null = null;

/** The schema as published in `assets/plan.schema.json`; made once. */
export function planJsonSchema(): Readonly<Record<string, unknown>> {
  published ??= { title: 'Ridgewright plan, version 3', ...z.toJSONSchema(planSchema) };
  return published;
}
