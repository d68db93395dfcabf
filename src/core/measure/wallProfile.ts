import type { SideSign } from '../anatomy/ridge.ts';
import { golden } from '../geometry/golden.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from './placement.ts';
import type { ProfileSample, Side } from './reading.ts';
import { WallRay } from './wallRay.ts';

/** Distance between the levels of a profile, mm. */
const PITCH = 0.1;
export const COUNT_TOLERANCE = 1e-6;

/** A level of a profile with what else its ray found: the points it was taken between, site frame, mm. */
export interface RaySample extends ProfileSample {
  readonly dIn: number;
  readonly dOut: number;
  readonly from: Vec3 | null;
  readonly to: Vec3 | null;
}

export const signOf = (side: Side): SideSign => (side === 'facial' ? 1 : -1);

/** Azimuth of a side's direction `±e_f`. */
export const azimuthOf = (side: Side): number => (side === 'facial' ? 0 : Math.PI);

/** Rays of one side of one placement (rules M1, M2). */
export class SideRays {
  private readonly ray: WallRay;
  private readonly v: Vec3;
  readonly sign: SideSign;
  readonly rim: number;

  constructor(
    private readonly at: Placement,
    readonly side: Side,
  ) {
    this.sign = signOf(side);
    this.ray = new WallRay(at, this.sign);
    const { ef } = at;
    this.v = [this.sign * ef[0], this.sign * ef[1], this.sign * ef[2]];
    this.rim = at.rimLevel(azimuthOf(side));
  }

  /** The ray at level `t`, with the ends of the measurement. `margin`: least depth of both ends to count, mm. */
  at1(t: number, margin: number): RaySample {
    return this.sample(t, margin, Number.NaN, true);
  }

  private sample(t: number, margin: number, guess: number, points: boolean): RaySample {
    const p = this.at.axisPoint(t);
    const r = this.at.radius(t);
    if (!points && this.depth(p, r) < 0) return aboveCrest(t);
    const hit = this.ray.cast(p, this.v, r, guess);
    const { dIn, dOut, gap, exit, wall } = this.ray;
    if (!hit)
      return { level: t, wall: null, gap: 0, counts: false, dIn, dOut: Number.NaN, from: null, to: null };
    return {
      level: t,
      wall,
      gap,
      counts: dIn >= margin - COUNT_TOLERANCE && dOut >= margin - COUNT_TOLERANCE,
      dIn,
      dOut,
      from: points ? along(p, this.v, r) : null,
      to: points ? along(p, this.v, exit) : null,
    };
  }

  private depth(p: Vec3, r: number): number {
    const { ridge } = this.at.anatomy;
    ridge.locate(p[0] + r * this.v[0], p[1] + r * this.v[1], p[2] + r * this.v[2]);
    return ridge.d;
  }

  /** The whole profile from the rim to the apical rim, coronal first: every 0.1 mm, the envelope's corners, and the exact ends of the counting window. */
  profile(): RaySample[] {
    const { tP, tA, crestMargin, shape } = this.at;
    const levels = [this.rim, tA];
    for (let i = Math.ceil(this.rim / PITCH); i * PITCH < tA; i++) levels.push(i * PITCH);
    for (const x of [0, shape.transmucosalLength, this.at.length - shape.taperLength]) {
      if (tP + x > this.rim && tP + x < tA) levels.push(tP + x);
    }
    const sorted = levels.sort((a, b) => b - a).filter((t, i) => i === 0 || t !== levels[i - 1]);
    const out: RaySample[] = [];
    const ahead = new Extrapolation();
    for (const t of sorted) {
      const s = this.sample(t, crestMargin, ahead.at(t), false);
      const last = out[out.length - 1];
      if (last && last.counts !== s.counts && last.wall !== null && s.wall !== null)
        out.push(this.windowEnd(last, s));
      out.push(s);
      if (s.wall === null) ahead.forget();
      else ahead.push(t, this.ray.exit);
    }
    return out.reverse();
  }

  /** The level between a counting and a non-counting one at which the shallower end lies exactly at the margin. */
  private windowEnd(a: RaySample, b: RaySample): RaySample {
    const margin = this.at.crestMargin;
    const over = (s: RaySample) => Math.min(s.dIn, s.dOut) - margin;
    let good = a.counts ? a : b;
    let bad = a.counts ? b : a;
    for (
      let i = 0;
      i < 40 && over(good) > COUNT_TOLERANCE / 2 && Math.abs(good.level - bad.level) > 1e-9;
      i++
    ) {
      const g = over(good);
      const h = over(bad);
      let w = g / (g - h);
      if (!(w > 0.01 && w < 0.99) || i % 6 === 5) w = 0.5;
      const s = this.sample(good.level + w * (bad.level - good.level), margin, Number.NaN, false);
      if (s.counts && s.wall !== null) good = s;
      else bad = s;
    }
    return good;
  }

  /** The least counting value, its parabola's foot looked at between the levels; null where none counts. */
  thinnest(profile: readonly RaySample[]): RaySample | null {
    let best = -1;
    for (let i = 0; i < profile.length; i++) {
      const s = profile[i];
      if (s.counts && s.wall !== null && (best < 0 || s.wall < (profile[best].wall ?? Infinity))) best = i;
    }
    if (best < 0) return null;
    let found = this.at1(profile[best].level, this.at.crestMargin);
    const lower = (s: RaySample) => {
      if (s.counts && s.wall !== null && s.wall < (found.wall ?? Infinity)) found = s;
      return s.counts && s.wall !== null ? s.wall : Infinity;
    };
    const before = profile[best - 1];
    const after = profile[best + 1];
    if (before?.counts && after?.counts)
      lower(this.at1(vertex(before, profile[best], after), this.at.crestMargin));
    // The edge of a void makes a kink between the levels, where no parabola fits.
    if (before && after && (before.gap > 0 || after.gap > 0)) {
      golden((t) => lower(this.at1(t, this.at.crestMargin)), before.level, after.level, 16);
    }
    return found;
  }
}

/** Where the next level's crossing is expected, from up to three before it (Lagrange). */
class Extrapolation {
  private n = 0;
  private readonly t = [0, 0, 0];
  private readonly y = [0, 0, 0];

  forget(): void {
    this.n = 0;
  }

  push(t: number, y: number): void {
    this.t[2] = this.t[1];
    this.t[1] = this.t[0];
    this.t[0] = t;
    this.y[2] = this.y[1];
    this.y[1] = this.y[0];
    this.y[0] = y;
    this.n = Math.min(3, this.n + 1);
  }

  /** NaN where nothing is known. */
  at(t: number): number {
    const [a, b, c] = this.t;
    const [ya, yb, yc] = this.y;
    if (this.n === 0) return Number.NaN;
    if (this.n === 1) return ya;
    const line = ya + ((yb - ya) * (t - a)) / (b - a);
    if (this.n === 2) return line;
    const bend = ((yc - ya) / (c - a) - (yb - ya) / (b - a)) / (c - b);
    return line + bend * (t - a) * (t - b);
  }
}

/** A level whose surface point lies above the crest: it can never count, so the profile leaves it blank. */
const aboveCrest = (level: number): RaySample => ({
  level,
  wall: null,
  gap: 0,
  counts: false,
  dIn: Number.NaN,
  dOut: Number.NaN,
  from: null,
  to: null,
});

/** Foot of the parabola through three samples, kept between the outer two. */
function vertex(a: RaySample, b: RaySample, c: RaySample): number {
  const [x, y, z] = [a.wall ?? 0, b.wall ?? 0, c.wall ?? 0];
  const p = b.level - a.level;
  const q = c.level - b.level;
  const den = q * (x - y) + p * (z - y);
  if (!(den > 1e-12)) return b.level;
  const shift = (q * q * (x - y) - p * p * (z - y)) / (2 * den);
  return b.level + Math.max(-p, Math.min(q, shift));
}
