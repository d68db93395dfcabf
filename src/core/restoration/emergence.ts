import { onPlane } from '../geometry/slice.ts';
import { along, deg, dot, rad, sub, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from '../measure/placement.ts';
import { type CrownCut, type PlannedCrown, wayOut } from './plannedCrown.ts';

/** Least height of the gum's margin over the cervical line at which the crown's wall is looked for, mm: there it has only just begun. */
const LEAST_OVER_CEJ = 0.05;

/** The crown's contour of one side, straight from the shoulder's rim to where the gum's margin lies on the planned crown; site frame, mm and degrees. */
export interface Contour {
  readonly rim: Vec3;
  readonly margin: Vec3;
  /** Between axis and contour, + widening coronally. */
  readonly angle: number;
}

export type EmergenceSide = 'mesial' | 'distal' | 'facial';

/** Azimuth of a side from `e_f` toward `e_m`, radians. */
const AZIMUTH: Readonly<Record<EmergenceSide, number>> = {
  mesial: Math.PI / 2,
  distal: -Math.PI / 2,
  facial: 0,
};

/**
 * A plane that the gum's margin lies in on a side: facially the planned margin's level; mesially and distally, as far coronal of the crown's cervical
 * line as facially, square to the crown's axis, since the margin follows that line.
 */
function marginPlane(
  at: Placement,
  crown: PlannedCrown,
  side: EmergenceSide,
  higher: number,
): { point: Vec3; normal: Vec3 } {
  const { cej, margin } = at.anatomy.site.reference;
  const over = Math.max(margin - cej, LEAST_OVER_CEJ) + higher;
  if (side === 'facial') return { point: [0, 0, cej + over], normal: [0, 0, 1] };
  const { origin, ez } = crown.frame;
  return { point: along(origin, ez, crown.cejCurve[side] + over / ez[2]), normal: ez };
}

/** Where the wall begins only coronal of the margin (beside the middle of a curved cervical line), it is looked for in steps up to this, mm. */
const HIGHER = [0, 0.25, 0.5, 0.75, 1, 1.5, 2] as const;

export type FoundContour = Contour | 'none' | 'shows';

/**
 * `none`: the crown has no wall there; `shows`: the shoulder does not lie below the margin on this side. The cut runs along the axis and `e_f` for the facial
 * side, the axis and `e_m` for the others.
 */
export function contourOf(
  at: Placement,
  crown: PlannedCrown,
  side: EmergenceSide,
  cut: CrownCut,
): FoundContour {
  const { plane, loops } = cut;
  const outward = side === 'distal' ? -1 : 1;
  for (const higher of HIGHER) {
    const { point, normal } = marginPlane(at, crown, side, higher);
    // The margin's plane meets the cut in a line v = v0 + slope u.
    const coronal = dot(at.a, normal);
    const v0 = dot(sub(point, at.platform), normal) / coronal;
    const slope = -dot(plane.x, normal) / coronal;
    const reach = wayOut(loops, [0, v0], [outward, outward * slope]);
    if (reach === null) continue;
    const v = v0 + slope * outward * reach;
    const height = v - (at.tP - at.rimLevel(AZIMUTH[side]));
    if (height <= 0) return 'shows';
    const angle = emergenceAngle(at.radius(at.tP), reach, height);
    return { rim: at.rimPoint(AZIMUTH[side]), margin: onPlane(plane, outward * reach, v), angle };
  }
  return 'none';
}

/** Angle between the axis and a contour from radius `from` to radius `to` over `height` along the axis, degrees. */
export const emergenceAngle = (from: number, to: number, height: number): number =>
  deg(Math.atan2(to - from, height));

/** Height along the axis over which a contour grows by `growth` (of the radius) at an angle in degrees, mm. */
export const heightFor = (growth: number, angle: number): number => growth / Math.tan(rad(angle));
