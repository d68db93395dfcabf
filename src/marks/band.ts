import type { Point } from './path.ts';

/** The outline of a band of even width about an open line, its corners mitred: down one side and back up the other. `half` its half width, px. */
export function band(line: readonly Point[], half: number): Point[] {
  const way = (i: number): Point => {
    const [a, b] = [line[i], line[i + 1]];
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  };
  const last = line.length - 1;
  const beside = line.map((p, i): Point => {
    const [u, v] = [way(Math.max(0, i - 1)), way(Math.min(last - 1, i))];
    const across = { x: -(u.y + v.y), y: u.x + v.x };
    // Both ways' normals have the length 1 along the mitre.
    const share = 2 / (across.x * across.x + across.y * across.y || 1);
    return { x: p.x + half * share * across.x, y: p.y + half * share * across.y };
  });
  const other = line.map((p, i) => ({ x: 2 * p.x - beside[i].x, y: 2 * p.y - beside[i].y }));
  return [...beside, ...other.reverse()];
}
