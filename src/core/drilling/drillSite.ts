import type { Ridge } from '../anatomy/ridge.ts';
import { angleBetween, rad, unit, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from '../measure/placement.ts';
import { boneEntry } from './boneEntry.ts';
import type { DrillPose } from './rehearsal.ts';

/** Where an axis enters the bone, as drill depths need it. All along the axis, mm. */
export interface DrillSite {
  readonly at: Placement;
  /** Level of the bone entry `B` (rule F5): from the entry `E`, + apical. */
  readonly entry: number;
  /** `S`: height of the shoulder's centre above `B`, + above. */
  readonly shoulder: number;
  /** `g`: present gum over `B`: up to the plane at the crest's level plus its thickness, as the readings have it (rule M7). */
  readonly gum: number;
  /** Angle between the axis and the crest's normal at `B`, degrees. */
  readonly slope: number;
  /** A socket lies open at `B`: no bone there to read a mark at. */
  readonly open: boolean;
}

/** Half of the step of a difference, mm: far above rounding, far below anything the surface does. */
const STEP = 1e-4;
/** Just under the surface, mm. */
const UNDER = 0.01;

/** Outward unit normal of the ridge's solid (sockets taken as filled) at a point of its surface, site frame. */
export function crestNormal(ridge: Ridge, p: Vec3): Vec3 {
  const [m, f, c] = p;
  return unit([
    ridge.solid(m + STEP, f, c) - ridge.solid(m - STEP, f, c),
    ridge.solid(m, f + STEP, c) - ridge.solid(m, f - STEP, c),
    ridge.solid(m, f, c + STEP) - ridge.solid(m, f, c - STEP),
  ]);
}

/** `entry`: level of the bone entry `B` on the implant's axis (rule F5). */
export function drillSite(at: Placement, entry: number): DrillSite {
  const { ridge, site, socket } = at.anatomy;
  const b = at.axisPoint(entry);
  return {
    at,
    entry,
    shoulder: entry - at.tP,
    gum: Math.max(0, (site.gum.crest - b[2]) / at.a[2]),
    slope: angleBetween(at.a, crestNormal(ridge, b)),
    open: socket?.contains(at.axisPoint(entry + UNDER)) ?? false,
  };
}

/** The pose of a drill on an implant's planned axis. */
export const plannedPose = ({ entry, pose }: Placement): DrillPose => ({
  mouth: { m: entry[0], f: entry[1] },
  tilt: pose.tilt,
});

/** The drill site of an implant's pose; null: its axis meets no bone. */
export function drillSiteOf(at: Placement): DrillSite | null {
  const found = boneEntry(at.anatomy.ridge, plannedPose(at));
  return found && drillSite(at, found.level);
}

/** Steeper than this the hole has no edge that a mark could be read at, degrees (ours). */
const STEEPEST = 80;

/** How far the edges of a hole lie above and below `B` along the axis, mm: `r tan`; null where the axis hardly enters. */
export const edgeRise = ({ slope }: Pick<DrillSite, 'slope'>, radius: number): number | null =>
  slope > STEEPEST ? null : radius * Math.tan(rad(slope));
