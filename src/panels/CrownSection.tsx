import { memo, useId, useMemo } from 'react';
import { sectionOutline } from '../core/anatomy/section.ts';
import { type Loop, sliceMesh } from '../core/geometry/slice.ts';
import { fixingAnswer } from '../core/plan/crownAnswer.ts';
import { crownMarks } from '../core/plan/crownMarks.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { groundAbutmentOf } from '../core/restoration/drawing.ts';
import { cutCrown } from '../core/restoration/plannedCrown.ts';
import { Dimension } from '../marks/Dimension.tsx';
import { AXIS, BEFORE_THE_CUT, dashed, HIDDEN } from '../marks/dash.ts';
import { type Point, polyline, px } from '../marks/path.ts';
import { spread } from '../marks/spread.ts';
import { Tag, tagWidth } from '../marks/Tag.tsx';
import { postOutline } from '../paper/implantOutline.ts';
import { planeOf } from '../paper/sectionPlane.ts';
import { litReading } from '../state/litReading.ts';
import type { CrownLook } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useEvaluation } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { formatTag } from '../words/format.ts';
import { presentAnswer } from '../words/presentAnswer.ts';
import { presentReading, quantityOf } from '../words/presentReading.ts';
import { say } from '../words/sayCrown.ts';
import {
  anglePaths,
  CREST,
  type CrownKind,
  crownLines,
  intoDrawing,
  SCALE,
  type SectionLine,
} from './crownSectionLines.ts';
import { SectionImplant } from './SectionImplant.tsx';
import { SectionTissues } from './SectionTissues.tsx';
import { CREST_Y, DRAWING_HEIGHT, PX_PER_MM, TAG_SIZE } from './scale.ts';
import { type LineActs, useLineActs } from './useLineActs.ts';
import './crown.css';
import './section.css';

/** Width of each drawing, px, and where the axis stands in it. */
const FRAME = {
  faciopalatal: { width: 295, axis: 150 },
  mesiodistal: { width: 236, axis: 118 },
} as const;

/** Nothing is written above this, px: the panel's heading stands there. */
const HEADING = 52;
const FOOT = DRAWING_HEIGHT - 34;
const NOTHING: readonly Loop[] = [];

const pathOf = (loops: readonly Loop[], pattern?: readonly number[]): string =>
  loops
    .map((loop) => {
      const points = loop.map(([x, y]): Point => ({ x: x * SCALE, y: CREST - y * SCALE }));
      return pattern ? dashed(points, pattern, true) : polyline(points, true);
    })
    .join('');

/** The abutment as ground, in steel, within the whole one's outline: what lies between is hatched, to be taken off. */
function Post({ evaluation, kind }: { evaluation: Evaluation; kind: CrownKind }) {
  const id = useId();
  const ground = groundAbutmentOf(evaluation);
  const { placement, plan, anatomy } = evaluation;
  if (!ground) return null;
  const { origin, x, y } = planeOf(evaluation, kind, 0);
  const plane = {
    origin: anatomy.toJaw(origin),
    x: anatomy.toJawDirection(x),
    y: anatomy.toJawDirection(y),
  };
  const whole = postOutline(plan.implant).map((p) => ({
    x: p.x * SCALE,
    y: CREST + (placement.tP + p.y) * SCALE,
  }));
  return (
    <g data-outline="abutment">
      <defs>
        <pattern id={id} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
          <path className="to-grind-hatch" d="M0 0V5" />
        </pattern>
      </defs>
      <path className="to-grind-ground" d={polyline(whole, true)} />
      <path d={polyline(whole, true)} fill={`url(#${id})`} />
      <path className="to-grind-edge" d={dashed(whole, BEFORE_THE_CUT, true)} />
      <path className="post-cut" d={pathOf(sliceMesh(ground.left, plane))} />
    </g>
  );
}

/** The planned crown as it is cut: as the look has it. */
function Cut({ loops, look }: { loops: readonly Loop[]; look: CrownLook }) {
  if (look === 'none') return null;
  return (
    <g data-outline="crown">
      {look !== 'outline' && <path className={`crown-cut crown-${look}`} d={pathOf(loops)} />}
      <path className="crown-cut-edge" d={pathOf(loops, look === 'outline' ? BEFORE_THE_CUT : undefined)} />
    </g>
  );
}

/** Channel with its bend, straight way on, exit and finishing line. */
function Channel({ evaluation }: { evaluation: Evaluation }) {
  const at = intoDrawing(evaluation, 'faciopalatal');
  const { channel, exit, correction } = crownMarks(evaluation);
  const { access } = evaluation.restoration;
  if (!channel || !exit || !access) return null;
  const { toJaw } = evaluation.anatomy;
  const [palatal, facial] = channel.walls;
  const walls = polyline([...palatal, ...[...facial].reverse()].map(at), true);
  const { x, y } = at(exit.at);
  return (
    <g data-outline="channel">
      <path className="bore" d={walls} />
      {correction && (
        <path className="drawing-thin" d={dashed([toJaw(access.bend), toJaw(access.exit)].map(at), AXIS)} />
      )}
      <path className="exit-mark" d={`M${px(x - 9)} ${px(y)}h18M${px(x)} ${px(y - 9)}v18`} />
      <circle className="exit-mark" cx={px(x)} cy={px(y)} r="5.5" />
    </g>
  );
}

interface TagsProps {
  evaluation: Evaluation;
  lines: readonly SectionLine[];
  side: 'left' | 'right';
  /** Where the drawing ends on that side, px from the axis. */
  edge: number;
  acts: (id: SectionLine['id']) => LineActs;
  lit: string | null;
  size: number;
}

/** Tags along an edge of the drawing, each with its line; none over another. */
function Tags({ evaluation, lines, side, edge, acts, lit, size }: TagsProps) {
  const way = side === 'right' ? 1 : -1;
  const places = spread(
    lines.map(({ to }) => to.y),
    1.8 * size,
    HEADING + size,
    FOOT,
  );
  return lines.map(({ id, from, to, measured, words }, i) => {
    const reading = readingOf(evaluation.readings, id);
    const shown = presentReading(reading);
    const mark =
      id === 'access-exit-to-edge'
        ? presentReading(readingOf(evaluation.readings, 'access-exit-correction')).mark
        : shown.mark;
    const number = formatTag(quantityOf(reading));
    const width = tagWidth({ number, mark, words, size });
    const tag = { x: way * (edge - width - 4), y: places[i] };
    return (
      <g key={id} className="line" data-line={id} {...acts(id)}>
        {measured ? (
          <Dimension from={from} to={to} leader={[tag]} lit={lit === id} />
        ) : (
          <g className={lit === id ? 'dimension dimension-lit' : 'dimension'}>
            <path className="casing" d={polyline([to, tag])} />
            <path d={polyline([to, tag])} />
          </g>
        )}
        <Tag {...tag} side={side} number={number} mark={mark} words={words} lit={lit === id} size={size} />
      </g>
    );
  });
}

/** Crown height as a chain at the far left. */
function HeightChain({ evaluation, x, lit }: { evaluation: Evaluation; x: number; lit: boolean }) {
  const reading = readingOf(evaluation.readings, 'crown-height');
  if (reading.value === null) return null;
  const foot = CREST + evaluation.placement.tP * SCALE;
  const top = foot - reading.value * SCALE;
  const height = formatTag(quantityOf(reading));
  return (
    <g className="chain" data-line="crown-height">
      <path d={`M${x - 5} ${px(foot)}H-8M${x - 5} ${px(top)}H-8`} />
      <Dimension from={{ x, y: foot }} to={{ x, y: top }} lit={lit} />
      <text
        className="drawing-figure"
        textAnchor="middle"
        transform={`translate(${x - 5} ${px((foot + top) / 2)}) rotate(-90)`}
      >
        {say('crown.section.height', { height })}
      </text>
    </g>
  );
}

interface CrownSectionProps {
  stores: PlanStores;
  kind: CrownKind;
}

/** The planned crown and what stands under it, cut through the implant's axis; crown up. */
export const CrownSection = memo(function CrownSection({ stores, kind }: CrownSectionProps) {
  const { session, live } = stores;
  const evaluation = useEvaluation(stores);
  const layers = useSelected(session, (state) => state.layers);
  const look = useSelected(session, (state) => state.crownLook);
  const lit = useSelected(live, (state) => litReading(state, session.getState()));
  const large = useSelected(live, (state) => state.projector);
  const size = large ? TAG_SIZE.class : TAG_SIZE.desk;
  const acts = useLineActs(stores);
  const plane = useMemo(() => planeOf(evaluation, kind, 0), [evaluation, kind]);
  const outline = useMemo(() => sectionOutline(evaluation.anatomy, plane), [evaluation, plane]);
  const crown = useMemo(() => cutCrown(evaluation.restoration.crown, plane).loops, [evaluation, plane]);
  const { plan, placement } = evaluation;
  const { width, axis } = FRAME[kind];
  const shape = useMemo(() => ({ ...plan.implant, abutment: null }), [plan.implant]);
  const lines = layers.lines ? crownLines(evaluation, kind, lit) : [];
  const faciopalatal = kind === 'faciopalatal';
  const marks = crownMarks(evaluation);
  const at = intoDrawing(evaluation, kind);
  const label = faciopalatal
    ? say('crown.section.faciopalatal', { answer: presentAnswer(fixingAnswer(evaluation)).axis })
    : say('crown.section.mesiodistal');
  const chain = faciopalatal && layers.lines && !large;
  return (
    <>
      {faciopalatal && (
        <p className="crown-heading" aria-hidden="true">
          {say('crown.section.heading')}
        </p>
      )}
      <svg
        className="drawing section crown-section"
        viewBox={`${-axis} 0 ${width} ${DRAWING_HEIGHT}`}
        role="img"
        aria-label={label}
        data-crown-section={kind}
      >
        <g
          className="enlarged"
          transform={`translate(0 ${CREST}) scale(${SCALE / PX_PER_MM}) translate(0 ${-CREST_Y})`}
        >
          <SectionTissues outline={outline} planned={NOTHING} gum={layers.gum} teeth={layers.teeth} />
        </g>
        <Cut loops={crown} look={look} />
        <g
          className="enlarged"
          transform={`translate(0 ${CREST}) scale(${SCALE / PX_PER_MM}) translate(0 ${-CREST_Y})`}
        >
          <SectionImplant
            shape={shape}
            platform={placement.tP}
            roll={plan.pose.roll - (faciopalatal ? 0 : 90)}
          />
        </g>
        <Post evaluation={evaluation} kind={kind} />
        {faciopalatal && <Channel evaluation={evaluation} />}
        <path
          className="axis"
          d={dashed(
            [
              { x: 0, y: HEADING - 14 },
              { x: 0, y: CREST + placement.tP * SCALE },
            ],
            AXIS,
          )}
        />
        {layers.lines && (
          <>
            {marks.lowered && faciopalatal && (
              <path className="drawing-thin" d={dashed(marks.lowered.map(at), HIDDEN)} />
            )}
            {anglePaths(evaluation, kind).map(({ id, legs, arc }) => (
              <g key={id} className={lit === id ? 'crown-angle lit' : 'crown-angle'}>
                <path className="casing" d={legs + arc} />
                <path d={legs + arc} />
              </g>
            ))}
          </>
        )}
        {chain && <HeightChain evaluation={evaluation} x={18 - axis} lit={lit === 'crown-height'} />}
        {(['left', 'right'] as const).map((side) => (
          <Tags
            key={side}
            evaluation={evaluation}
            lines={lines.filter(({ from, to }) => from.x + to.x >= 0 === (side === 'right'))}
            side={side}
            edge={side === 'right' ? width - axis : axis - (chain ? 22 : 0)}
            acts={acts}
            lit={lit}
            size={size}
          />
        ))}
        <g className="drawing-foot">
          <text className="drawing-word" x={-axis + 12} y={DRAWING_HEIGHT - 12}>
            {say(faciopalatal ? 'drawing.palatal' : 'drawing.distal')}
          </text>
          <text className="drawing-word" x={width - axis - 12} y={DRAWING_HEIGHT - 12} textAnchor="end">
            {say(faciopalatal ? 'drawing.facial' : 'drawing.mesial')}
          </text>
          <path
            className="drawing-thin"
            d={`M${-2.5 * SCALE} ${DRAWING_HEIGHT - 10}h${5 * SCALE}m0-4v8m${-5 * SCALE}-8v8`}
          />
          <text className="drawing-figure" x="0" y={DRAWING_HEIGHT - 14} textAnchor="middle">
            {say('crown.section.bar')}
          </text>
        </g>
      </svg>
    </>
  );
});
