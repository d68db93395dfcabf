import * as z from 'zod/mini';
import { kitSchema } from './kitSchema.ts';
import { POSE_RANGE } from './ranges.ts';

const num = (low: number, high: number) => z.number().check(z.minimum(low), z.maximum(high));
const ranged = ([low, high]: readonly [number, number]) => num(low, high);
const tilt = z.strictObject({
  faciopalatal: ranged(POSE_RANGE.faciopalatal),
  mesiodistal: ranged(POSE_RANGE.mesiodistal),
});
const toolRef = z.strictObject({
  kind: z.enum(['drill', 'neck']),
  index: z.int().check(z.minimum(0), z.maximum(23)),
});
const drillPose = z.strictObject({
  mouth: z.strictObject({ m: ranged(POSE_RANGE.m), f: ranged(POSE_RANGE.f) }),
  tilt,
});
const speed = num(0, 3000);
const pass = z.strictObject({
  tool: toolRef,
  pose: drillPose,
  depth: num(0, 30),
  press: z.nullable(z.strictObject({ toward: num(-180, 180), mouth: num(-3, 3), bottom: num(-3, 3) })),
  speed,
  irrigated: z.boolean(),
});

const seatAct = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('start'), roll: ranged(POSE_RANGE.roll), pose: drillPose }),
  z.strictObject({ kind: z.literal('turn'), by: z.enum(['fingers', 'wrench']), degrees: num(-7200, 7200) }),
  z.strictObject({ kind: z.literal('steer'), tilt }),
  z.strictObject({ kind: z.literal('back-out') }),
]);

/** Drilling and seating as they are kept with a plan: strict, a range on every number. References to tools are checked in `check.ts`. */
export const rehearsalSchema = z.strictObject({
  kit: z.nullable(kitSchema),
  flap: z.boolean(),
  spare: num(0, 3),
  hand: z.nullable(
    z.strictObject({ tool: toolRef, pose: drillPose, depth: num(-40, 30), speed, irrigated: z.boolean() }),
  ),
  passes: z.array(pass).check(z.maxLength(80)),
  shown: z.nullable(z.int().check(z.minimum(0), z.maximum(80))),
  wander: z.strictObject({ skid: num(0, 2), drift: num(0, 2) }),
  seating: z.array(seatAct).check(z.maxLength(200)),
  wrench: z.nullable(
    z.strictObject({
      points: z
        .array(z.strictObject({ above: num(-5, 25), torque: num(0, 120) }))
        .check(z.minLength(1), z.maxLength(12)),
    }),
  ),
});
