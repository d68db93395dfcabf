import type { Ridge, SideSign } from '../anatomy/ridge.ts';
import { coveredLength, type Interval } from '../geometry/interval.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from './placement.ts';

/** How far a ray is followed, mm. */
const REACH = 30;
/** Least step of the march that finds the first crossing where the line may cross more than once, mm. */
const STEP = 0.2;
/** So far outside the sheet a line that goes on outward never comes back, mm. */
const LOST = 6;
/** Bound of the sheet function's slope along a ray below the crest's rounding that the strides rest on. */
const STEEPEST = 2.5;
const EXACT = 1e-8;
/** From this depth on a guess is trusted: the rounded crest is convex, so a ray from within leaves it once. mm. */
const SHALLOWEST = 0.3;

/**
 * One ray of a wall (rule M1): from the axis across it, at any level and azimuth. A kernel with scratch results: after `cast` returned
 * true, `wall` (mm), `gap`, `exit` (where on the ray the sheet is crossed) and the depths of both ends `dIn`, `dOut` hold.
 */
export class WallRay {
  wall = 0;
  gap = 0;
  exit = 0;
  dIn = 0;
  dOut = 0;
  /** The ray left through the crest, or never met the sheet. */
  throughCrest = false;
  private readonly ridge: Ridge;
  private uIn = 0;
  private px = 0;
  private py = 0;
  private pz = 0;
  private vx = 0;
  private vy = 0;
  private vz = 0;

  constructor(
    private readonly at: Placement,
    private readonly side: SideSign,
  ) {
    this.ridge = at.anatomy.ridge;
  }

  private sheet(l: number): number {
    return this.ridge.sheet(this.side, this.px + l * this.vx, this.py + l * this.vy, this.pz + l * this.vz);
  }

  /**
   * Cast from the axis point `p` along the unit `v`, the envelope's surface at `r`. `guess`: where the crossing is expected (NaN: not known),
   * from a neighbouring level.
   */
  cast(p: Vec3, v: Vec3, r: number, guess: number): boolean {
    [this.px, this.py, this.pz] = p;
    [this.vx, this.vy, this.vz] = v;
    this.throughCrest = false;
    this.gap = 0;
    const h0 = this.sheet(r);
    const d0 = this.ridge.d;
    this.uIn = this.side * this.ridge.u;
    this.dIn = d0;
    if (d0 >= 0 && h0 < 0) {
      const found = this.followGuess(r, h0, d0, guess) || this.marchOut(r, h0, d0);
      if (!found) return false;
      this.wall = this.bone(p, v, r, this.exit);
      return true;
    }
    if (!this.nearest(r, h0, d0)) return false;
    this.wall = this.exit < r ? this.exit - r : this.bone(p, v, r, this.exit);
    return true;
  }

  /** Secant from the guess. Sound where the sheet is crossed steeply on the whole way: otherwise it gives up and the march decides. */
  private followGuess(r: number, h0: number, d0: number, guess: number): boolean {
    if (!(guess > r) || d0 < SHALLOWEST) return false;
    let l0 = r;
    let f0 = h0;
    let l1 = guess;
    let f1 = this.sheet(l1);
    for (let i = 0; i < 12; i++) {
      if (Math.abs(f1) < EXACT) {
        if (this.ridge.d < 0 || l1 <= r) return false;
        this.exit = l1;
        this.dOut = this.ridge.d;
        return true;
      }
      const slope = (f1 - f0) / (l1 - l0);
      if (!(slope > 0.3)) return false;
      const next = l1 - f1 / slope;
      l0 = l1;
      f0 = f1;
      l1 = next;
      f1 = this.sheet(l1);
    }
    return false;
  }

  /** How far the march may go from a point without passing a crossing: the sheet's function changes no faster than the ridge's bound. */
  private stride(f: number, d: number): number {
    if (d < 0) return Math.max(STEP, -d / 1.5);
    if (d < this.ridge.rho + 1) return STEP;
    const reach = Math.abs(f) / STEEPEST;
    return Math.max(STEP, Math.min(reach, (d - this.ridge.rho) / 1.5));
  }

  private marchOut(r: number, h0: number, d0: number): boolean {
    let l0 = r;
    let f0 = h0;
    let dPrev = d0;
    while (l0 < r + REACH) {
      const l = l0 + this.stride(f0, dPrev);
      const f = this.sheet(l);
      const d = this.ridge.d;
      if (d < 0) return this.crossCrest(l0, f0, dPrev, l, d);
      if (f >= 0) return this.close(l0, f0, l, f);
      l0 = l;
      f0 = f;
      dPrev = d;
    }
    this.throughCrest = true;
    return false;
  }

  /** Between `l0` (inside) and `l1` (above the crest line): either the sheet was crossed first, or the ray left through the crest. */
  private crossCrest(l0: number, f0: number, d0: number, l1: number, d1: number): boolean {
    if (this.beforeEdge(l0, f0, d0, l1, d1)) return true;
    this.throughCrest = true;
    return false;
  }

  /** Between `l0` (`d ≥ 0`) and `l1` (above the crest line): is the sheet crossed before the crest line's level? Then closes on it. */
  private beforeEdge(l0: number, f0: number, d0: number, l1: number, d1: number): boolean {
    let lo = l0;
    let hi = l1;
    let dLo = d0;
    let dHi = d1;
    for (let i = 0; i < 40 && Math.abs(hi - lo) > 1e-10 && dLo !== 0; i++) {
      const mid = i % 4 === 3 ? (lo + hi) / 2 : lo + ((hi - lo) * dLo) / (dLo - dHi);
      this.sheet(mid);
      if (this.ridge.d >= 0) {
        lo = mid;
        dLo = this.ridge.d;
      } else {
        hi = mid;
        dHi = this.ridge.d;
      }
    }
    const f = this.sheet(lo);
    return f < 0 !== f0 < 0 && this.close(l0, f0, lo, f);
  }

  /** Bracketed root of the sheet between `l0` and `l1` (signs differ): Illinois false position, then the end's depth. */
  private close(l0: number, f0: number, l1: number, f1: number): boolean {
    let a = l0;
    let fa = f0;
    let b = l1;
    let fb = f1;
    let m = b;
    for (let i = 0; i < 80; i++) {
      m = i % 8 === 7 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
      const f = this.sheet(m);
      if (Math.abs(f) < EXACT || Math.abs(b - a) < 1e-13) break;
      if (f > 0 === fb > 0) {
        b = m;
        fb = f;
        fa /= 2;
      } else {
        a = b;
        fa = fb;
        b = m;
        fb = f;
      }
    }
    this.exit = m;
    this.dOut = this.ridge.d;
    return true;
  }

  /** The surface point is not inside: the nearest crossing, looked for both ways (rule M1). */
  private nearest(r: number, h0: number, d0: number): boolean {
    const back = this.marchFrom(r, h0, d0, -1, REACH);
    const exit = this.exit;
    const dOut = this.dOut;
    const front = this.marchFrom(r, h0, d0, 1, back ? r - exit : REACH);
    if (!front && back) {
      this.exit = exit;
      this.dOut = dOut;
    }
    this.throughCrest = !front && !back;
    return front || back;
  }

  /** First crossing from `r` one way, no further than `reach`. */
  private marchFrom(r: number, h0: number, d0: number, way: 1 | -1, reach: number): boolean {
    let gone = 0;
    let f0 = h0;
    let dPrev = d0;
    while (gone < reach) {
      const next = Math.min(reach, gone + this.stride(f0, dPrev));
      const f = this.sheet(r + way * next);
      const d = this.ridge.d;
      if (this.straddles(r + way * gone, f0, dPrev, r + way * next, f, d)) return true;
      // Far outside and going away, or high above the crest and rising: there is nothing more to meet.
      if ((d < -2 && d < dPrev) || (f > LOST && f > f0)) return false;
      gone = next;
      f0 = f;
      dPrev = d;
    }
    return false;
  }

  private straddles(l0: number, f0: number, d0: number, l1: number, f1: number, d1: number): boolean {
    if (d0 < 0 && d1 < 0) return false;
    if (d0 >= 0 && d1 >= 0) return f0 < 0 !== f1 < 0 && this.close(l0, f0, l1, f1);
    return d0 >= 0 ? this.beforeEdge(l0, f0, d0, l1, d1) : this.beforeEdge(l1, f1, d1, l0, d0);
  }

  /** Bone between `from` and `to` on the ray: the ridge solid less the voids; leaves the void's length in `gap`. */
  private bone(p: Vec3, v: Vec3, from: number, to: number): number {
    // On its own side of the mid-line and inside the sheet, the surface lies inside the ridge solid.
    const start = this.uIn >= 0 && this.dIn >= 0 ? from : this.beforeSolid(from, to);
    if (!this.at.hasVoids) return to - start;
    const parts: Interval[] = this.at.voids(p, v);
    this.gap = coveredLength(parts, start, to);
    return to - start - this.gap;
  }

  /** Where the ridge solid begins between `from` and `to`: at `from` unless the surface stands outside the other sheet or above the crest. */
  private beforeSolid(from: number, to: number): number {
    const solid = (l: number) => {
      const p = along([this.px, this.py, this.pz], [this.vx, this.vy, this.vz], l);
      return this.ridge.solid(p[0], p[1], p[2]);
    };
    if (solid(from) <= 0) return from;
    let out = from;
    let inside = to - 1e-9;
    for (let l = from; l < to; l += 0.05) {
      if (solid(l) <= 0) {
        inside = l;
        break;
      }
      out = l;
    }
    for (let i = 0; i < 40; i++) {
      const mid = (out + inside) / 2;
      if (solid(mid) <= 0) inside = mid;
      else out = mid;
    }
    return inside;
  }
}
