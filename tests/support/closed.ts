import { meshVolume, type TriangleMesh } from '../../src/core/geometry/mesh.ts';

/** Topologies that were looked at and found closed: grids and rings come back with the same triangles. */
const closed: Uint32Array[] = [];

const same = (a: Uint32Array, b: Uint32Array): boolean =>
  a === b || (a.length === b.length && a.every((v, i) => v === b[i]));

/** Edges that do not run exactly once each way. */
export function looseEdges({ triangles: t, positions }: TriangleMesh): number {
  const known = closed.findIndex((other) => same(other, t));
  if (known >= 0) return 0;
  const count = positions.length / 3;
  const edges = new Set<number>();
  let loose = 0;
  for (let i = 0; i < t.length; i++) {
    const edge = t[i] * count + t[i % 3 === 2 ? i - 2 : i + 1];
    if (edges.has(edge)) loose++;
    edges.add(edge);
  }
  for (const edge of edges) {
    const a = Math.floor(edge / count);
    if (!edges.has((edge % count) * count + a)) loose++;
  }
  if (loose === 0) {
    closed.unshift(t);
    closed.length = Math.min(closed.length, 40);
  }
  return loose;
}

/** What is wrong with a mesh as a solid; empty: closed, wound outward, of finite points and some volume. */
export function faultOf(name: string, mesh: TriangleMesh): string {
  const loose = looseEdges(mesh);
  if (loose > 0) return `${name}: ${loose} loose edges`;
  const volume = meshVolume(mesh);
  if (!(volume > 0) || !Number.isFinite(volume)) return `${name}: volume ${volume}`;
  return '';
}
