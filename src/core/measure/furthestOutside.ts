import { apart, compass, type Place } from '../geometry/compass.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { Placement } from './placement.ts';
import type { Side } from './reading.ts';
import type { Clearance } from './sheetDistance.ts';
import { type Foot, ROUGH, SheetFoot } from './sheetFoot.ts';
import { COUNT_TOLERANCE, signOf } from './wallProfile.ts';

/** A place of the patch with its distance and the nearest place of the sheet. */
interface Footed extends Place {
  readonly foot: Foot;
}

/** A part of the envelope: between two levels, about an azimuth. */
export interface Patch {
  readonly from: number;
  /** It begins at the shoulder's rim, wherever that is at an azimuth. */
  readonly rim: boolean;
  readonly to: number;
  readonly azimuth: number;
  readonly window: number;
  /** Least depth of an envelope point to count. */
  readonly margin: number;
}

/** Distance of two places of the coarse grid, at most: along the axis mm, about it radians. */
const GRID = { along: 0.27, about: 0.1 } as const;
/** Places that are tried, and places that are climbed from. */
const TRIED = 14;
const CLIMBED = 5;
/** Share of the grid's step at which a climb ends: the first from every start, and the last from the highest tops. */
const COARSE = 1 / 16;
const FINE = 1 / 512;
/** A top that is lower than the highest by more, mm, or nearer to it than so many coarse steps, is not climbed further. */
const LOWER = 0.1;
const BESIDE = 3;
/** Two distances nearer than this are the same, mm. */
const SAME = 1e-7;
/** So often a climb may begin anew with one more foot. */
const MOST_ROUNDS = 12;

/**
 * The envelope point in a patch that stands furthest outside a side's sheet; its distance negative. null: none stands outside.
 *
 * A climb over the patch, with the distance bounded from above by the sheet's points near a few known feet. Where it ends the nearest point of all is
 * looked for: if it is nearer than the feet said, it is one more foot and the climb begins anew; if not, the bound was the distance and the top is one.
 */
export function furthestOutside(at: Placement, side: Side, patch: Patch): Clearance | null {
  const { ridge } = at.anatomy;
  const sign = signOf(side);
  const sheet = new SheetFoot(ridge, sign);
  const surface = new PatchSurface(at, patch);
  const rows = Math.max(6, Math.ceil((patch.to - patch.from) / GRID.along));
  const columns = 2 * Math.ceil(patch.window / GRID.about) + 1;

  const step = { x: 1 / rows, y: patch.window / columns };

  let h = 0;
  /** The patch's point where it stands outside, else null. Leaves in `h` how far across the ridge: a bound of the distance. */
  const outside = (w: number, phi: number): Vec3 | null => {
    const p = surface.at(w, phi);
    if (!p) return null;
    h = ridge.sheet(sign, p[0], p[1], p[2]);
    return ridge.d < 0 || h <= 0 ? null : p;
  };
  const seeds: Place[] = [];
  for (let i = 0; i < columns; i++) {
    const y = patch.window * ((2 * i) / (columns - 1) - 1);
    for (let j = 0; j <= rows; j++) {
      if (outside(j / rows, y)) seeds.push({ x: j / rows, y, value: -h });
    }
  }
  if (seeds.length === 0) return null;

  /** The place with its distance, and the sheet's nearest point to it. */
  const footed = ({ x, y }: Place, fine?: number): Footed => {
    const p = surface.at(x, y);
    const value = p ? -sheet.nearest(p, fine) : Infinity;
    return { x, y, value, foot: sheet.foot };
  };
  const climb = (start: Footed, shrink: number): Footed => {
    const feet: Foot[] = [start.foot];
    let top = start;
    for (let round = 0; round < MOST_ROUNDS; round++) {
      let highest = -top.value;
      const bound = (w: number, phi: number): number => {
        const p = outside(w, phi);
        if (!p) return Infinity;
        // The distance is no more than that: here is no higher place.
        if (h <= highest) return -h;
        let least = Infinity;
        for (let k = feet.length - 1; k >= 0 && least > highest; k--) {
          least = Math.min(least, sheet.descend(p, feet[k], highest, ROUGH));
        }
        if (least > highest) highest = least;
        return -least;
      };
      const found = compass(bound, top, step.x, step.y, shrink, true);
      const end = footed(found);
      if (end.value < top.value) top = end;
      if (end.value <= found.value + SAME) break;
      feet.push(end.foot);
    }
    return top;
  };

  // The places to climb from are chosen by the distance itself: across the ridge is only a bound.
  const tried = apart(seeds, 0.08, 0.3, TRIED).map((seed) => footed(seed, ROUGH));
  const tops = apart(tried, 0.08, 0.3, CLIMBED).map((place) => climb(footed(place), COARSE));
  const high = Math.min(...tops.map(({ value }) => value)) + LOWER;
  const best = apart(tops, BESIDE * COARSE * step.x, BESIDE * COARSE * step.y, CLIMBED)
    .filter(({ value }) => value <= high)
    .map((top) => climb(top, FINE))
    .reduce((a, b) => (b.value < a.value ? b : a));
  const from = surface.at(best.x, best.y);
  if (!from) return null;
  const value = -sheet.nearest(from);
  return { value, from, to: [sheet.m, sheet.f, sheet.c] };
}

/** A patch as a surface: `w` from 0 at the first counting level of an azimuth to 1 at the patch's end, so that both edges are straight. */
class PatchSurface {
  private readonly starts = new Map<number, number>();

  constructor(
    private readonly placement: Placement,
    private readonly patch: Patch,
  ) {}

  /** Point at `w` and the azimuth `phi` from the patch's middle; null outside the patch. Site frame, mm. */
  at(w: number, phi: number): Vec3 | null {
    const { placement, patch } = this;
    if (w < 0 || w > 1 || Math.abs(phi) > patch.window) return null;
    let start = this.starts.get(phi);
    if (start === undefined) {
      start = firstCounting(placement, patch.azimuth + phi, patch);
      this.starts.set(phi, start);
    }
    if (start > patch.to) return null;
    return placement.surface(start + w * (patch.to - start), patch.azimuth + phi);
  }
}

/** The first level of a patch at an azimuth whose envelope point lies deep enough to count; past the patch's end where none does. */
function firstCounting(at: Placement, azimuth: number, patch: Patch): number {
  const { ridge } = at.anatomy;
  const over = (t: number) => ridge.depth(at.surface(t, azimuth)) - patch.margin;
  let lo = patch.rim ? at.rimLevel(azimuth) : patch.from;
  let g = over(lo);
  if (g >= 0 || patch.margin === Number.NEGATIVE_INFINITY) return lo;
  let hi = patch.to;
  let h = over(hi);
  if (h < 0) return hi + 1;
  for (let i = 0; i < 40 && h > COUNT_TOLERANCE / 2; i++) {
    let mid = lo - (g * (hi - lo)) / (h - g);
    if (i % 4 === 3 || !(mid > lo && mid < hi)) mid = (lo + hi) / 2;
    const v = over(mid);
    if (v >= 0) {
      hi = mid;
      h = v;
    } else {
      lo = mid;
      g = v;
    }
  }
  return hi;
}
