import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';

/** A stretch of a column, low and high. */
export type Stretch = readonly [number, number];

/** Stretches made one where they overlap, in rising order. */
export function joined(parts: readonly Stretch[]): Stretch[] {
  const out: Stretch[] = [];
  for (const [low, high] of [...parts].sort((a, b) => a[0] - b[0])) {
    const last = out.at(-1);
    if (last && low <= last[1]) out[out.length - 1] = [last[0], Math.max(last[1], high)];
    else out.push([low, high]);
  }
  return out;
}

/** What of some stretches none of the others covers. */
export function without(from: readonly Stretch[], taken: readonly Stretch[]): Stretch[] {
  return taken.reduce<Stretch[]>(
    (left, [low, high]) =>
      left.flatMap(([a, b]) =>
        (
          [
            [a, Math.min(b, low)],
            [Math.max(a, high), b],
          ] as const
        ).filter(([x, y]) => y > x),
      ),
    [...from],
  );
}

/** Upright columns over a rectangle, each asked in the middle of its cell, a little off the round numbers. */
export class Columns {
  readonly across: number;
  readonly count: number;

  constructor(
    private readonly low: readonly [number, number],
    high: readonly [number, number],
    readonly step: number,
  ) {
    this.across = Math.ceil((high[0] - low[0]) / step);
    this.count = this.across * Math.ceil((high[1] - low[1]) / step);
  }

  at(i: number): readonly [number, number] {
    const { low, step, across } = this;
    return [low[0] + (0.5013 + (i % across)) * step, low[1] + (0.4987 + Math.floor(i / across)) * step];
  }

  /** Where each column runs inside a closed mesh. */
  through({ positions: p, triangles: t }: TriangleMesh): Stretch[][] {
    const hits: number[][] = Array.from({ length: this.count }, () => []);
    for (let i = 0; i < t.length; i += 3) this.cross(p, [3 * t[i], 3 * t[i + 1], 3 * t[i + 2]], hits);
    return hits.map((heights) => {
      heights.sort((a, b) => a - b);
      return heights.flatMap((z, k) => (k % 2 === 1 ? [[heights[k - 1], z] as const] : []));
    });
  }

  private cross(p: Float64Array, [a, b, c]: readonly number[], hits: number[][]): void {
    const { low, step, across } = this;
    const turn = (p[b] - p[a]) * (p[c + 1] - p[a + 1]) - (p[c] - p[a]) * (p[b + 1] - p[a + 1]);
    if (turn === 0) return;
    const cell = (v: number, k: 0 | 1): number => Math.floor((v - low[k]) / step);
    const [i0, i1] = [cell(Math.min(p[a], p[b], p[c]), 0), cell(Math.max(p[a], p[b], p[c]), 0)];
    const [j0, j1] = [
      cell(Math.min(p[a + 1], p[b + 1], p[c + 1]), 1),
      cell(Math.max(p[a + 1], p[b + 1], p[c + 1]), 1),
    ];
    for (let j = Math.max(0, j0); j <= j1; j++)
      for (let i = Math.max(0, i0); i <= Math.min(i1, across - 1); i++) {
        const at = j * across + i;
        if (at >= this.count) continue;
        const [x, y] = this.at(at);
        const side = (u: number, v: number) =>
          ((p[v] - p[u]) * (y - p[u + 1]) - (x - p[u]) * (p[v + 1] - p[u + 1])) / turn;
        const [wa, wb, wc] = [side(b, c), side(c, a), side(a, b)];
        if (wa < 0 || wb < 0 || wc < 0) continue;
        hits[at].push(wa * p[a + 2] + wb * p[b + 2] + wc * p[c + 2]);
      }
  }

  /** Volume of what `inside` leaves of each column. */
  volume(inside: (i: number) => readonly Stretch[]): number {
    let length = 0;
    for (let i = 0; i < this.count; i++) for (const [low, high] of inside(i)) length += high - low;
    return length * this.step * this.step;
  }
}
