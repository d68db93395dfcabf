import { halfLine, hull, type Interval, intersect, quadraticInterval } from '../geometry/interval.ts';
import { axisFrame, axisOf } from '../geometry/pose.ts';
import { along, dot, sub, type Vec3 } from '../geometry/vec.ts';
import type { Ridge } from './ridge.ts';
import type { SocketState } from './site.ts';

/** The void of a fresh socket with its dehiscence (rules S11, S12), in the site frame, mm. */
export class Socket {
  /** Centre of the half-ellipsoid's top plane. */
  readonly centre: Vec3;
  readonly a: Vec3;
  readonly ef: Vec3;
  readonly em: Vec3;
  readonly semi: Vec3;

  constructor(
    readonly numbers: SocketState,
    private readonly ridge: Ridge,
  ) {
    const { a, ef, em } = axisFrame(axisOf(numbers.axis));
    this.a = a;
    this.ef = ef;
    this.em = em;
    this.semi = [numbers.width / 2, numbers.breadth / 2, numbers.depth - numbers.parallel];
    // The void's facial end on the line across the ridge at the wall's level moves linearly with f_s: one correction is exact.
    const { level, thickness } = numbers.wall;
    const target = ridge.half(1, 0, level) * ridge.cap(level) - thickness;
    const from = ridge.sectionPoint(0, 0, level);
    const across: Vec3 = [0, ridge.cos, -ridge.sin];
    let fs = 0;
    let centre = along([0, fs, 0], a, -numbers.parallel);
    for (let i = 0; i < 20; i++) {
      centre = along([0, fs, 0], a, -numbers.parallel);
      const hit = this.bowl(from, across, centre);
      const miss = hit ? target - hit[1] : 0.5;
      fs += miss;
      if (Math.abs(miss) < 1e-12) break;
    }
    this.centre = centre;
  }

  private bowl(p: Vec3, v: Vec3, centre: Vec3): Interval {
    const r = sub(p, centre);
    const [sa, sb, sl] = this.semi;
    const x0 = dot(r, this.em) / sa;
    const xv = dot(v, this.em) / sa;
    const y0 = dot(r, this.ef) / sb;
    const yv = dot(v, this.ef) / sb;
    const z0 = dot(r, this.a);
    const zv = dot(v, this.a);
    const a = xv * xv + yv * yv;
    const b = 2 * (x0 * xv + y0 * yv);
    const c = x0 * x0 + y0 * y0 - 1;
    const above = intersect(quadraticInterval(a, b, c), halfLine(zv, z0));
    const zs = zv / sl;
    const z1 = z0 / sl;
    const below = intersect(quadraticInterval(a + zs * zs, b + 2 * z1 * zs, c + z1 * z1), halfLine(-zv, -z0));
    return hull(above, below);
  }

  /** Where the line `p + λ v` lies in the root's void: one stretch, since it is convex. */
  rootVoid(p: Vec3, v: Vec3): Interval {
    return this.bowl(p, v, this.centre);
  }

  /** Where the line lies in the dehiscence. */
  dehiscence(p: Vec3, v: Vec3): Interval {
    const { depth, width } = this.numbers.dehiscence;
    if (depth === 0) return null;
    const { sin, cos } = this.ridge;
    const x0 = (2 * p[0]) / width;
    const xv = (2 * v[0]) / width;
    const d0 = (-p[1] * sin - p[2] * cos) / depth;
    const dv = (-v[1] * sin - v[2] * cos) / depth;
    const lens = quadraticInterval(xv * xv + dv * dv, 2 * (x0 * xv + d0 * dv), x0 * x0 + d0 * d0 - 1);
    return intersect(lens, halfLine(dot(v, this.ef), dot(sub(p, this.centre), this.ef)));
  }

  /** Whether a point lies in either void. */
  contains(p: Vec3): boolean {
    const holds = (i: Interval) => i !== null && i[0] <= 0 && i[1] >= 0;
    return holds(this.rootVoid(p, this.a)) || holds(this.dehiscence(p, this.a));
  }
}
