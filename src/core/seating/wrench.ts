import type { WrenchScript } from '../drilling/rehearsal.ts';

/** Readings this close count as equal, N·cm. */
const SAME = 1e-9;

const downward = ({ points }: WrenchScript) => [...points].sort((a, b) => b.above - a.above);

/** The wrench's reading with the shoulder so far above the planned level: straight lines through the script's points, level beyond its ends. N·cm; null: not scripted. */
export function torqueAt(script: WrenchScript | null, above: number): number | null {
  if (!script || script.points.length === 0) return null;
  const points = downward(script);
  if (above >= points[0].above) return points[0].torque;
  for (let i = 1; i < points.length; i++) {
    const [from, to] = [points[i - 1], points[i]];
    if (above >= to.above)
      return from.torque + ((to.torque - from.torque) * (from.above - above)) / (from.above - to.above);
  }
  return points[points.length - 1].torque;
}

/**
 * Where the reading first reaches `limit` on the way down from one shoulder level to another (both above the planned one, mm); null: not on this way. On a
 * reading that has reached it already: the level it starts from.
 */
export function reaches(script: WrenchScript | null, from: number, to: number, limit: number): number | null {
  const first = torqueAt(script, from);
  if (!script || first === null) return null;
  if (first >= limit - SAME) return from;
  const between = downward(script).filter(({ above }) => above < from && above > to);
  const end = { above: to, torque: torqueAt(script, to) ?? 0 };
  let last = { above: from, torque: first };
  for (const point of [...between, end]) {
    if (point.torque >= limit - SAME) {
      const rise = point.torque - last.torque;
      const share = rise > 0 ? Math.min(1, (limit - last.torque) / rise) : 1;
      return last.above + share * (point.above - last.above);
    }
    last = point;
  }
  return null;
}
