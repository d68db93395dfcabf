import { axisFrame, axisOf, type Pose, platformOf, tiltOf } from '../geometry/pose.ts';
import { along, deg, rad, unit } from '../geometry/vec.ts';
import { heldPose } from '../plan/edits.ts';
import type { Deviation } from './deviation.ts';
import type { OwnAttempt, Way } from './hand.ts';
import { summaryOf } from './summary.ts';

/** The five ways a hand strays (rule H1), in the frame of the planned axis; the turn of the neck is not one of them. */
export const STRAYS = [
  'faciopalatal',
  'mesiodistal',
  'depth',
  'tiltFaciopalatal',
  'tiltMesiodistal',
] as const;
export type StrayKey = (typeof STRAYS)[number];

/** One straying: of the platform in mm, + facially, mesially, too deep; of the axis in degrees, + the coronal end facially, mesially. */
export type Stray = Readonly<Record<StrayKey, number>>;

/** How a hand strays: independent normal distributions, by mean and SD. */
export interface Hand {
  readonly mean: Stray;
  readonly sd: Stray;
}

/** The same in every direction. */
const even = (platform: number, tilt: number): Stray => ({
  faciopalatal: platform,
  mesiodistal: platform,
  depth: platform,
  tiltFaciopalatal: tilt,
  tiltMesiodistal: tilt,
});

/** Mean length of a normal vector in space, in SDs of one part (Maxwell's distribution): `√(8/π)`. */
const SPACE = Math.sqrt(8 / Math.PI);
/** The same in a plane (Rayleigh's distribution): `√(π/2)`. */
const PLANE = Math.sqrt(Math.PI / 2);

/**
 * The hand of a study that gives means only: the global distance at the platform (mm) and the angle between the axes (degrees), taken to stray alike
 * in all directions and about no habit.
 */
export const handFromMeans = (platform: number, angle: number): Hand => ({
  mean: even(0, 0),
  sd: even(platform / SPACE, angle / PLANE),
});

/** A deviation as a straying: the axis turns away from where the apex went. */
export function strayOf({ coronal, apical, angle }: Deviation): Stray {
  const f = apical.faciopalatal - coronal.faciopalatal;
  const m = apical.mesiodistal - coronal.mesiodistal;
  const across = Math.hypot(f, m);
  const lean = (part: number) => (across === 0 ? 0 : deg(Math.atan((-Math.tan(rad(angle)) * part) / across)));
  return {
    faciopalatal: coronal.faciopalatal,
    mesiodistal: coronal.mesiodistal,
    depth: coronal.depth,
    tiltFaciopalatal: lean(f),
    tiltMesiodistal: lean(m),
  };
}

/** The own hand, of the attempts made in one way; null for fewer than two, which have no spread. */
export function ownHand(attempts: readonly OwnAttempt[], way: Way): Hand | null {
  const strays = attempts.filter((one) => one.way === way).map(({ deviation }) => strayOf(deviation));
  const parts = STRAYS.map((key) => [key, summaryOf(strays.map((stray) => stray[key]))] as const);
  if (strays.length < 2) return null;
  return {
    mean: Object.fromEntries(parts.map(([key, part]) => [key, part?.mean ?? 0])) as Stray,
    sd: Object.fromEntries(parts.map(([key, part]) => [key, part?.sd ?? 0])) as Stray,
  };
}

/** Where a straying puts an implant that was meant to stand at `pose`; held within the ranges of a plan, the turn kept. */
export function strayedPose(pose: Pose, stray: Stray): Pose {
  const { a, ef, em } = axisFrame(axisOf(pose.tilt));
  const [m, f, c] = along(
    along(along(platformOf(pose), ef, stray.faciopalatal), em, stray.mesiodistal),
    a,
    -stray.depth,
  );
  const axis = unit(
    along(along(a, ef, Math.tan(rad(stray.tiltFaciopalatal))), em, Math.tan(rad(stray.tiltMesiodistal))),
  );
  return heldPose({ platform: { m, f, c }, tilt: tiltOf(axis), roll: pose.roll });
}
