import type { Vec3 } from '../core/geometry/vec.ts';
import type { ReadingId } from '../core/measure/reading.ts';
import { DEPTH_OF } from '../core/plan/crownAnswer.ts';
import { type AngleMark, crownMarks } from '../core/plan/crownMarks.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { type Point, polyline } from '../marks/path.ts';
import { intoSection } from '../paper/sectionPlane.ts';
import { presentReading } from '../words/presentReading.ts';
import { say } from '../words/sayCrown.ts';

export type CrownKind = 'faciopalatal' | 'mesiodistal';

/** The crown's own sections stand larger than the walls': CSS px to a millimetre of the model, and where the crest's level lies, px from the top. */
export const SCALE = 22;
export const CREST = 336;

/** Places of the jaw frame as a section through the axis has them, px from axis and top. */
export function intoDrawing(evaluation: Evaluation, kind: CrownKind): (p: Vec3) => Point {
  const project = intoSection(evaluation, kind);
  return (p) => {
    const { x, level } = project(p);
    return { x: x * SCALE, y: CREST + level * SCALE };
  };
}

/** A reading of the crown group in a section: the way it is measured, or the place of what is drawn there already. */
export interface SectionLine {
  readonly id: ReadingId;
  readonly from: Point;
  readonly to: Point;
  readonly measured: boolean;
  readonly words?: string;
}

const IN = {
  faciopalatal: [
    'access-exit-to-edge',
    'access-exit-correction',
    'emergence-facial',
    'abutment-reduction-depth',
    'margin-reduction',
    'palatal-clearance',
  ],
  mesiodistal: [
    'emergence-mesial',
    'emergence-distal',
    'contact-to-crest-mesial',
    'contact-to-crest-distal',
    'mesiodistal-room',
  ],
} as const satisfies Readonly<Record<CrownKind, readonly ReadingId[]>>;

function angleLine(id: ReadingId, angle: AngleMark | null, at: (p: Vec3) => Point): SectionLine | null {
  if (!angle || angle.arc.length === 0) return null;
  const to = at(angle.arc[Math.floor(angle.arc.length / 2)]);
  return { id, from: at(angle.apex), to, measured: false };
}

function lineOf(evaluation: Evaluation, kind: CrownKind, id: ReadingId): SectionLine | null {
  const at = intoDrawing(evaluation, kind);
  const marks = crownMarks(evaluation);
  if (id === 'access-exit-correction') return angleLine(id, marks.correction, at);
  if (id.startsWith('emergence-')) {
    return angleLine(id, marks.contours.find(({ side }) => id === `emergence-${side}`) ?? null, at);
  }
  if (id === 'abutment-reduction-depth') {
    const { ground } = marks;
    return ground && { id, from: at(ground.from), to: at(ground.to), measured: true };
  }
  const { from, to, value } = readingOf(evaluation.readings, id);
  if (!from || !to || value === null || (id === 'margin-reduction' && value === 0)) return null;
  const line = { id, from: at(from), to: at(to), measured: true };
  if (id === 'palatal-clearance') return { ...line, words: say('crown.tag.clearance') };
  if (id === 'mesiodistal-room') return { ...line, words: say('crown.tag.room') };
  if (id !== 'access-exit-to-edge') return line;
  return { ...line, words: presentReading(readingOf(evaluation.readings, 'access-exit')).number };
}

/** What a section measures: its own readings, the depth or the incisal line that the fixing asks for, and the lit one of its plane. */
export function crownLines(evaluation: Evaluation, kind: CrownKind, lit: ReadingId | null): SectionLine[] {
  const { fixing } = evaluation.plan;
  const wanted: ReadingId[] = [...IN[kind]];
  if (kind === 'faciopalatal') {
    wanted.push(DEPTH_OF[fixing]);
    if (fixing === 'cemented') wanted.push('incisal-line-offset');
  }
  const elsewhere: readonly ReadingId[] = [
    ...IN.faciopalatal,
    ...IN.mesiodistal,
    'access-exit',
    'crown-height',
  ];
  if (lit && !wanted.includes(lit) && !elsewhere.includes(lit) && kind === 'faciopalatal') wanted.push(lit);
  return wanted.flatMap((id) => lineOf(evaluation, kind, id) ?? []);
}

/** An angle's two legs and its arc, path data. */
export function anglePaths(evaluation: Evaluation, kind: CrownKind) {
  const at = intoDrawing(evaluation, kind);
  const { contours, correction } = crownMarks(evaluation);
  const own = contours
    .filter(({ side }) => (side === 'facial') === (kind === 'faciopalatal'))
    .map((one) => ({ ...one, id: `emergence-${one.side}` }));
  const bend = correction && kind === 'faciopalatal' ? [{ ...correction, id: 'access-exit-correction' }] : [];
  return [...own, ...bend].map(({ id, apex, onAxis, to, arc }) => ({
    id,
    legs: polyline([at(onAxis), at(apex), at(to)]),
    arc: polyline(arc.map(at)),
  }));
}
