import type { Void } from '../drilling/bodies.ts';
import { type ImplantShape, leadOf } from '../implant/shape.ts';
import type { Placement } from '../measure/placement.ts';
import { raised } from './bite.ts';
import { type Contact, cellArea, contactOf } from './contact.ts';
import { type GridSize, isContact } from './contactGrid.ts';

/*
 * What the torque might be: an engineering model with a range (rule T10). It is a caution at most: it judges nothing and blocks nothing; the wrench does.
 */

export interface Range {
  readonly low: number;
  readonly high: number;
}

export type BoneClass = 1 | 2 | 3 | 4;

/**
 * Pressure of fully pressed bone against the envelope, MPa, by Lekholm and Zarb's class: assumed, ours. Wide on purpose, and chosen so that the torques
 * published for an implant of 4.0 × 11 in foam (Camargo 2017: 48.9 in dense foam, 11.7 and 22.6 in soft) fall inside what it gives: a fit, no proof.
 */
export const PRESSURE: Readonly<Record<BoneClass, Range>> = {
  1: { low: 3, high: 12 },
  2: { low: 1.8, high: 8 },
  3: { low: 1, high: 5 },
  4: { low: 0.5, high: 3 },
};

/** Coefficient of friction between metal and bone: assumed, ours. */
export const FRICTION: Range = { low: 0.2, high: 0.5 };

/** Press, as a share of the envelope's radius, at which bone is pressed to `1 − 1/e` (63 %) of its full pressure; past it it mostly crushes on: assumed, ours. */
export const YIELD_PRESS = 0.1;

export const TORQUE_ASSUMPTIONS = [
  'pressure-by-class',
  'pressure-from-press',
  'friction-range',
  'thread-force',
  'one-bone',
  'no-cutting',
  'no-speed',
] as const;
export type TorqueAssumption = (typeof TORQUE_ASSUMPTIONS)[number];

/** Torque of a screw's inclined plane, N·mm: axial force N, diameter and lead mm. `W d/2 (l + π μ d)/(π d − μ l)`. */
export const screwTorque = (force: number, diameter: number, lead: number, friction: number): number =>
  ((force * diameter) / 2) *
  ((lead + Math.PI * friction * diameter) / (Math.PI * diameter - friction * lead));

/** Moment of a frustum's side about its axis, mm³: times friction (1) and pressure (MPa) it is a torque in N·mm. `(2π/cos α) h (r₁² + r₁r₂ + r₂²)/3`. */
export function frustumMoment(r1: number, r2: number, height: number): number {
  const slant = Math.hypot(height, r1 - r2);
  return (2 * Math.PI * slant * (r1 * r1 + r1 * r2 + r2 * r2)) / 3;
}

/** What the bone does to the implant, per MPa of full pressure. */
export interface Loads {
  /** Side: pressure share times radius over the area in contact, mm³. */
  readonly moment: number;
  /** Projected area of the thread's flanks that are in bone, times the pressure share, mm²: times MPa it is an axial force in N. */
  readonly flanks: number;
  /** Area-weighted mean diameter of what is in contact, mm; 0 where nothing is. */
  readonly diameter: number;
}

/** Share of the full pressure at a press (≥ 0), 0…1: it grows ever more slowly. Undrilled bone is pressed by the radius: as good as fully. */
export const pressureShare = (press: number, radius: number): number =>
  1 - Math.exp(-press / (YIELD_PRESS * radius));

/** Sums over the threaded envelope: a point of the grid stands for half of the cells above and below it. */
export function loadsOf({ grid }: Contact, shape: ImplantShape): Loads {
  const { rows, columns, kinds, values, radii, stations, threadFrom } = grid;
  const { depth, pitch } = shape.thread;
  let moment = 0;
  let flanks = 0;
  let area = 0;
  let reach = 0;
  for (let i = threadFrom; i + 1 < rows; i++) {
    const cell = cellArea(grid, i) / 2;
    const height = (stations[i + 1] - stations[i]) / 2;
    for (let k = i * columns; k < (i + 2) * columns; k++) {
      if (!isContact(kinds[k])) continue;
      const r = radii[k < (i + 1) * columns ? i : i + 1];
      const press = -values[k];
      const share = pressureShare(press, r);
      moment += share * r * cell;
      flanks += (share * Math.min(depth, press) * 2 * Math.PI * r * height) / (columns * pitch);
      area += cell;
      reach += 2 * r * cell;
    }
  }
  return { moment, flanks, diameter: area === 0 ? 0 : reach / area };
}

/** The estimate, N·cm. */
export interface TorqueEstimate extends Range {
  /** What of it the thread makes, and what the side. */
  readonly thread: Range;
  readonly side: Range;
  readonly assumptions: readonly TorqueAssumption[];
}

/** N·mm in N·cm. */
const CM = 0.1;

export function torqueEstimate(contact: Contact, shape: ImplantShape, boneClass: BoneClass): TorqueEstimate {
  const { moment, flanks, diameter } = loadsOf(contact, shape);
  const pressure = PRESSURE[boneClass];
  const threadAt = (end: 'low' | 'high') =>
    diameter === 0 ? 0 : CM * screwTorque(pressure[end] * flanks, diameter, leadOf(shape), FRICTION[end]);
  const sideAt = (end: 'low' | 'high') => CM * FRICTION[end] * pressure[end] * moment;
  const thread = { low: threadAt('low'), high: threadAt('high') };
  const side = { low: sideAt('low'), high: sideAt('high') };
  return {
    low: thread.low + side.low,
    high: thread.high + side.high,
    thread,
    side,
    assumptions: TORQUE_ASSUMPTIONS,
  };
}

const COARSE: GridSize = { rows: 28, columns: 24 };

export interface TorqueAt extends TorqueEstimate {
  /** Shoulder above where it is placed, mm. */
  readonly above: number;
}

/** The estimate as the implant goes in along its axis, by shoulder levels above where it is placed, mm. A coarser grid. */
export function torqueCurve(at: Placement, hole: Void, levels: readonly number[]): TorqueAt[] {
  const { boneClass } = at.anatomy.site.ridge;
  return levels.map((above) => ({
    above,
    ...torqueEstimate(contactOf(raised(at, above), hole, COARSE), at.shape, boneClass),
  }));
}
