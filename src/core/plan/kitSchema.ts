import * as z from 'zod/mini';
import { KIT_RANGE } from '../drilling/kitRanges.ts';

export const KIT_FORMAT = 'ridgewright-kit';
export const KIT_VERSION = 1;

const ranged = ([low, high]: readonly [number, number]) => z.number().check(z.minimum(low), z.maximum(high));
const counted = ([low, high]: readonly [number, number]) => [z.minLength(low), z.maxLength(high)] as const;

const speed = z.strictObject({ low: ranged(KIT_RANGE.speed), high: ranged(KIT_RANGE.speed) });

const drill = z.strictObject({
  diameter: ranged(KIT_RANGE.diameter),
  point: ranged(KIT_RANGE.point),
  marks: z.array(ranged(KIT_RANGE.mark)).check(...counted(KIT_RANGE.marks)),
  marksCountPoint: z.boolean(),
  length: ranged(KIT_RANGE.length),
  speed,
});

const neck = z.strictObject({
  neckDiameter: ranged(KIT_RANGE.diameter),
  shoulderDiameter: ranged(KIT_RANGE.shoulderDiameter),
  height: ranged(KIT_RANGE.neckHeight),
  length: ranged(KIT_RANGE.length),
  speed,
});

const fields = {
  title: z.string().check(z.maxLength(80)),
  drills: z.array(drill).check(...counted(KIT_RANGE.drills)),
  necks: z.array(neck).check(...counted(KIT_RANGE.necks)),
  handpiece: z.strictObject({
    headDiameter: ranged(KIT_RANGE.headDiameter),
    headHeight: ranged(KIT_RANGE.headHeight),
    extension: ranged(KIT_RANGE.extension),
  }),
};

/** A user's own kit as it stands in a plan: strict, a range on every number. Numbers that contradict each other are in `kitFaults.ts`. */
export const kitSchema = z.strictObject(fields);

/** The same as a file of its own. */
export const kitFileSchema = z.strictObject({
  format: z.literal(KIT_FORMAT),
  version: z.literal(KIT_VERSION),
  ...fields,
});

let published: Record<string, unknown> | null = null;

/** The kit file's schema in its published form; made once. */
export function kitJsonSchema(): Readonly<Record<string, unknown>> {
  published ??= { title: 'Ridgewright kit, version 1', ...z.toJSONSchema(kitFileSchema) };
  return published;
}
