import type { Ridge, SideSign } from '../anatomy/ridge.ts';
import { apart, type Place } from '../geometry/compass.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { Clearance } from './sheetDistance.ts';

/** Step of the differences in the sheet's parameters. */
const STEP = 1e-4;
/** A descent ends at a step shorter than this; the distance is exact to its square. */
const EXACT = 1e-8;
/** For a comparison only. */
export const ROUGH = 1e-4;

/** Grid of starts about a point's own section coordinates, mm along the arch and in depth. */
const STARTS_Q = [-3, -1.5, 0, 1.5, 3] as const;
const STARTS_D = [-4.5, -3, -1.5, 0, 1.5, 3, 4.5] as const;

/** A place on the sheet in the parameters of a descent. */
export interface Foot {
  readonly q: number;
  readonly v: number;
}

/**
 * Nearest points of a side's wall sheet (`d ≥ 0`) to points of the site frame: Gauss–Newton in the sheet's two parameters, `q` along the arch and `v`, which runs
 * evenly over the rounded crest, where the sheet is flat and depth is not a good one. A kernel: the last foot is left in `q`, `v` and `m`, `f`, `c`.
 */
export class SheetFoot {
  q = 0;
  v = 0;
  m = 0;
  f = 0;
  c = 0;
  private readonly rho: number;

  constructor(
    private readonly ridge: Ridge,
    private readonly side: SideSign,
  ) {
    this.rho = ridge.rho;
  }

  get foot(): Foot {
    return { q: this.q, v: this.v };
  }

  private depthBy(v: number): number {
    if (v <= 0) return 0;
    return v < Math.PI / 2 ? this.rho * (1 - Math.cos(v)) : this.rho * (1 + v - Math.PI / 2);
  }

  private parameterOf(d: number): number {
    if (d <= 0) return 0;
    return d < this.rho ? Math.acos(1 - d / this.rho) : d / this.rho - 1 + Math.PI / 2;
  }

  /** Leaves the point at a depth of the section in hand in the ridge's `m`, `f`, `c`. */
  private pointAt(d: number): void {
    const { ridge, side } = this;
    ridge.rowPoint(side * ridge.rowHalf(side, d) * ridge.cap(d), d);
  }

  /**
   * Distance from `p` to the sheet by a descent from a foot: no less than the least. Gives up as soon as it is no more than `enough`. `fine`: step at which it ends.
   */
  descend(p: Vec3, from: Foot, enough = 0, fine = EXACT): number {
    const { ridge } = this;
    const [pm, pf, pc] = p;
    const least2 = enough * enough;
    let { q, v } = from;
    ridge.row(q);
    this.pointAt(this.depthBy(v));
    let { m, f, c } = ridge;
    let least = (pm - m) ** 2 + (pf - f) ** 2 + (pc - c) ** 2;
    for (let i = 0; i < 40 && least > least2; i++) {
      // The section at `q` is in hand.
      this.pointAt(this.depthBy(v + STEP));
      const vm = ridge.m - m;
      const vf = ridge.f - f;
      const vc = ridge.c - c;
      ridge.row(q + STEP);
      this.pointAt(this.depthBy(v));
      const qm = ridge.m - m;
      const qf = ridge.f - f;
      const qc = ridge.c - c;
      const a11 = qm * qm + qf * qf + qc * qc;
      const a12 = qm * vm + qf * vf + qc * vc;
      const a22 = vm * vm + vf * vf + vc * vc;
      const b1 = qm * (pm - m) + qf * (pf - f) + qc * (pc - c);
      const b2 = vm * (pm - m) + vf * (pf - f) + vc * (pc - c);
      const det = a11 * a22 - a12 * a12;
      let dq = (STEP * (b1 * a22 - b2 * a12)) / det;
      let dv = (STEP * (b2 * a11 - b1 * a12)) / det;
      let nearer = false;
      for (let k = 0; k < 12 && !nearer; k++) {
        const nextV = Math.max(0, v + dv);
        ridge.row(q + dq);
        this.pointAt(this.depthBy(nextV));
        const value = (pm - ridge.m) ** 2 + (pf - ridge.f) ** 2 + (pc - ridge.c) ** 2;
        if (value < least) {
          least = value;
          m = ridge.m;
          f = ridge.f;
          c = ridge.c;
          q += dq;
          v = nextV;
          nearer = true;
        } else {
          dq /= 2;
          dv /= 2;
        }
      }
      if (!nearer || Math.abs(dq) + Math.abs(dv) < fine) break;
    }
    this.q = q;
    this.v = v;
    this.m = m;
    this.f = f;
    this.c = c;
    return Math.sqrt(least);
  }

  /**
   * Distance from `p` to the sheet, by descents from the best places of a coarse grid about the point's own section coordinates: over an undercut, or beside the
   * neighbours' broader ridge, there are several near points, and the nearest counts.
   */
  nearest(p: Vec3, fine = EXACT): number {
    const { ridge } = this;
    ridge.locate(p[0], p[1], p[2]);
    const q0 = ridge.q;
    const d0 = Math.max(ridge.d, 0.02);
    const places: Place[] = [];
    for (const dq of STARTS_Q) {
      ridge.row(q0 + dq);
      for (const dd of STARTS_D) {
        const d = d0 + dd;
        if (d < 0) continue;
        this.pointAt(d);
        const value = (p[0] - ridge.m) ** 2 + (p[1] - ridge.f) ** 2 + (p[2] - ridge.c) ** 2;
        places.push({ x: q0 + dq, y: d, value });
      }
    }
    let best = { q: 0, v: 0, m: p[0], f: p[1], c: p[2], value: Number.NaN };
    for (const { x, y } of apart(places, 1.4, 1.4, 3)) {
      const value = this.descend(p, { q: x, v: this.parameterOf(y) }, 0, fine);
      if (!(value >= best.value)) best = { q: this.q, v: this.v, m: this.m, f: this.f, c: this.c, value };
    }
    Object.assign(this, { q: best.q, v: best.v, m: best.m, f: best.f, c: best.c });
    return best.value;
  }
}

/** Nearest point of the sheet of a side to a point of the site frame. */
export function nearestOnSheet(ridge: Ridge, side: SideSign, p: Vec3): Clearance {
  const sheet = new SheetFoot(ridge, side);
  const value = sheet.nearest(p);
  return { value, from: p, to: [sheet.m, sheet.f, sheet.c] };
}
