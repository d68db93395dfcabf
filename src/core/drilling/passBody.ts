import type { Ridge } from '../anatomy/ridge.ts';
import { golden } from '../geometry/golden.ts';
import type { Interval } from '../geometry/interval.ts';
import { type AxisFrame, axisFrame, axisOf, tiltOf } from '../geometry/pose.ts';
import { Revolved } from '../geometry/revolve.ts';
import { add, along, clamp, dot, rad, reject, scale, sub, unit, type Vec3 } from '../geometry/vec.ts';
import type { Void } from './bodies.ts';
import { type BoneEntry, boneEntry } from './boneEntry.ts';
import { type Flank, flanksOf, type ToolProfile, withinProfile } from './convexBody.ts';
import { type Drill, type Kit, type NeckCutter, pointLength, type ToolRef } from './kit.ts';
import type { DrillPose, Pass, Press } from './rehearsal.ts';
import {
  betweenPlaces,
  inTool,
  type PressLine,
  placeAt,
  type Sweep,
  type SweepPlace,
  stepsOf,
} from './sweep.ts';

/** Where the axis of a tool runs: at the bone entry, at the bottom of its full diameter (the neck's notch), at its tip. Site frame, mm. */
export interface AxisEnds {
  readonly mouth: Vec3;
  readonly bottom: Vec3;
  readonly tip: Vec3;
  /** Unit, coronal. */
  readonly a: Vec3;
}

/** Out of all reach, mm. */
const FAR = 200;
/** Below this depth a press has no lever to tip about, mm. */
const LEAST_LEVER = 1;

/** A tool of a kit; undefined where the kit has none at that place. */
export const toolOf = (kit: Kit, { kind, index }: ToolRef): Drill | NeckCutter | undefined =>
  kind === 'drill' ? kit.drills[index] : kit.necks[index];

export const isDrill = (tool: Drill | NeckCutter): tool is Drill => 'diameter' in tool;

/** Outline of a tool from the bottom of its full diameter, or from the neck's notch (rule D2). */
export function profileOf(tool: Drill | NeckCutter): ToolProfile {
  if (isDrill(tool)) return { x: [-pointLength(tool), 0], r: [0, tool.diameter / 2] };
  return { x: [0, tool.height], r: [tool.neckDiameter / 2, tool.shoulderDiameter / 2] };
}

/** Stretches in rising order, those that overlap or touch made one. */
export function unionOf(parts: readonly Interval[]): NonNullable<Interval>[] {
  const sorted = parts.filter((p) => p !== null).sort((p, q) => p[0] - q[0]);
  const out: NonNullable<Interval>[] = [];
  for (const part of sorted) {
    const last = out.at(-1);
    if (last && part[0] <= last[1]) out[out.length - 1] = [last[0], Math.max(last[1], part[1])];
    else out.push(part);
  }
  return out;
}

/** What the body of a pass is made from, where a pass of a kit is not at hand. */
export interface BodyNumbers {
  readonly profile: ToolProfile;
  readonly pose: DrillPose;
  readonly entry: BoneEntry;
  readonly depth: number;
  readonly press: Press | null;
  /** At most so many steps of a press that tips, where less than its full fineness will do. */
  readonly steps?: number;
}

/** The space one pass takes up: its tool from far coronal down to its bottom, swept where it was pressed (rules D2, D3). Site frame, mm. */
export class PassBody implements Void {
  readonly frame: AxisFrame;
  readonly profile: ToolProfile;
  readonly pose: DrillPose;
  readonly entry: BoneEntry;
  readonly depth: number;
  readonly press: Press | null;
  /** Greatest radius of the tool. */
  readonly radius: number;
  readonly sweep: Sweep | null;
  /** Places of the press, from its start to its end; one where there is none. */
  readonly places: readonly SweepPlace[];
  private readonly origin: Vec3;
  /** Along the press, and across it. */
  private readonly ex: Vec3;
  private readonly ey: Vec3;
  private readonly flanks: readonly Flank[];
  /** Station of the tip, or of the neck's notch. */
  readonly lowest: number;
  private solid: Revolved | null = null;

  constructor({ profile, pose, entry, depth, press, steps: most = Infinity }: BodyNumbers) {
    this.press = press;
    this.profile = profile;
    this.pose = pose;
    this.entry = entry;
    this.depth = depth;
    this.frame = axisFrame(axisOf(pose.tilt));
    const { a, ef, em } = this.frame;
    this.radius = Math.max(...profile.r);
    this.flanks = flanksOf(profile);
    this.lowest = profile.x[0];
    this.origin = along(entry.point, a, -depth);
    const toward = rad(press?.toward ?? 0);
    this.ex = along(scale(ef, Math.cos(toward)), em, Math.sin(toward));
    this.ey = along(scale(em, Math.cos(toward)), ef, -Math.sin(toward));
    this.sweep =
      press && (press.mouth !== 0 || press.bottom !== 0)
        ? { bottom: press.bottom, kappa: (press.mouth - press.bottom) / Math.max(depth, LEAST_LEVER) }
        : null;
    const { sweep } = this;
    const steps = sweep ? Math.min(most, stepsOf(sweep, profile)) : 0;
    this.places = sweep
      ? Array.from({ length: steps + 1 }, (_, i) => placeAt(sweep, i / steps))
      : [{ s: 0, off: 0, sin: 0, cos: 1 }];
  }

  /** Shares of the press at which its end circles are looked at: between them they run all but straight. */
  get looks(): readonly number[] {
    if (!this.sweep) return [0];
    return this.sweep.kappa === 0 ? [0, 1] : [0, 0.2, 0.4, 0.6, 0.8, 1];
  }

  /** The axis at a share of the press (0 before it, 1 after). */
  axisAt(s: number): AxisEnds {
    const { off, sin, cos } = this.sweep ? placeAt(this.sweep, s) : this.places[0];
    const a = along(scale(this.frame.a, cos), this.ex, sin);
    const bottom = along(this.origin, this.ex, off);
    return { mouth: along(bottom, a, this.depth / cos), bottom, tip: along(bottom, a, this.lowest), a };
  }

  /** Where the tool stands when the press has ended. */
  endPose(): DrillPose {
    if (!this.sweep) return this.pose;
    const { bottom, a } = this.axisAt(1);
    const mouth = along(bottom, a, -bottom[2] / a[2]);
    return { mouth: { m: mouth[0], f: mouth[1] }, tilt: tiltOf(a) };
  }

  private inPress(p: Vec3, v: Vec3): PressLine {
    const q = sub(p, this.origin);
    const { ex, ey } = this;
    const { a } = this.frame;
    return { x: dot(q, ex), xv: dot(v, ex), y: dot(q, ey), yv: dot(v, ey), h: dot(q, a), hv: dot(v, a) };
  }

  /** Pieces of the body along a line, not yet joined: the tool at each place, and what lies between two. */
  private pieces(p: Vec3, v: Vec3): Interval[] {
    const line = this.inPress(p, v);
    const { sweep, places, flanks, lowest } = this;
    const out = places.map((place) => withinProfile(flanks, lowest, inTool(line, place)));
    if (!sweep) return out;
    for (let i = 0; i + 1 < places.length; i++)
      for (const side of [1, -1] as const)
        out.push(betweenPlaces(sweep, flanks, lowest, [places[i], places[i + 1]], side, line));
    return out;
  }

  stretches(p: Vec3, v: Vec3): readonly NonNullable<Interval>[] {
    return unionOf(this.pieces(p, v));
  }

  contains(p: Vec3): boolean {
    const { places, sweep } = this;
    const line = this.inPress(p, this.frame.a);
    if (places.some((place) => this.holds(line, place))) return true;
    if (!sweep) return false;
    const move = sweep.bottom + sweep.kappa * line.h;
    const s = move === 0 ? -1 : line.x / move;
    if (s < 0 || s > 1) return false;
    return this.holds({ ...line, x: move * s }, placeAt(sweep, s));
  }

  /** Whether the line's starting point lies in the tool at a place of the press. */
  private holds(line: PressLine, place: SweepPlace): boolean {
    const { x0, y0, z0 } = inTool(line, place);
    if (x0 < this.lowest) return false;
    const rho2 = y0 * y0 + z0 * z0;
    return this.flanks.every(({ alpha, beta }) => {
      const r = alpha + beta * x0;
      return r >= 0 && rho2 <= r * r;
    });
  }

  /** Station of a point along the axis before the press, mm coronal of the bottom. */
  station(p: Vec3): number {
    return dot(sub(p, this.origin), this.frame.a);
  }

  /** Distance of a point from the body, negative inside. mm. */
  signed(p: Vec3): number {
    const line = this.inPress(p, this.frame.a);
    const { sweep, places } = this;
    if (!sweep) return this.signedAt(line, places[0]);
    const move = sweep.bottom + sweep.kappa * line.h;
    const nearest = move === 0 ? 0 : clamp(line.x / move, 0, 1);
    const at = (s: number): number => this.signedAt(line, placeAt(sweep, s));
    if (sweep.kappa === 0) return at(nearest);
    let least = Math.min(at(0), at(1), at(nearest));
    golden(
      (s) => {
        const value = at(s);
        least = Math.min(least, value);
        return value;
      },
      Math.max(0, nearest - 0.1),
      Math.min(1, nearest + 0.1),
      14,
    );
    return least;
  }

  private signedAt(line: PressLine, place: SweepPlace): number {
    this.solid ??= solidOf(this.profile);
    const { x0, y0, z0 } = inTool(line, place);
    return this.solid.signed(-x0, Math.sqrt(y0 * y0 + z0 * z0));
  }

  /** Point of the tool's surface at a share of the press, by station (+ coronal of the bottom) and azimuth about the axis (radians). */
  surface(s: number, station: number, radius: number, azimuth: number): Vec3 {
    const { bottom, a } = this.axisAt(s);
    const across = unit(reject(this.ex, a));
    const round = add(scale(across, Math.cos(azimuth)), scale(this.ey, Math.sin(azimuth)));
    return along(along(bottom, a, station), round, radius);
  }
}

/** An outline as a body of revolution with stations apical of its bottom, carried on coronally out of all reach. */
function solidOf({ x, r }: ToolProfile): Revolved {
  const up = [...x].reverse().map((station) => -station);
  const radii = [...r].reverse();
  return new Revolved([-FAR, ...up, -x[0]], [radii[0], ...radii, 0]);
}

/** The body of a pass; null where the kit lacks its tool or its axis meets no bone. */
export function passBody(ridge: Ridge, kit: Kit, pass: Pass): PassBody | null {
  const tool = toolOf(kit, pass.tool);
  const entry = boneEntry(ridge, pass.pose);
  if (!tool || !entry) return null;
  return new PassBody({
    profile: profileOf(tool),
    pose: pass.pose,
    entry,
    depth: pass.depth,
    press: pass.press,
  });
}
