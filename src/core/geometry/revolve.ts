/**
 * A body of revolution as a polyline in its half-plane: stations `x` along the axis and radii `r`, mm. A kernel: distances
 * are taken millions of times, so plain arrays and no objects.
 */
export class Revolved {
  private readonly n: number;
  private readonly x: Float64Array;
  private readonly r: Float64Array;
  private readonly dx: Float64Array;
  private readonly dr: Float64Array;
  private readonly inv: Float64Array;
  private readonly rim: number;
  /** Station of the closest point found by the last distance call. */
  footX = 0;
  /** Radius of the closest point found by the last distance call. */
  footR = 0;

  /** Stations must not decrease; two equal ones make a flat face. */
  constructor(x: readonly number[], r: readonly number[]) {
    this.n = x.length - 1;
    this.x = Float64Array.from(x);
    this.r = Float64Array.from(r);
    this.dx = new Float64Array(this.n);
    this.dr = new Float64Array(this.n);
    this.inv = new Float64Array(this.n);
    for (let i = 0; i < this.n; i++) {
      this.dx[i] = x[i + 1] - x[i];
      this.dr[i] = r[i + 1] - r[i];
      const l2 = this.dx[i] ** 2 + this.dr[i] ** 2;
      this.inv[i] = l2 > 0 ? 1 / l2 : 0;
    }
    // A station a rounding past the end must not fall to the axis.
    const side = this.dx.findLastIndex((dx) => dx > 0);
    this.rim = this.r[side + 1];
  }

  /** Radius at a station, held at the ends; at the far end that of the rim, not of the flat face within it. */
  radius(x: number): number {
    if (x <= this.x[0]) return this.r[0];
    for (let i = 0; i < this.n; i++) {
      if (x <= this.x[i + 1] && this.dx[i] > 0)
        return this.r[i] + (this.dr[i] * (x - this.x[i])) / this.dx[i];
    }
    return this.rim;
  }

  /** Distance from `(x, ρ)` to the polyline, ≥ 0; leaves the foot. Only stations from `least` on count. */
  distance(x: number, rho: number, least = -Infinity): number {
    let best = Infinity;
    for (let i = 0; i < this.n; i++) {
      if (this.x[i + 1] < least) continue;
      let w = ((x - this.x[i]) * this.dx[i] + (rho - this.r[i]) * this.dr[i]) * this.inv[i];
      const lo = this.x[i] < least && this.dx[i] > 0 ? (least - this.x[i]) / this.dx[i] : 0;
      if (w < lo) w = lo;
      else if (w > 1) w = 1;
      const px = this.x[i] + w * this.dx[i];
      const pr = this.r[i] + w * this.dr[i];
      const d2 = (x - px) * (x - px) + (rho - pr) * (rho - pr);
      if (d2 < best) {
        best = d2;
        this.footX = px;
        this.footR = pr;
      }
    }
    return Math.sqrt(best);
  }

  /** Whether `(x, ρ)` lies inside the body between its first and last station. */
  inside(x: number, rho: number): boolean {
    return x >= this.x[0] && x <= this.x[this.n] && rho < this.radius(x);
  }

  /** As {@link distance}, negative inside. */
  signed(x: number, rho: number, least = -Infinity): number {
    const d = this.distance(x, rho, least);
    return this.inside(x, rho) ? -d : d;
  }
}
