import { MonotoneCubic } from '../geometry/monotone.ts';
import { rad, smoothstep, type Vec3 } from '../geometry/vec.ts';
import { type Arch, fromArch } from './arch.ts';
import type { Neighbour, RidgeNumbers, WidthEntry } from './site.ts';

/** Where an eminence runs (rule S4): `q = q0 + slope (d − d0)`, over the depths `d0 … d0 + length`, mm. */
export interface RootTrace {
  readonly q0: number;
  readonly slope: number;
  readonly d0: number;
  readonly length: number;
}

/** What the ridge needs of a neighbour. */
export type RidgeSide = Pick<Neighbour, 'boneLevel' | 'ridge'>;

/** Where else the ridge follows the teeth: the roots that stand out of it, and the places between the neighbours and the teeth beyond. */
export interface RidgeTraces {
  readonly roots: readonly RootTrace[];
  /** Arch places of the neighbours' outer contacts. */
  readonly outer: readonly number[];
}

/** Half of the length along the arch over which the bone rises between two teeth, mm. */
const SCALLOP_HALF = 3;

/** Places of the slope table, 1 mm each, about the site. */
const BINS = 32;

interface SideCurves {
  readonly facial: MonotoneCubic;
  readonly palatal: MonotoneCubic;
}

/** +1 facial, −1 palatal. */
export type SideSign = 1 | -1;

/**
 * The ridge's surface (rules S1–S6): the one place where entered numbers become bone. Every reading and every mesh asks here.
 *
 * Points are of the site frame `(m, f, c)`, mm. `locate` leaves the section coordinates of the last point in `q` (along the
 * arch), `u` (across the ridge's own axis, + facial) and `d` (depth along it): a kernel, written for speed, so not re-entrant.
 */
export class Ridge {
  q = 0;
  u = 0;
  d = 0;
  /** Last point of {@link sheetAt}. */
  m = 0;
  f = 0;
  c = 0;
  /** Across the arch, of the last {@link rowPoint}. */
  e = 0;
  readonly rho: number;
  /** Level of the floor, `c`. */
  readonly floor: number;
  readonly cos: number;
  readonly sin: number;
  /** The field adds a loss of its own; false where the widths already contain it (rule S3). */
  readonly undercutApplies: boolean;
  private readonly siteF: MonotoneCubic;
  private readonly siteP: MonotoneCubic;
  private readonly mesial: SideCurves;
  private readonly distal: SideCurves;
  /** Cosine and sine of the ridge's inclination at the last place looked at. */
  private cosAt: number;
  private sinAt: number;
  /** The section that {@link row} took in hand: place, the neighbour's share, crest, inclination, the arch's turn and fall. */
  private rowQ = 0;
  private rowShare = 0;
  private rowCrest = 0;
  private rowCos = 1;
  private rowSin = 0;
  private rowTurn = 0;
  private rowFall = 0;
  private readonly straight: boolean;
  private readonly radius: number;
  private readonly from: number;
  private readonly to: number;
  private readonly cutDepth: number;
  private readonly cutLevel: number;
  private readonly cutHalf: number;
  private readonly bulge: number;
  private readonly bulgeHalf: number;
  /** Between these places no eminence reaches. */
  private readonly bulgeMesial: number;
  private readonly bulgeDistal: number;
  /** Between these places the crest does not rise between two teeth. */
  private readonly scallopMesial: number;
  private readonly scallopDistal: number;
  /** Half-width at the last point of {@link solid}, mm. */
  w = 0;
  /** Greatest slope anywhere and the table of slopes along the arch: measured when first asked for, 0 until then. */
  private steepest = 0;
  private readonly slopes = new Float64Array(BINS);

  constructor(
    readonly arch: Arch,
    readonly numbers: RidgeNumbers,
    private readonly sides: { readonly mesial: RidgeSide; readonly distal: RidgeSide },
    private readonly traces: RidgeTraces,
  ) {
    const { roots } = traces;
    const { undercut, inclination, crestRounding } = numbers;
    this.radius = arch.radius;
    this.straight = arch.radius === Infinity;
    this.rho = crestRounding;
    this.cos = Math.cos(rad(inclination));
    this.sin = Math.sin(rad(inclination));
    this.cosAt = this.cos;
    this.sinAt = this.sin;
    this.floor = -numbers.height * this.cos;
    this.from = numbers.blend.from;
    this.to = numbers.blend.to;
    this.undercutApplies =
      undercut.depth > 0 &&
      !numbers.widths.some((w) => Math.abs(w.depth - undercut.level) < undercut.halfHeight / 2);
    this.cutDepth = this.undercutApplies ? undercut.depth : 0;
    this.cutLevel = undercut.level;
    this.cutHalf = undercut.halfHeight;
    this.bulge = roots.length === 0 ? 0 : numbers.eminence.height;
    this.bulgeHalf = numbers.eminence.halfWidth;
    const reach = roots.flatMap((r) => [r.q0, r.q0 + r.slope * r.length]);
    this.bulgeMesial = Math.min(Infinity, ...reach.filter((q) => q > 0)) - this.bulgeHalf;
    this.bulgeDistal = Math.max(-Infinity, ...reach.filter((q) => q <= 0)) + this.bulgeHalf;
    this.scallopMesial = Math.min(...traces.outer.filter((q) => q > 0)) - SCALLOP_HALF;
    this.scallopDistal = Math.max(...traces.outer.filter((q) => q <= 0)) + SCALLOP_HALF;
    const curve = (entries: readonly WidthEntry[], pick: (w: WidthEntry) => number, own: boolean) =>
      new MonotoneCubic(
        entries.map((w) => w.depth),
        entries.map((w) => pick(w) / this.cap(w.depth) + (own ? this.loss(w.depth) : 0)),
      );
    this.siteF = curve(numbers.widths, (w) => w.facial, true);
    this.siteP = curve(numbers.widths, (w) => w.palatal, false);
    const about = ({ ridge }: RidgeSide): SideCurves => ({
      facial: curve(ridge.widths, (w) => w.facial, false),
      palatal: curve(ridge.widths, (w) => w.palatal, false),
    });
    this.mesial = about(sides.mesial);
    this.distal = about(sides.distal);
  }

  /** Rounding of the crest (rule S2), 0 at the crest, 1 from `rho` down. */
  cap(d: number): number {
    if (d >= this.rho) return 1;
    if (d <= 0) return 0;
    const x = 1 - d / this.rho;
    return Math.sqrt(1 - x * x);
  }

  private loss(d: number): number {
    if (this.cutDepth === 0) return 0;
    const x = (d - this.cutLevel) / this.cutHalf;
    if (x <= -1 || x >= 1) return 0;
    const w = 1 - x * x;
    return this.cutDepth * w * w * w;
  }

  /** Upper bound of how fast the solid's function changes anywhere, per mm. */
  get steepCrest(): number {
    if (this.steepest === 0) this.measureSteepness();
    return this.steepest;
  }

  /** Fills the table of slopes along the arch, by differences over the ridge, and finds the greatest slope with the crest's rounding. */
  private measureSteepness(): void {
    let widest = 0;
    const step = 0.4;
    const count = Math.ceil((this.numbers.height + 4) / step) + 3;
    const rows = Array.from({ length: 4 }, () => new Float64Array(count));
    for (const side of [1, -1] as const) {
      for (let i = 0; i < BINS; i++) {
        let places = 0;
        let next = i - BINS / 2;
        for (; next < i + 1 - BINS / 2; next += step) this.fillHalves(rows[places++], side, next, step);
        this.fillHalves(rows[places], side, next, step);
        for (let k = 0; k < places; k++) {
          for (let j = 0, d = 0; d <= this.numbers.height + 4; j++, d += step) {
            const w = rows[k][j];
            const slope = Math.hypot(rows[k][j + 1] - w, rows[k + 1][j] - w) / step;
            this.slopes[i] = Math.max(this.slopes[i], 1.1 * (1 + slope));
            if (d <= this.rho) widest = Math.max(widest, w);
          }
        }
      }
    }
    this.steepest = Math.max(...this.slopes) + widest / this.rho;
  }

  /** Half-widths of a side at `q` at depths `step` apart. */
  private fillHalves(out: Float64Array, side: SideSign, q: number, step: number): void {
    const s = smoothstep(q < 0 ? -q : q, this.from, this.to);
    for (let j = 0, d = 0; j < out.length; j++, d += step) out[j] = this.mixed(side, q, s, d);
  }

  /** Upper bound of the solid's slope within `reach` mm of the point last looked at by {@link solid}, per mm: steep only within the crest's rounding. */
  steepWithin(reach: number): number {
    const most = this.steepCrest;
    const from = Math.max(0, Math.floor(this.q - reach + BINS / 2));
    const to = Math.min(BINS - 1, Math.floor(this.q + reach + BINS / 2));
    let slope = 1.1;
    for (let i = from; i <= to; i++) if (this.slopes[i] > slope) slope = this.slopes[i];
    if (this.d - 1.3 * reach > this.rho) return slope;
    return Math.min(most, slope + (this.w + reach) / this.rho);
  }

  /** Crest height `h(q)` above the site's crest point, mm. */
  crest(q: number): number {
    let h =
      q >= 0
        ? this.sides.mesial.boneLevel * smoothstep(q, this.from, this.to)
        : this.sides.distal.boneLevel * smoothstep(-q, this.from, this.to);
    if (q < this.scallopMesial && q > this.scallopDistal) return h;
    for (const place of this.traces.outer) {
      const x = (q - place) / SCALLOP_HALF;
      if (x <= -1 || x >= 1) continue;
      const w = 1 - x * x;
      h += this.numbers.scallop * w * w * w;
    }
    return h;
  }

  /** Inclination `ι(q)` (rule S1), left in `cosAt`, `sinAt`. */
  private leanAt(q: number): void {
    const s = smoothstep(q < 0 ? -q : q, this.from, this.to);
    if (s === 0) {
      this.cosAt = this.cos;
      this.sinAt = this.sin;
      return;
    }
    const site = this.numbers.inclination;
    const side = q >= 0 ? this.sides.mesial : this.sides.distal;
    const lean = rad(site + s * (side.ridge.inclination - site));
    this.cosAt = Math.cos(lean);
    this.sinAt = Math.sin(lean);
  }

  /** `W` of a side (before the crest's rounding), mm, at arch place `q` and depth `d`. */
  half(side: SideSign, q: number, d: number): number {
    return this.mixed(side, q, smoothstep(q < 0 ? -q : q, this.from, this.to), d);
  }

  /** Rule S2 to S4 at arch place `q`, where the neighbour's share of the widths is `s`. */
  private mixed(side: SideSign, q: number, s: number, d: number): number {
    if (side < 0) {
      if (s === 0) return this.siteP.at(d);
      const full = (q < 0 ? this.distal : this.mesial).palatal.at(d);
      return s === 1 ? full : full + (1 - s) * (this.siteP.at(d) - full);
    }
    let w = s === 1 ? 0 : (1 - s) * (this.siteF.at(d) - this.loss(d));
    if (s > 0) w += s * (q < 0 ? this.distal : this.mesial).facial.at(d);
    if (this.bulge > 0 && (q > this.bulgeMesial || q < this.bulgeDistal)) {
      for (const r of this.traces.roots) {
        const x = (q - r.q0 - r.slope * (d - r.d0)) / this.bulgeHalf;
        if (x <= -1 || x >= 1) continue;
        const z = (2 * (d - r.d0)) / r.length - 1;
        if (z <= -1 || z >= 1) continue;
        const g = (1 - x * x) * (1 - z * z);
        w += this.bulge * g * g * g;
      }
    }
    return w;
  }

  /** Takes a section of the ridge in hand: what only depends on the arch place is found once for {@link rowHalf} and {@link rowPoint}. */
  row(q: number): void {
    this.rowQ = q;
    this.rowShare = smoothstep(q < 0 ? -q : q, this.from, this.to);
    this.rowCrest = this.crest(q);
    this.leanAt(q);
    this.rowCos = this.cosAt;
    this.rowSin = this.sinAt;
    const phi = q / this.radius;
    const half = Math.sin(phi / 2);
    this.rowTurn = Math.sin(phi);
    this.rowFall = 2 * half * half;
  }

  /** {@link half} in the section in hand. */
  rowHalf(side: SideSign, d: number): number {
    return this.mixed(side, this.rowQ, this.rowShare, d);
  }

  /** Point of the section in hand at `u` and `d`, no further palatally of the arch than `least` (`e`); left in `m`, `f`, `c`, and in `e`. */
  rowPoint(u: number, d: number, least = -Infinity): void {
    const e = Math.max(least, u * this.rowCos - d * this.rowSin);
    this.e = e;
    this.c = -u * this.rowSin - d * this.rowCos + this.rowCrest;
    this.m = this.straight ? this.rowQ : (this.radius + e) * this.rowTurn;
    this.f = this.straight ? e : e - (this.radius + e) * this.rowFall;
  }

  /** Section coordinates of a point, left in `q`, `u`, `d`. */
  locate(m: number, f: number, c: number): void {
    let e = f;
    let q = m;
    if (!this.straight) {
      const y = f + this.radius;
      q = this.radius * Math.atan2(m, y);
      e = Math.sqrt(m * m + y * y) - this.radius;
    }
    const y = c - this.crest(q);
    this.leanAt(q);
    this.q = q;
    this.u = e * this.cosAt - y * this.sinAt;
    this.d = -e * this.sinAt - y * this.cosAt;
  }

  /** Depth below the crest along the ridge's own axis, mm. */
  depth(p: Vec3): number {
    this.locate(p[0], p[1], p[2]);
    return this.d;
  }

  /** The solid's function `k` (rule S5) at a point: ≤ 0 inside the ridge; mm, near the distance close to the surface. */
  solid(m: number, f: number, c: number): number {
    this.locate(m, f, c);
    const w = this.half(this.u > 0 ? 1 : -1, this.q, this.d);
    this.w = w;
    if (this.d >= this.rho) return (this.u < 0 ? -this.u : this.u) - w;
    const x = this.u / w;
    const z = 1 - this.d / this.rho;
    return w * (Math.sqrt(x * x + z * z) - 1);
  }

  /** The sheet's function of a side at a point (rule S5): `±u − W cap`, < 0 toward the bone; only meant where `d ≥ 0`. Leaves `q, u, d`. */
  sheet(side: SideSign, m: number, f: number, c: number): number {
    this.locate(m, f, c);
    return side * this.u - this.half(side, this.q, this.d) * this.cap(this.d);
  }

  /** As {@link sheetPoint}, without an object: the point is left in `m`, `f`, `c`. */
  sheetAt(side: SideSign, q: number, d: number): void {
    const u = side * this.half(side, q, d) * this.cap(d);
    this.leanAt(q);
    const e = u * this.cosAt - d * this.sinAt;
    this.c = -u * this.sinAt - d * this.cosAt + this.crest(q);
    if (this.straight) {
      this.m = q;
      this.f = e;
      return;
    }
    const phi = q / this.radius;
    const half = Math.sin(phi / 2);
    this.m = (this.radius + e) * Math.sin(phi);
    this.f = e - 2 * (this.radius + e) * half * half;
  }

  /** Point of the sheet of a side at arch place `q`, depth `d ≥ 0`. */
  sheetPoint(side: SideSign, q: number, d: number): Vec3 {
    this.sheetAt(side, q, d);
    return [this.m, this.f, this.c];
  }

  /** Across the arch (`e`) and level (`c`) of a place given by section coordinates. */
  acrossPoint(q: number, u: number, d: number): [e: number, c: number] {
    this.leanAt(q);
    return [u * this.cosAt - d * this.sinAt, -u * this.sinAt - d * this.cosAt + this.crest(q)];
  }

  /** Point of the site frame at section coordinates. */
  sectionPoint(q: number, u: number, d: number): Vec3 {
    const [e, c] = this.acrossPoint(q, u, d);
    return fromArch(this.arch, q, e, c);
  }
}
