import type { Reading, ReadingId } from '../core/measure/reading.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import type { Lens } from './lens.ts';
import { type Line, layTags, type TagLine } from './tagLayout.ts';

const WALLS: readonly ReadingId[] = [
  'facial-wall-1mm',
  'facial-wall-thinnest',
  'palatal-wall-thinnest',
  'facial-wall-apex',
  'palatal-wall-apex',
  'palatal-wall-1mm',
];
/** Shown when they lie across the line of sight, where the bone does not hide them. */
const OTHERS: readonly ReadingId[] = [
  'root-mesial',
  'root-distal',
  'shoulder-to-crest-mesial',
  'shoulder-to-crest-distal',
];
const MOST_WALLS = 4;
const MOST_OTHERS = 3;
/** Less than this share of a line's length left on the picture, and it is seen from its end: left out. */
const FORESHORTENED = 0.55;
/** Walls of one side whose levels differ by less say the same, mm. */
const SAME_LEVEL = 0.45;

/** A reading's line as a view has it; null where it has none, or is seen too much from its end. */
export function lineOf(evaluation: Evaluation, lens: Lens, id: ReadingId, always: boolean): Line | null {
  const reading = readingOf(evaluation.readings, id);
  const { from, to, value } = reading;
  if (!from || !to || value === null) return null;
  const [a, b] = [lens.at(from), lens.at(to)];
  const whole = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]) * lens.scale(to);
  const seen = Math.hypot(b.x - a.x, b.y - a.y);
  // A wall that is passed through is measured back into the bone: its tag stands on its own side all the same.
  const inward = value < 0 && id.includes('-wall-');
  return always || seen > FORESHORTENED * whole ? { reading, from: a, to: b, inward } : null;
}

/** The measurements that a view shows, at most four walls; the lit one always. */
function chosen(evaluation: Evaluation, lens: Lens, lit: ReadingId | null, roots: boolean): Line[] {
  const out: Line[] = [];
  const first = lit ? lineOf(evaluation, lens, lit, true) : null;
  if (first) out.push(first);
  const take = (ids: readonly ReadingId[], most: number) => {
    let count = 0;
    for (const id of ids) {
      if (count === most || id === lit) continue;
      const line = lineOf(evaluation, lens, id, false);
      if (!line || out.some((other) => sayTheSame(other.reading, line.reading))) continue;
      out.push(line);
      count++;
    }
  };
  take(WALLS, MOST_WALLS);
  if (roots) take(OTHERS, MOST_OTHERS);
  return out;
}

function sayTheSame(a: Reading, b: Reading): boolean {
  const side = (r: Reading) => r.id.split('-wall')[0];
  return (
    side(a) === side(b) &&
    a.id.includes('-wall') &&
    b.id.includes('-wall') &&
    Math.abs((a.level ?? 0) - (b.level ?? 99)) < SAME_LEVEL
  );
}

/** The walls' tags, and those of roots and crest where the bone does not hide them. */
export const tagLines = (
  evaluation: Evaluation,
  lens: Lens,
  lit: ReadingId | null,
  roots: boolean,
  size: number,
): TagLine[] => layTags(chosen(evaluation, lens, lit, roots), lens, size);
