import { type Interval, intersect, quadraticInterval } from '../geometry/interval.ts';

/**
 * Outline of a drill or neck cutter in its half-plane: stations along its axis from the bottom of its full diameter (or the neck's notch), + coronal, and radii
 * there, mm. Convex, and carried on coronally without end at the last radius.
 */
export interface ToolProfile {
  readonly x: readonly number[];
  readonly r: readonly number[];
}

/** A bound of the radius, `α + β x`: one stretch of a convex outline carried on both ways. */
export interface Flank {
  readonly alpha: number;
  readonly beta: number;
}

/** The outline's stretches as bounds; the least of them is the radius. */
export function flanksOf({ x, r }: ToolProfile): Flank[] {
  const out: Flank[] = [];
  for (let i = 0; i + 1 < x.length; i++) {
    if (x[i + 1] <= x[i]) continue;
    const beta = (r[i + 1] - r[i]) / (x[i + 1] - x[i]);
    out.push({ alpha: r[i] - beta * x[i], beta });
  }
  out.push({ alpha: r[r.length - 1], beta: 0 });
  return out;
}

/** Radius at a station, 0 below the bottom. */
export function radiusAt(profile: ToolProfile, x: number): number {
  if (x < profile.x[0]) return 0;
  return flanksOf(profile).reduce((least, f) => Math.min(least, f.alpha + f.beta * x), Infinity);
}

/** A straight line in a tool's own coordinates: station along its axis and the two across, as `start + λ rate`. */
export interface ToolLine {
  readonly x0: number;
  readonly xv: number;
  readonly y0: number;
  readonly yv: number;
  readonly z0: number;
  readonly zv: number;
}

/** Where `l0 + l1 λ ≥ 0` within an interval. */
export function clip(interval: Interval, l0: number, l1: number): Interval {
  if (!interval) return null;
  if (Math.abs(l1) < 1e-15) return l0 >= -1e-12 ? interval : null;
  const cut = -l0 / l1;
  const [from, to] =
    l1 > 0 ? [Math.max(interval[0], cut), interval[1]] : [interval[0], Math.min(interval[1], cut)];
  return from < to ? [from, to] : null;
}

/** Where a line lies within one flank: `y² + z² ≤ (α + β x)²`, on the side where `α + β x ≥ 0`. One stretch, since a cone's nappe is convex. */
function withinFlank({ alpha, beta }: Flank, line: ToolLine): Interval {
  const { x0, xv, y0, yv, z0, zv } = line;
  const l0 = alpha + beta * x0;
  const l1 = beta * xv;
  const a = yv * yv + zv * zv - l1 * l1;
  const b = 2 * (y0 * yv + z0 * zv - l0 * l1);
  const c = y0 * y0 + z0 * z0 - l0 * l0;
  if (a > 1e-14) {
    const whole = quadraticInterval(a, b, c);
    return whole && l0 + (l1 * (whole[0] + whole[1])) / 2 >= 0 ? whole : null;
  }
  if (a > -1e-14) return clip(clip([-Infinity, Infinity], -c, -b), l0, l1);
  const between = quadraticInterval(-a, -b, -c);
  if (!between) return clip([-Infinity, Infinity], l0, l1);
  return l1 > 0 ? [between[1], Infinity] : [-Infinity, between[0]];
}

/** Where a line lies in a body of this outline. */
export function withinProfile(flanks: readonly Flank[], bottom: number, line: ToolLine): Interval {
  let out = clip([-Infinity, Infinity], line.x0 - bottom, line.xv);
  for (const flank of flanks) {
    if (!out) return null;
    out = intersect(out, withinFlank(flank, line));
  }
  return out;
}
