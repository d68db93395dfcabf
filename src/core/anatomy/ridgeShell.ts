import { fallingRoot } from '../geometry/root.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { Ridge, SideSign } from './ridge.ts';

/** How far a shell lies outside the ridge (−: inside), mm. */
export interface ShellOffsets {
  readonly facial: number;
  readonly palatal: number;
  /** At the crest, along the ridge's own axis. */
  readonly crest: number;
}

/** The shell is trimmed where it comes within this share of the arch's radius of the arch's centre, toward which rows run together. */
const TRIM = 0.28;

const NONE: ShellOffsets = { facial: 0, palatal: 0, crest: 0 };

/**
 * The ridge's surface (rules S2, S5) or one at a distance across the ridge's own axis from it, as a sheet over two parameters: `q`
 * along the arch and `v` across it, signed by the side: up to π/2 over the rounded crest, beyond that mm down the side. Site frame.
 * A palatal side that leans so far that it nears the arch's centre is trimmed by an upright face there, as a cast is.
 */
export class RidgeShell {
  private readonly rho: number;
  /** No point lies further palatally of the arch than this (`e`), mm. */
  readonly trimmed: number;

  constructor(
    readonly ridge: Ridge,
    readonly offsets: ShellOffsets = NONE,
  ) {
    this.rho = ridge.rho;
    this.trimmed = ridge.arch.radius === Infinity ? -Infinity : -(1 - TRIM) * ridge.arch.radius;
  }

  /** Depth below the shell's own crest at `|v|`. */
  private fall(v: number): number {
    return v < Math.PI / 2 ? this.rho * (1 - Math.cos(v)) : this.rho + v - Math.PI / 2;
  }

  /** The half-width `w` of the ridge's side as this shell has it, never less than a fifth of it. */
  private widened(side: SideSign, w: number): number {
    return Math.max(w / 5, w + (side > 0 ? this.offsets.facial : this.offsets.palatal));
  }

  /** Takes the section at arch place `q` in hand for {@link at} and {@link end}. */
  row(q: number): void {
    this.ridge.row(q);
  }

  /** Point of the section in hand at `v`, left in the ridge's `m`, `f`, `c`. */
  at(v: number): void {
    const { ridge } = this;
    const size = v < 0 ? -v : v;
    const side: SideSign = v < 0 ? -1 : 1;
    const d = this.fall(size) - this.offsets.crest;
    const cap = size < Math.PI / 2 ? Math.sin(size) : 1;
    ridge.rowPoint(side * this.widened(side, ridge.rowHalf(side, d)) * cap, d, this.trimmed);
  }

  point(q: number, v: number): Vec3 {
    const { ridge } = this;
    ridge.row(q);
    this.at(v);
    return [ridge.m, ridge.f, ridge.c];
  }

  /** Parameters of a point of the sheet (of any point: of one on the same level beside it). */
  place(p: Vec3): [q: number, v: number] {
    this.ridge.locate(p[0], p[1], p[2]);
    const { q, u, d } = this.ridge;
    const x = 1 - Math.max(0, d + this.offsets.crest) / this.rho;
    const v = x > 0 ? Math.acos(x) : Math.PI / 2 - this.rho * x;
    return [q, u < 0 ? -v : v];
  }

  /** ≤ 0 inside; mm, near the distance close to the surface (rule S5). */
  solid(p: Vec3): number {
    const { ridge, rho } = this;
    ridge.locate(p[0], p[1], p[2]);
    const side = ridge.u > 0 ? 1 : -1;
    const w = this.widened(side, ridge.half(side, ridge.q, ridge.d));
    const z = Math.max(0, 1 - (ridge.d + this.offsets.crest) / rho);
    const x = ridge.u / w;
    return w * (Math.sqrt(x * x + z * z) - 1);
  }

  /** The `|v|` at which a side of the section in hand meets the floor's plane. */
  end(side: SideSign): number {
    const { ridge } = this;
    const above = (v: number): number => {
      this.at(side * v);
      return ridge.c - ridge.floor;
    };
    let lo = 0;
    let hi = Math.PI / 2 + 1;
    while (hi < 200 && above(hi) > 0) {
      lo = hi;
      hi *= 1.5;
    }
    return fallingRoot(above, lo, hi, 1e-13);
  }
}
