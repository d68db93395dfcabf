import type { Anatomy } from '../core/anatomy/anatomy.ts';
import { axisOf, platformOf } from '../core/geometry/pose.ts';
import { along, cross, sub, unit, type Vec3 } from '../core/geometry/vec.ts';
import { envelopePolyline } from '../core/implant/profile.ts';
import type { Plan } from '../core/plan/plan.ts';
import { dashed, GHOST } from '../marks/dash.ts';
import { type Point, polyline } from '../marks/path.ts';
import type { Lens } from './lens.ts';

/** Outline of an implant that is not there, as path data: its area, and its edge in the ghost's dashes. */
export interface GhostDrawing {
  readonly area: string;
  readonly edge: string;
}

/**
 * The envelope of a pose as the eye sees it: at every station the radius stands to both sides of the axis, across the line of sight. A long
 * lens makes that as good as its silhouette.
 */
export function ghostEdge(plan: Pick<Plan, 'pose' | 'implant'>, anatomy: Anatomy, lens: Lens): Point[] {
  const platform = anatomy.toJaw(platformOf(plan.pose));
  const axis = anatomy.toJawDirection(axisOf(plan.pose.tilt));
  const across = unit(cross(axis, sub(lens.eye, platform)));
  const { x, r } = envelopePolyline(plan.implant);
  const side = (way: 1 | -1): Point[] =>
    [...x].map((station, i): Point => {
      const centre: Vec3 = along(platform, axis, -station);
      return lens.at(along(centre, across, way * r[i]));
    });
  return [...side(1), ...side(-1).reverse()];
}

/** The envelope of a pose that is not there, drawn. */
export function ghostDrawing(
  plan: Pick<Plan, 'pose' | 'implant'>,
  anatomy: Anatomy,
  lens: Lens,
): GhostDrawing {
  const points = ghostEdge(plan, anatomy, lens);
  return { area: polyline(points, true), edge: dashed(points, GHOST, true) };
}
