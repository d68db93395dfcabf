import { sixfold, type TriangleMesh } from './mesh.ts';

/** What keeps a mesh from being a solid. `count`: loose or crowded edges, or bodies that are wound inward. */
export interface SolidFault {
  readonly code: 'empty' | 'not-finite' | 'open' | 'inward';
  readonly count: number;
}

/** Corners that lie at one point in single precision, as a file has them, are one: each corner's number among the points. */
function welded({ positions }: TriangleMesh): Uint32Array {
  const single = Float32Array.from(positions, (v) => v + 0);
  const bits = new Uint32Array(single.buffer);
  const known = new Map<string, number>();
  const out = new Uint32Array(positions.length / 3);
  for (let i = 0; i < out.length; i++) {
    const key = `${bits[3 * i]} ${bits[3 * i + 1]} ${bits[3 * i + 2]}`;
    const found = known.get(key) ?? known.size;
    known.set(key, found);
    out[i] = found;
  }
  return out;
}

/** Edges that do not run exactly once each way. */
function looseEdges(corners: Uint32Array, count: number): number {
  const edges = new Set<number>();
  let loose = 0;
  for (let i = 0; i < corners.length; i++) {
    const edge = corners[i] * count + corners[i % 3 === 2 ? i - 2 : i + 1];
    if (edges.has(edge)) loose++;
    edges.add(edge);
  }
  for (const edge of edges) if (!edges.has((edge % count) * count + Math.floor(edge / count))) loose++;
  return loose;
}

/** For each triangle the number of the body it belongs to, by what hangs together. */
function bodiesOf(corners: Uint32Array, count: number): { readonly of: Uint32Array; readonly count: number } {
  const above = Uint32Array.from({ length: count }, (_, i) => i);
  const top = (v: number): number => {
    let at = v;
    while (above[at] !== at) {
      above[at] = above[above[at]];
      at = above[at];
    }
    return at;
  };
  for (let i = 0; i < corners.length; i += 3) {
    above[top(corners[i + 1])] = top(corners[i]);
    above[top(corners[i + 2])] = top(corners[i]);
  }
  const numbers = new Map<number, number>();
  const of = new Uint32Array(corners.length / 3);
  for (let i = 0; i < of.length; i++) {
    const root = top(corners[3 * i]);
    const found = numbers.get(root) ?? numbers.size;
    numbers.set(root, found);
    of[i] = found;
  }
  return { of, count: numbers.size };
}

/** The bodies a closed mesh is made of: each triangle's, and the volume inside each, mm³; − where one is a cavity in another. */
export function solidBodies(mesh: TriangleMesh): {
  readonly of: Uint32Array;
  readonly volumes: readonly number[];
} {
  const { positions: p, triangles: t } = mesh;
  const point = welded(mesh);
  const { of, count } = bodiesOf(
    t.map((v) => point[v]),
    point.length,
  );
  const volumes = new Array<number>(count).fill(0);
  for (let i = 0; i < of.length; i++)
    volumes[of[i]] += sixfold(p, 3 * t[3 * i], 3 * t[3 * i + 1], 3 * t[3 * i + 2]) / 6;
  return { of, volumes };
}

/**
 * What is wrong with a mesh as a solid once a file's reader has made one of what lies at one point: null where every edge runs exactly once each way and every
 * body is wound outward with a positive volume.
 */
export function solidFault(mesh: TriangleMesh): SolidFault | null {
  if (mesh.triangles.length === 0) return { code: 'empty', count: 0 };
  const lost = mesh.positions.filter((v) => !Number.isFinite(v)).length;
  if (lost > 0) return { code: 'not-finite', count: lost };
  const point = welded(mesh);
  const corners = mesh.triangles.map((v) => point[v]);
  const loose = looseEdges(corners, point.length);
  if (loose > 0) return { code: 'open', count: loose };
  const inward = solidBodies(mesh).volumes.filter((v) => !(v > 0)).length;
  return inward > 0 ? { code: 'inward', count: inward } : null;
}

/** Means of the corners that each of some corners shares a triangle with. */
function neighbourMeans({ positions: p, triangles: t }: TriangleMesh, wanted: ReadonlySet<number>) {
  const sums = new Map<number, { at: [number, number, number]; count: number }>();
  for (let i = 0; i < t.length; i++) {
    if (!wanted.has(t[i])) continue;
    const sum = sums.get(t[i]) ?? { at: [0, 0, 0], count: 0 };
    const own = i - (i % 3);
    for (let j = own; j < own + 3; j++) {
      if (j === i) continue;
      for (let k = 0; k < 3; k++) sum.at[k] += p[3 * t[j] + k];
      sum.count++;
    }
    sums.set(t[i], sum);
  }
  return [...sums].map(([v, { at, count }]) => ({ v, mean: at.map((x) => x / count) }));
}

/**
 * Corners that lie at one point without being one are moved apart by `step` toward their own neighbours, so that a reader who makes one of what lies at one point
 * does not join sheets that only touch. Single precision.
 */
export function apart(mesh: TriangleMesh, step: number): TriangleMesh {
  const seen = new Set<number>();
  const crowd = new Set<number>();
  welded(mesh).forEach((point, v) => {
    if (seen.has(point)) crowd.add(v);
    seen.add(point);
  });
  if (crowd.size === 0) return mesh;
  const positions = mesh.positions.slice();
  for (const { v, mean } of neighbourMeans(mesh, crowd)) {
    const way = mean.map((x, k) => x - positions[3 * v + k]);
    const share = Math.min(0.5, step / (Math.hypot(...way) || 1));
    for (let k = 0; k < 3; k++) positions[3 * v + k] = Math.fround(positions[3 * v + k] + share * way[k]);
  }
  return { ...mesh, positions };
}

/** Least and greatest coordinates of a mesh, mm. */
export function boxOf({ positions }: TriangleMesh): { readonly low: number[]; readonly high: number[] } {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    low[i % 3] = Math.min(low[i % 3], positions[i]);
    high[i % 3] = Math.max(high[i % 3], positions[i]);
  }
  return { low, high };
}
