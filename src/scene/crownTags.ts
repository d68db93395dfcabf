import type { ReadingId } from '../core/measure/reading.ts';
import { DEPTH_OF } from '../core/plan/crownAnswer.ts';
import { type AngleMark, crownMarks } from '../core/plan/crownMarks.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { presentReading } from '../words/presentReading.ts';
import { say } from '../words/sayCrown.ts';
import type { Lens } from './lens.ts';
import { type Sight, sightOf } from './sight.ts';
import { type Line, layTags, type TagLine } from './tagLayout.ts';
import { lineOf } from './wallTags.ts';

/** What is measured from each side, beside the channel's exit. */
const MEASURED: Readonly<Record<Sight, readonly ReadingId[]>> = {
  side: ['access-exit-correction', 'emergence-facial', 'abutment-reduction-depth', 'margin-reduction'],
  front: [
    'contact-to-crest-mesial',
    'contact-to-crest-distal',
    'emergence-mesial',
    'emergence-distal',
    'margin-reduction',
  ],
  top: ['mesiodistal-room'],
};

const WORDS = {
  'shoulder-to-gum-margin': 'crown.tag.margin',
  'shoulder-to-cej': 'crown.tag.cej',
  'incisal-line-offset': 'crown.tag.line',
  'access-exit-correction': 'crown.tag.correction',
  'emergence-facial': 'crown.tag.emergence',
  'emergence-mesial': 'crown.tag.emergence',
  'emergence-distal': 'crown.tag.emergence',
  'abutment-reduction-depth': 'crown.tag.grind',
  'margin-reduction': 'crown.tag.lower',
  'contact-to-crest-mesial': 'crown.tag.contact',
  'contact-to-crest-distal': 'crown.tag.contact',
  'mesiodistal-room': 'crown.tag.room',
  'palatal-clearance': 'crown.tag.clearance',
  'crown-height': 'crown.tag.height',
} as const;

/** The arc of an angle is where its leader ends. */
function angleLine(evaluation: Evaluation, lens: Lens, id: ReadingId, angle: AngleMark | null): Line | null {
  if (!angle || angle.arc.length === 0) return null;
  const middle = angle.arc[Math.floor(angle.arc.length / 2)];
  const reading = readingOf(evaluation.readings, id);
  return { reading, from: lens.at(angle.apex), to: lens.at(middle), measured: false };
}

/** From the planned edge to where the channel comes out; the tag says on which side, and bears the state of the turn that mends it. */
function exitLine(evaluation: Evaluation, lens: Lens): Line | null {
  const line = lineOf(evaluation, lens, 'access-exit-to-edge', true);
  if (!line) return null;
  const { readings } = evaluation;
  return {
    ...line,
    words: presentReading(readingOf(readings, 'access-exit')).number,
    mark: presentReading(readingOf(readings, 'access-exit-correction')).mark,
  };
}

/** A reading of the crown group as it is drawn: an angle by its arc, a depth that is ground by the way to go, the rest between its own two points. */
function crownLine(evaluation: Evaluation, lens: Lens, id: ReadingId): Line | null {
  const marks = crownMarks(evaluation);
  if (id === 'access-exit' || id === 'access-exit-to-edge') return exitLine(evaluation, lens);
  if (id === 'access-exit-correction') return angleLine(evaluation, lens, id, marks.correction);
  const contour = marks.contours.find(({ side }) => id === `emergence-${side}`);
  if (id.startsWith('emergence-')) return angleLine(evaluation, lens, id, contour ?? null);
  const line = lineOf(evaluation, lens, id, true);
  if (!line || line.reading.value === 0) return null;
  if (id !== 'abutment-reduction-depth') return line;
  return marks.ground && { ...line, from: lens.at(marks.ground.from), to: lens.at(marks.ground.to) };
}

/** The crown's tags as a view shows them; the lit reading always. */
export function crownTags(
  evaluation: Evaluation,
  lens: Lens,
  lit: ReadingId | null,
  size: number,
): TagLine[] {
  const sight = sightOf(evaluation, lens);
  const wanted: ReadingId[] = ['access-exit-to-edge', ...MEASURED[sight]];
  if (sight === 'side') wanted.push(DEPTH_OF[evaluation.plan.fixing]);
  if (sight === 'top' && evaluation.plan.fixing === 'cemented') wanted.push('incisal-line-offset');
  if (lit && lit !== 'access-exit' && !wanted.includes(lit)) wanted.push(lit);
  const middle = lens.at(evaluation.anatomy.toJaw(evaluation.placement.platform)).x;
  const lines = wanted.flatMap((id) => {
    const line = crownLine(evaluation, lens, id);
    if (!line) return [];
    const key = WORDS[id as keyof typeof WORDS];
    // From the side, what comes out palatally has its tag there, clear of the arc that tilts.
    const palatal = sight === 'side' && id === 'access-exit-to-edge' && (line.reading.value ?? 0) > 0;
    const toLeft = palatal || line.from.x + line.to.x < 2 * middle;
    const side = toLeft ? ('left' as const) : ('right' as const);
    return [key ? { ...line, side, words: say(key) } : { ...line, side }];
  });
  return layTags(lines, lens, size);
}
