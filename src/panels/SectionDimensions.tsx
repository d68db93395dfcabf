import type { ReadingId } from '../core/measure/reading.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { readingOf } from '../core/plan/evaluate.ts';
import { Dimension } from '../marks/Dimension.tsx';
import type { Point } from '../marks/path.ts';
import { spread } from '../marks/spread.ts';
import { Tag } from '../marks/Tag.tsx';
import { intoSection } from '../paper/sectionPlane.ts';
import { presentReading } from '../words/presentReading.ts';
import { CREST_Y, DRAWING_HEIGHT, PX_PER_MM, TAG_SIZE, yOf } from './scale.ts';
import type { LineActs } from './useLineActs.ts';

/** Walls that are always drawn, at most three a side. */
const ALWAYS = {
  faciopalatal: [
    'facial-wall-1mm',
    'facial-wall-thinnest',
    'facial-wall-apex',
    'palatal-wall-1mm',
    'palatal-wall-thinnest',
    'palatal-wall-apex',
  ],
  mesiodistal: ['root-mesial', 'root-distal', 'shoulder-to-crest-mesial', 'shoulder-to-crest-distal'],
} as const satisfies Readonly<Record<string, readonly ReadingId[]>>;
type Kind = keyof typeof ALWAYS;
/** A line whose ends stand farther than this (mm) from the plane is not one of the section's: it is not drawn. */
const IN_PLANE = { faciopalatal: 0.3, mesiodistal: 0.8 } as const;
/** Two lines of one side nearer than this (mm) say the same: the later one is left out. */
const SAME_PLACE = 0.25;

interface Line {
  readonly id: ReadingId;
  readonly from: Point;
  readonly to: Point;
  readonly level: number;
}

function lineOf(evaluation: Evaluation, kind: Kind, id: ReadingId): Line | null {
  const reading = readingOf(evaluation.readings, id);
  if (!reading.from || !reading.to || reading.value === null) return null;
  const project = intoSection(evaluation, kind);
  const [from, to] = [project(reading.from), project(reading.to)];
  if (Math.max(Math.abs(from.off), Math.abs(to.off)) > IN_PLANE[kind]) return null;
  return {
    id,
    from: { x: from.x * PX_PER_MM, y: yOf(from.level) },
    to: { x: to.x * PX_PER_MM, y: yOf(to.level) },
    level: to.level,
  };
}

function linesOf(evaluation: Evaluation, kind: Kind, lit: ReadingId | null): Line[] {
  const always: readonly ReadingId[] = ALWAYS[kind];
  const wanted = lit && !always.includes(lit) && lit !== 'incisal-line-offset' ? [lit, ...always] : always;
  const out: Line[] = [];
  for (const id of wanted) {
    const line = lineOf(evaluation, kind, id);
    if (!line) continue;
    const side = Math.sign(line.to.x);
    const taken = out.some(
      (other) =>
        other.id !== lit && Math.sign(other.to.x) === side && Math.abs(other.level - line.level) < SAME_PLACE,
    );
    if (!taken || id === lit) out.push(line);
  }
  return out;
}

interface SideProps {
  evaluation: Evaluation;
  lines: readonly Line[];
  side: 'left' | 'right';
  /** Where the tags begin, px from the axis. */
  column: number;
  lit: ReadingId | null;
  acts: (id: ReadingId) => LineActs;
  /** Type size of the tags, px. */
  size: number;
}

function Side({ evaluation, lines, side, column, lit, acts, size }: SideProps) {
  const places = spread(
    lines.map(({ to }) => to.y),
    1.79 * size,
    CREST_Y - 30,
    DRAWING_HEIGHT - 50,
  );
  const way = side === 'right' ? 1 : -1;
  return lines.map(({ id, from, to }, i) => {
    const shown = presentReading(readingOf(evaluation.readings, id));
    const elbow = { x: Math.max(way * to.x, Math.min(column - 8, way * to.x + 16)) * way, y: to.y };
    const tag = { x: column * way, y: places[i] };
    return (
      <g key={id} className="line" data-line={id} {...acts(id)}>
        <Dimension from={from} to={to} leader={[elbow, tag]} lit={lit === id} />
        <Tag {...tag} side={side} number={shown.number} mark={shown.mark} lit={lit === id} size={size} />
      </g>
    );
  });
}

interface SectionDimensionsProps {
  evaluation: Evaluation;
  kind: Kind;
  lit: ReadingId | null;
  acts: (id: ReadingId) => LineActs;
  /** Type size of the tags, px. */
  size: number;
}

/** The walls as dimension lines between the readings' own two points, facial tags right, palatal left. */
export function SectionDimensions({ evaluation, kind, lit, acts, size }: SectionDimensionsProps) {
  const lines = linesOf(evaluation, kind, lit);
  return (
    <>
      <Side
        evaluation={evaluation}
        lines={lines.filter(({ to }) => to.x < 0)}
        side="left"
        column={70}
        lit={lit}
        acts={acts}
        size={size}
      />
      <Side
        evaluation={evaluation}
        lines={lines.filter(({ to }) => to.x >= 0)}
        side="right"
        column={size > TAG_SIZE.desk ? 58 : 72}
        lit={lit}
        acts={acts}
        size={size}
      />
    </>
  );
}
