import { rad, smoothstep } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import type { CollarPlace } from './gumCollar.ts';
import { evenColumn } from './gumPalate.ts';
import type { SideSign } from './ridge.ts';
import { RidgeShell } from './ridgeShell.ts';

/** Least distance of the gum's surface from the bone, mm: its lower edge runs out onto the bone. */
const EDGE = 0.1;
/** Depth at which the gum leaves the ridge's side for the margin, mm. */
const BASE = { facial: 1, palatal: 2.8 } as const;
/** Where attached gum ends on the facial side, where the thin mucosa below it begins, and its share of the thickness (assumed). */
const ATTACHED = { from: 2.2, to: 6.5, mucosa: 0.5 } as const;
/** Where the gum runs out onto the bone, mm of ridge depth; never nearer to the floor than `SPARE`. */
const RUN_OUT = { facial: [5, 10.5], palatal: [6, 16] } as const;
const SPARE = 1;

/** Numbers of columns of a section on each side of its middle, from the keel up. */
export interface GumColumns {
  /** Down the ridge's side. */
  readonly flank: number;
  /** From there to the margin. */
  readonly rise: number;
  /** From the margin to the middle. */
  readonly cap: number;
}

/** The part of a section that is known before the arch place is. */
export interface FlankPlan {
  readonly depths: Float64Array;
  /** Thickness by depth, mm. */
  readonly thick: Float64Array;
  /** 1 the whole gum, 0 its lower edge. */
  readonly cover: Float64Array;
  /** 0 attached gum, 1 the thin mucosa below it. */
  readonly loose: Float64Array;
}

/** Depths from the lower edge up to the side's {@link BASE} with the thickness there. */
export function flankPlan({ site }: Anatomy, side: SideSign, count: number): FlankPlan {
  const [from, end] = side > 0 ? RUN_OUT.facial : RUN_OUT.palatal;
  const base = side > 0 ? BASE.facial : BASE.palatal;
  const deepest = Math.max(base + 1, Math.min(end, site.ridge.height - SPARE));
  const begin = Math.min(from, deepest - 0.5);
  const full = side > 0 ? site.gum.facial : site.gum.palatal;
  const depths = Float64Array.from({ length: count }, (_, i) => {
    const w = 1 - i / (count - 1);
    return base + (deepest - base) * w;
  });
  const loose = depths.map((d) => (side > 0 ? smoothstep(d, ATTACHED.from, ATTACHED.to) : 0));
  const out = depths.map((d) => smoothstep(d, begin, deepest));
  return {
    depths,
    thick: depths.map((_, i) => full * (1 - (1 - ATTACHED.mucosa) * loose[i]) * (1 - out[i])),
    cover: out.map((x) => 1 - x),
    loose,
  };
}

/** Factor by which a point of a section (`u` toward its side, depth `d`) has to move away from the core of the ridge's rounded crest to clear the bone. */
function outward(u: number, d: number, w: number, rho: number): number {
  const ratio = Math.hypot(Math.max(0, u) / w, Math.max(0, 1 - d / rho));
  return ratio < 1e-3 ? 1 : Math.max(1, (1 + EDGE / Math.min(w, rho)) / ratio);
}

/** Writes sections of the gum across the arch, from the palatal keel over the margins to the facial keel, as `e`, `c` pairs. */
export class GumSections {
  private readonly palatal: FlankPlan;
  private readonly facial: FlankPlan;
  readonly columns: number;
  private out: Float64Array = new Float64Array(0);
  private e0 = 0;
  private c0 = 0;
  private cos = 1;
  private sin = 0;
  /** No point lies further palatally of the arch than this (`e`), mm: just outside the ridge's trimmed face. */
  private readonly least: number;

  constructor(
    private readonly anatomy: Anatomy,
    private readonly count: GumColumns,
  ) {
    this.palatal = flankPlan(anatomy, -1, count.flank);
    this.facial = flankPlan(anatomy, 1, count.flank);
    this.least = new RidgeShell(anatomy.ridge).trimmed - EDGE;
    this.columns = 2 * (count.flank + count.rise + count.cap) + 1;
  }

  /** A value of every column's place on its side (see {@link FlankPlan}); `top` above the flanks, `keel` within the bone. */
  byColumn(name: 'cover' | 'loose', top: number, keel: number): Float64Array {
    const out = new Float64Array(this.columns).fill(top);
    out.set(this.palatal[name], 1);
    out.set(this.facial[name].slice().reverse(), this.columns - 1 - this.count.flank);
    out[0] = keel;
    out[this.columns - 1] = keel;
    return out;
  }

  /** Evens out the palatal gum of `rows` sections, then lets it swell by `swelling` (mm, by row and ridge depth) across the ridge there. */
  finishPalate(
    lines: Float64Array,
    rows: number,
    leans: Float64Array,
    swelling: (row: number, d: number) => number,
  ): void {
    const { flank, rise } = this.count;
    const { depths, thick } = this.palatal;
    for (let k = 1; k < flank + rise; k++) {
      const way = Math.max(0, k - flank) / rise;
      evenColumn(lines, rows, this.columns, k, thick[Math.min(k, flank) - 1] * (1 - way) ** 2);
    }
    for (let i = 0; i < rows; i++) {
      for (let k = 1; k <= flank; k++) {
        const more = swelling(i, depths[k - 1]);
        const at = 2 * (i * this.columns + k);
        lines[at] -= more * leans[2 * i];
        lines[at + 1] += more * leans[2 * i + 1];
      }
    }
  }

  /** Writes the section at an arch place: `columns` pairs; and the cosine and sine of the ridge's inclination there. */
  write(q: number, place: CollarPlace, out: Float64Array, lean: Float64Array): void {
    this.take(q);
    this.out = out;
    lean[0] = this.cos;
    lean[1] = this.sin;
    this.side(-1, place);
    this.side(1, place);
    const { flank, rise } = this.count;
    const last = this.columns - 1;
    this.between(flank + rise, last - flank - rise);
    this.keel();
  }

  /** Takes the ridge's section in hand: where `u`, `d` are 0, and how it leans. */
  private take(q: number): void {
    const { ridge } = this.anatomy;
    ridge.row(q);
    const [e0, c0] = ridge.acrossPoint(q, 0, 0);
    const [e1, c1] = ridge.acrossPoint(q, 1, 0);
    this.e0 = e0;
    this.c0 = c0;
    this.cos = e1 - e0;
    this.sin = c0 - c1;
  }

  private put(j: number, e: number, c: number): void {
    this.out[2 * j] = Math.max(this.least, e);
    this.out[2 * j + 1] = c;
  }

  private putInSection(j: number, u: number, d: number): void {
    this.put(j, this.e0 + u * this.cos - d * this.sin, this.c0 - u * this.sin - d * this.cos);
  }

  /** One side, from its lower edge up to the margin. */
  private side(side: SideSign, place: CollarPlace): void {
    const { ridge } = this.anatomy;
    const { flank } = this.count;
    const plan = side > 0 ? this.facial : this.palatal;
    let u = 0;
    let d = 0;
    for (let i = 0; i < flank; i++) {
      d = plan.depths[i];
      u = ridge.rowHalf(side, d) + EDGE + plan.thick[i];
      this.putInSection(this.column(side, 1 + i), side * u, d);
    }
    this.rise(side, u, d, place);
  }

  /** Column of a side, counted from its keel. */
  private column(side: SideSign, k: number): number {
    return side > 0 ? this.columns - 1 - k : k;
  }

  /**
   * From the ridge's side (`u` toward it, depth `d`) to the margin, a cubic that leaves along the ridge: it arrives across the ridge over a healed crest,
   * steeply along the axis beside a tooth. Never nearer to the bone than the edge.
   */
  private rise(side: SideSign, u: number, d: number, { e, c, lean, rise, half, ...at }: CollarPlace): void {
    const { ridge } = this.anatomy;
    const { flank, rise: steps } = this.count;
    // The margin and the direction in which it is reached, in the section's own `u` (toward the side) and height over the crest.
    const [ae, ac] = [Math.sin(rad(lean)), Math.cos(rad(lean))];
    const [oe, oc] = [e + ae * rise - this.e0, c + ac * rise - this.c0];
    const au = side * (ae * this.cos - ac * this.sin);
    const av = ae * this.sin + ac * this.cos;
    const mu = side * (oe * this.cos - oc * this.sin) + half * av;
    const mv = oe * this.sin + oc * this.cos - half * au;
    const steep = at.beside * (1 - 0.35 * at.between);
    const du = steep * (au - 0.45 * av) - (1 - steep);
    const dv = steep * (av + 0.45 * au);
    const chord = Math.hypot(mu - u, mv + d);
    const reach = (0.6 * (1 - at.beside) * Math.abs(mu - u) + 0.4 * at.beside * chord) / Math.hypot(du, dv);
    const first = -d + (0.6 - 0.22 * at.beside) * Math.max(0.3, mv + d);
    for (let i = 1; i <= steps; i++) {
      const t = i / steps;
      const s = 1 - t;
      const [b0, b1, b2, b3] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
      const x = (b0 + b1) * u + b2 * (mu - reach * du) + b3 * mu;
      const y = -b0 * d + b1 * first + b2 * (mv - reach * dv) + b3 * mv;
      const k = outward(x, -y, ridge.rowHalf(side, -y), ridge.rho);
      const core = Math.max(y, -ridge.rho) + ridge.rho;
      this.putInSection(this.column(side, flank + i), side * k * x, -(y + (k - 1) * core));
    }
  }

  /** From one margin straight to the other. */
  private between(from: number, to: number): void {
    const { out } = this;
    for (let j = from + 1; j < to; j++) {
      const w = (j - from) / (to - from);
      const mix = (k: number) => out[2 * from + k] + w * (out[2 * to + k] - out[2 * from + k]);
      this.put(j, mix(0), mix(1));
    }
  }

  /** Both keels, within the bone between the lower edges. */
  private keel(): void {
    const { out } = this;
    const last = this.columns - 1;
    const mix = (w: number, k: number) => out[2 + k] + w * (out[2 * last - 2 + k] - out[2 + k]);
    this.put(0, mix(0.45, 0), mix(0.45, 1));
    this.put(last, mix(0.55, 0), mix(0.55, 1));
  }
}
