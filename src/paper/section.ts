import { sectionOutline } from '../core/anatomy/section.ts';
import { totalLength } from '../core/implant/shape.ts';
import type { ReadingId } from '../core/measure/reading.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { crownInPlane } from '../core/restoration/drawing.ts';
import { dashed } from '../marks/dash.ts';
import type { Point } from '../marks/path.ts';
import { spread } from '../marks/spread.ts';
import { formatNumber } from '../words/format.ts';
import { presentReading } from '../words/presentReading.ts';
import { say } from '../words/saySheet.ts';
import { implantOutline, postOutline, shoulderEdge } from './implantOutline.ts';
import { dimension, tag, tagRoom } from './marks.ts';
import { intoSection, planeOf } from './sectionPlane.ts';
import { area, DASHES, type Drawing, ink, LINE, line, type Shape, text } from './shapes.ts';
import { tissues } from './tissues.ts';

/** How far past the apex the bone is drawn, and past the crown's edge the axis, mm of the model. */
const PAST = { apex: 3.4, crown: 1.6 } as const;
/** Half the width that is drawn of the model, mm. */
const HALF = 9;
const TYPE = { tag: 3.9, word: 3.2 } as const;

/** Levels along the axis between which the section is drawn, mm apical of the entry. */
function range(evaluation: Evaluation): { top: number; foot: number } {
  const { placement, plan, line: incisal, anatomy } = evaluation;
  const into = intoSection(evaluation);
  const edge = Math.min(into(anatomy.toJaw(incisal.q)).level, into(anatomy.toJaw(incisal.x)).level);
  const post = placement.tP - (plan.implant.abutment?.height ?? 0);
  return { top: Math.min(edge, post) - PAST.crown, foot: placement.tA + PAST.apex };
}

/** The implant in section, its axis upright. */
function implant({ placement, plan }: Evaluation, scale: number): Shape[] {
  const { implant: shape, pose } = plan;
  const turn = (pose.roll * Math.PI) / 180;
  const place = (points: readonly Point[]) =>
    points.map(({ x, y }) => ({ x: x * scale, y: (placement.tP + y) * scale }));
  const parts = [
    shape.scallop > 0 ? shoulderEdge(shape, turn) : [],
    postOutline(shape),
    implantOutline(shape, turn),
  ].filter((points) => points.length > 0);
  const width = scale > 2 ? LINE.thin : LINE.fine;
  return parts.map((points, i) =>
    area(line(place(points), true), 'steel', width, i === parts.length - 1 ? 'implant' : 'implant-part'),
  );
}

/** The axis as a long dash and dot, white through the steel. */
function axis({ placement, plan }: Evaluation, scale: number, top: number, foot: number): Shape[] {
  const steel = [placement.tP - (plan.implant.abutment?.height ?? 0), placement.tA];
  const broken = (from: number, to: number) =>
    dashed(
      [
        { x: 0, y: from * scale },
        { x: 0, y: to * scale },
      ],
      DASHES.axis.map((part) => part * Math.min(1, scale / 2.5)),
    );
  const width = scale > 2 ? LINE.thin : LINE.fine;
  return [
    ink(broken(top, steel[0]), width, 'axis'),
    { kind: 'path', d: broken(steel[0], steel[1]), stroke: 'white', width },
    ink(broken(steel[1], foot), width),
  ];
}

/** The section through the axis at a scale, without a word on it: what can be laid on the model, or measured. */
export function bareSection(evaluation: Evaluation, scale: number): Drawing {
  const { top, foot } = range(evaluation);
  const plane = planeOf(evaluation, 'faciopalatal', 0);
  const outline = { ...sectionOutline(evaluation.anatomy, plane), crown: crownInPlane(evaluation, plane) };
  return {
    left: -HALF * scale,
    top: top * scale - 1,
    width: 2 * HALF * scale,
    height: (foot - top) * scale + 2,
    label: say('sheet.sectionLabel'),
    shapes: [
      ...tissues(outline, scale, foot),
      ...implant(evaluation, scale),
      ...axis(evaluation, scale, top, foot - 1),
    ],
  };
}

const WALLS = {
  right: ['facial-wall-1mm', 'facial-wall-3mm', 'facial-wall-thinnest', 'facial-wall-apex'],
  left: ['palatal-wall-1mm', 'palatal-wall-thinnest', 'palatal-wall-apex'],
} as const satisfies Readonly<Record<'left' | 'right', readonly ReadingId[]>>;
/** A line whose ends stand farther than this (mm) from the plane is none of the section's. */
const IN_PLANE = 0.3;
/** Two lines of one side nearer than this (mm) say the same: the later one is left out. */
const SAME_PLACE = 0.25;

interface Wall {
  readonly id: ReadingId;
  readonly from: Point;
  readonly to: Point;
}

/** The walls of a side that are dimensioned, mm of paper. */
function wallsOf(evaluation: Evaluation, ids: readonly ReadingId[], scale: number): Wall[] {
  const into = intoSection(evaluation);
  const out: Wall[] = [];
  for (const id of ids) {
    const { from, to, value } = readingOf(evaluation.readings, id);
    if (!from || !to || value === null) continue;
    const [a, b] = [into(from), into(to)];
    if (Math.max(Math.abs(a.off), Math.abs(b.off)) > IN_PLANE) continue;
    const wall = {
      id,
      from: { x: a.x * scale, y: a.level * scale },
      to: { x: b.x * scale, y: b.level * scale },
    };
    if (out.every(({ to: other }) => Math.abs(other.y - wall.to.y) > SAME_PLACE * scale)) out.push(wall);
  }
  return out;
}

/** Dimension lines of one side with their tags in a column, `reach` mm from the axis. */
function walls(
  evaluation: Evaluation,
  side: 'left' | 'right',
  scale: number,
  reach: number,
  foot: number,
): Shape[] {
  const lines = wallsOf(evaluation, WALLS[side], scale);
  const ys = spread(
    lines.map(({ to }) => to.y),
    1.75 * TYPE.tag,
    -20,
    foot - TYPE.tag,
  );
  const way = side === 'right' ? 1 : -1;
  return lines.flatMap(({ id, from, to }, i) => {
    const shown = presentReading(readingOf(evaluation.readings, id));
    const end = { x: way * reach, y: ys[i] };
    const elbow = { x: way * Math.min(reach - 2.4, Math.max(way * to.x + 2.6, reach - 9)), y: to.y };
    return [
      ...dimension(from, to, [elbow, end]),
      ...tag({ number: shown.number, mark: shown.mark, reading: id }, end, side, TYPE.tag),
    ];
  });
}

/** Where the axis passes the incisal line: a cross on the line, the offset as a tag at the right. */
function incisal(evaluation: Evaluation, scale: number, reach: number): Shape[] {
  const { anatomy, line: incisalLine } = evaluation;
  const into = intoSection(evaluation);
  const [x, q] = [incisalLine.x, incisalLine.q]
    .map((p) => into(anatomy.toJaw(p)))
    .map((p) => ({ x: p.x * scale, y: p.level * scale }));
  const reading = readingOf(evaluation.readings, 'incisal-line-offset');
  const shown = presentReading(reading);
  const end = { x: Math.max(reach - 8, x.x + 6), y: q.y };
  return [
    ink(
      line([
        { x: x.x - 1.6, y: x.y },
        { x: x.x + 1.6, y: x.y },
      ]) +
        line([
          { x: x.x, y: x.y - 1.6 },
          { x: x.x, y: x.y + 1.6 },
        ]),
      LINE.thin,
    ),
    ...dimension(q, x, [end]),
    ...tag({ number: shown.number, mark: shown.mark, reading: reading.id }, end, 'right', TYPE.tag),
    text(end.x, end.y + 1.75 * TYPE.tag, say('sheet.toIncisalLine'), TYPE.word, { tone: 'soft' }),
  ];
}

/** Neck and implanted length as a chain at the far left. */
function lengths({ placement, plan }: Evaluation, scale: number, reach: number): Shape[] {
  const { transmucosalLength: neck, implantedLength, platformDiameter } = plan.implant;
  const x = -reach;
  const [top, thread, apex] = [placement.tP, placement.tP + neck, placement.tA].map((t) => t * scale);
  const out = (y: number) =>
    line([
      { x: x - 1, y },
      { x: -(platformDiameter / 2) * scale - 1, y },
    ]);
  const mm = (value: number) => formatNumber({ value, unit: 'mm' });
  const upright = (y: number, words: string) =>
    text(x - 1.2, y, words, TYPE.tag, { strong: true, anchor: 'middle', upright: true, cased: true });
  return [
    ink(out(thread) + out(apex) + (neck > 0 ? out(top) : ''), LINE.fine),
    ...dimension({ x, y: thread }, { x, y: apex }),
    upright((thread + apex) / 2, say('drawing.implanted', { length: mm(implantedLength) })),
    ...(neck > 0
      ? [
          ...dimension({ x, y: top }, { x, y: thread }),
          text(x - 1.6, top - 1, mm(neck), TYPE.tag, { strong: true, anchor: 'end' }),
        ]
      : []),
  ];
}

/** The crest's level right across, with its word. */
function crest(reach: number): Shape[] {
  const d = dashed(
    [
      { x: -reach, y: 0 },
      { x: reach, y: 0 },
    ],
    DASHES.dotted,
  );
  return [ink(d, LINE.fine)];
}

/** The section through the axis at a scale with the walls as dimension lines, lengths, crest, and where the axis passes the incisal line. */
export function walledSection(evaluation: Evaluation, scale: number): Drawing {
  const { top, foot } = range(evaluation);
  const bare = bareSection(evaluation, scale);
  const farthest = (side: 'left' | 'right') =>
    Math.max(0, ...wallsOf(evaluation, WALLS[side], scale).map(({ to }) => Math.abs(to.x)));
  const [left, right] = (['left', 'right'] as const).map((side) => Math.max(6.2 * scale, farthest(side) + 7));
  const widest = tagRoom({ number: '−0.0', mark: 'near' }, TYPE.tag);
  const [west, east] = [left + widest + 9, right + widest + 4];
  const low = foot * scale;
  return {
    ...bare,
    left: -west,
    width: west + east,
    top: top * scale - 4,
    height: (foot - top) * scale + 10,
    label: say('sheet.wallsLabel', {
      length: formatNumber({ value: totalLength(evaluation.plan.implant), unit: 'mm' }),
    }),
    shapes: [
      ...bare.shapes,
      ...crest(HALF * scale),
      text(HALF * scale, -0.8, say('drawing.crest'), TYPE.word, { anchor: 'end', cased: true }),
      ...lengths(evaluation, scale, left + widest + 2),
      ...walls(evaluation, 'left', scale, left, low),
      ...walls(evaluation, 'right', scale, right, low),
      ...incisal(evaluation, scale, right),
      text(-HALF * scale, low + 4, say('drawing.palatal'), TYPE.word),
      text(HALF * scale, low + 4, say('drawing.facial'), TYPE.word, { anchor: 'end' }),
    ],
  };
}
