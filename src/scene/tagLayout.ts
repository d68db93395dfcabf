import type { Reading, ReadingId } from '../core/measure/reading.ts';
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
  /** Drawn as a dimension between its two points; else the leader alone goes to what is drawn there already. */
  readonly measured: boolean;
  readonly leader: readonly Point[];
  readonly tag: Point;
  readonly side: 'left' | 'right';
  readonly number: string;
  readonly mark: Mark;
  readonly words: string | undefined;
}

/** A reading with the two places on the picture between which its line runs; px. */
export interface Line {
  readonly reading: Reading;
  readonly from: Point;
  readonly to: Point;
  readonly measured?: boolean;
  /** It runs back in: its leader goes on from where it begins. */
  readonly inward?: boolean;
  /** On which side of the picture its tag stands; by default the side it runs to. */
  readonly side?: 'left' | 'right';
  /** Small words on the tag. */
  readonly words?: string;
  /** The state of another reading that speaks for this one. */
  readonly mark?: Mark;
}

/** Type size of the tags, px: at a desk, and before a class. */
export const TAG_SIZE = { desk: 16, class: 24 } as const;
/** Distance of two tags, as so many type sizes. */
const TAG_GAP = 1.94;
const AWAY = 44;

/** A line from the end that lies in to the one that its leader goes on from. */
const outward = ({ from, to, inward }: Line): [Point, Point] => (inward ? [to, from] : [from, to]);

const sideOf = (line: Line): 'left' | 'right' => {
  const [inner, outer] = outward(line);
  return line.side ?? (outer.x >= inner.x ? 'right' : 'left');
};

/** Tags beside the model: those of lines that run to the right in a column on the right, the others on the left, none over another. */
export function layTags(lines: readonly Line[], lens: Lens, size: number): TagLine[] {
  const out: TagLine[] = [];
  for (const side of ['left', 'right'] as const) {
    const way = side === 'right' ? 1 : -1;
    const own = lines.filter((line) => sideOf(line) === side);
    if (own.length === 0) continue;
    const texts = own.map(({ reading, words, mark }) => {
      const shown = presentReading(reading);
      return { number: shown.number, mark: mark ?? shown.mark, words };
    });
    const ends = own.flatMap(({ from, to }) => [way * from.x, way * to.x]);
    const beside = Math.max(...ends) + AWAY;
    // Each tag in the column, or as far out as the picture lets it.
    const columns = texts.map((text) => {
      const width = tagWidth({ ...text, size });
      return way * Math.min(beside, side === 'right' ? lens.width - width - 10 : -(width + 10));
    });
    const places = spread(
      own.map((line) => {
        const [inner, outer] = outward(line);
        return outer.y + Math.sign(outer.y - inner.y || -1) * 6;
      }),
      TAG_GAP * size,
      44,
      lens.height - 60,
    );
    own.forEach((line, i) => {
      const { reading, from, to, measured = true } = line;
      const column = columns[i];
      const [inner, outer] = outward(line);
      const length = Math.hypot(outer.x - inner.x, outer.y - inner.y) || 1;
      const run = (way * column - way * outer.x > 24 ? 10 : 4) / length;
      const elbow = { x: outer.x + run * (outer.x - inner.x), y: outer.y + run * (outer.y - inner.y) };
      const tag = { x: column, y: places[i] };
      const { mark, words } = texts[i];
      const number = formatTag(quantityOf(reading));
      out.push({
        id: reading.id,
        from,
        to,
        measured,
        leader: [elbow, tag],
        tag,
        side,
        number,
        mark,
        words,
      });
    });
  }
  return out;
}
