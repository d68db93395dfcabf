import type { Reading, ReadingId } from '../core/measure/reading.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import type { Point } from '../marks/path.ts';
import type { Mark } from '../marks/StatusGlyph.tsx';
import { spread } from '../marks/spread.ts';
import { tagWidth } from '../marks/Tag.tsx';
import { formatTag } from '../words/format.ts';
import { presentReading, quantityOf } from '../words/presentReading.ts';
import type { Lens } from './lens.ts';

/** A measurement on the stage: its line, its leader and its tag; px. */
export interface TagLine {
  readonly id: ReadingId;
  readonly from: Point;
  readonly to: Point;
  readonly leader: readonly Point[];
  readonly tag: Point;
  readonly side: 'left' | 'right';
  readonly number: string;
  readonly mark: Mark;
}

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

/** Type size of the tags, px: at a desk, and before a class. */
export const TAG_SIZE = { desk: 16, class: 24 } as const;
/** Distance of two tags, as so many type sizes. */
const TAG_GAP = 1.94;
const AWAY = 44;

interface Line {
  readonly reading: Reading;
  readonly from: Point;
  readonly to: Point;
}

function lineOf(evaluation: Evaluation, lens: Lens, id: ReadingId, always: boolean): Line | null {
  const reading = readingOf(evaluation.readings, id);
  const { from, to, value } = reading;
  if (!from || !to || value === null) return null;
  const [a, b] = [lens.at(from), lens.at(to)];
  const whole = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]) * lens.scale(to);
  const seen = Math.hypot(b.x - a.x, b.y - a.y);
  return always || seen > FORESHORTENED * whole ? { reading, from: a, to: b } : null;
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

/** Tags beside the model: those of lines that run to the right in a column on the right, the others on the left, none over another. */
export function tagLines(
  evaluation: Evaluation,
  lens: Lens,
  lit: ReadingId | null,
  roots: boolean,
  size: number,
): TagLine[] {
  const lines = chosen(evaluation, lens, lit, roots);
  const out: TagLine[] = [];
  for (const side of ['left', 'right'] as const) {
    const way = side === 'right' ? 1 : -1;
    const own = lines.filter(({ from, to }) => to.x >= from.x === (side === 'right'));
    if (own.length === 0) continue;
    const texts = own.map(({ reading }) => presentReading(reading));
    const widest = Math.max(...texts.map(({ number, mark }) => tagWidth({ number, mark, size })));
    const ends = own.flatMap(({ from, to }) => [way * from.x, way * to.x]);
    const edge = side === 'right' ? lens.width - widest - 10 : -(widest + 10);
    const column = way * Math.min(Math.max(...ends) + AWAY, edge);
    const places = spread(
      own.map(({ from, to }) => to.y + Math.sign(to.y - from.y || -1) * 6),
      TAG_GAP * size,
      44,
      lens.height - 60,
    );
    own.forEach(({ reading, from, to }, i) => {
      const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
      const run = (way * column - way * to.x > 24 ? 10 : 4) / length;
      const elbow = { x: to.x + run * (to.x - from.x), y: to.y + run * (to.y - from.y) };
      const tag = { x: column, y: places[i] };
      const { mark } = texts[i];
      const number = formatTag(quantityOf(reading));
      out.push({ id: reading.id, from, to, leader: [elbow, tag], tag, side, number, mark });
    });
  }
  return out;
}
