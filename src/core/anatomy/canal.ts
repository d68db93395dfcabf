import { halfLine, type Interval, intersect, quadraticInterval } from '../geometry/interval.ts';
import { Revolved } from '../geometry/revolve.ts';
import { add, along, dot, norm, rad, scale, sub, unit, type Vec3 } from '../geometry/vec.ts';
import { type Arch, archDirections, fromArch } from './arch.ts';
import type { Site } from './site.ts';

/** The nasopalatine canal (rule S13): a straight tube of two cones in the midline plane; site frame, mm. */
export class Canal {
  /** Centre of the foramen. */
  readonly mouth: Vec3;
  /** Unit, from the foramen toward the nose. */
  readonly run: Vec3;
  readonly length: number;
  readonly radii: readonly [number, number, number];
  /** Its wall and its nasal end in the half-plane of its axis. */
  readonly body: Revolved;

  constructor(arch: Arch, site: Site, midline: number) {
    const { behind, below, inclination, length, foramen, middle, nasal } = site.canal;
    const { normal } = archDirections(arch, midline);
    this.mouth = fromArch(arch, midline, -behind, site.ridge.crestDrop - below);
    this.run = scale(unit(add(scale(normal, Math.tan(rad(inclination))), [0, 0, 1])), -1);
    this.length = length;
    this.radii = [foramen / 2, middle / 2, nasal / 2];
    this.body = new Revolved([0, length / 2, length], [...this.radii]);
  }

  /** Signed distance of a point to the tube's wall, mm, negative inside. */
  distance(p: Vec3): number {
    const r = sub(p, this.mouth);
    const x = dot(r, this.run);
    const rho = norm(along(r, this.run, -x));
    return this.body.signed(x, rho);
  }

  /** The tube's wall point nearest to a point. */
  foot(p: Vec3): Vec3 {
    this.distance(p);
    const r = sub(p, this.mouth);
    const radial = along(r, this.run, -dot(r, this.run));
    const rho = norm(radial) || 1;
    return along(along(this.mouth, this.run, this.body.footX), radial, this.body.footR / rho);
  }

  /** Where the line `p + λ v` lies in the tube: at most one stretch per cone. */
  voids(p: Vec3, v: Vec3): Interval[] {
    const r = sub(p, this.mouth);
    const x0 = dot(r, this.run);
    const xv = dot(v, this.run);
    const across0 = along(r, this.run, -x0);
    const acrossV = along(v, this.run, -xv);
    const half = this.length / 2;
    const cone = (from: number, r0: number, r1: number): Interval => {
      const g = (r1 - r0) / half;
      const s0 = r0 + g * (x0 - from);
      const sv = g * xv;
      const a = dot(acrossV, acrossV) - sv * sv;
      const b = 2 * (dot(across0, acrossV) - s0 * sv);
      const c = dot(across0, across0) - s0 * s0;
      const band = intersect(halfLine(xv, x0 - from), halfLine(-xv, from + half - x0));
      return a >= 0 ? intersect(quadraticInterval(a, b, c), band) : steepCone(a, b, c, band);
    };
    return [cone(0, this.radii[0], this.radii[1]), cone(half, this.radii[1], this.radii[2])];
  }
}

/** Nearly along the axis the quadratic opens downward: the line is inside within the band unless a root cuts it. */
function steepCone(a: number, b: number, c: number, band: Interval): Interval {
  if (!band) return null;
  const outside = quadraticInterval(-a, -b, -c);
  if (!outside) return band;
  const before = intersect(band, [-Infinity, outside[0]]);
  return before ?? intersect(band, [outside[1], Infinity]);
}
