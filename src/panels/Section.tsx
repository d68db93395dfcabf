import { memo, type ReactNode, useMemo } from 'react';
import { sectionOutline } from '../core/anatomy/section.ts';
import type { Loop } from '../core/geometry/slice.ts';
import { shoulderLevel } from '../core/plan/edits.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { cutCrown } from '../core/restoration/plannedCrown.ts';
import { Dimension } from '../marks/Dimension.tsx';
import { DOTTED, dashed } from '../marks/dash.ts';
import { Tag, tagWidth } from '../marks/Tag.tsx';
import { intoSection, planeOf } from '../paper/sectionPlane.ts';
import { litReading } from '../state/litReading.ts';
import type { PlanStores } from '../state/stores.ts';
import { useEvaluation } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { formatNumber, formatQuantity } from '../words/format.ts';
import { presentReading } from '../words/presentReading.ts';
import { say } from '../words/say.ts';
import { KeptImplant } from './KeptImplant.tsx';
import { SectionAcross } from './SectionAcross.tsx';
import { AxisLine, HEADING } from './SectionAxis.tsx';
import { SectionDimensions } from './SectionDimensions.tsx';
import { SectionHole } from './SectionHole.tsx';
import { SectionImplant } from './SectionImplant.tsx';
import { SectionTissues } from './SectionTissues.tsx';
import { SectionWords } from './SectionWords.tsx';
import { CREST_Y, DRAWING_HEIGHT, PX_PER_MM, TAG_SIZE, yOf } from './scale.ts';
import { useKept } from './useKept.ts';
import { useLineActs } from './useLineActs.ts';
import './section.css';

const WIDTH = 295;
/** Where the axis stands, px from the left. */
const AXIS = 153;

/** The crest's level, right across. */
const CREST = dashed(
  [
    { x: -AXIS, y: CREST_Y },
    { x: WIDTH - AXIS, y: CREST_Y },
  ],
  DOTTED,
);

const mm = (value: number): string => formatNumber({ value, unit: 'mm' });

function Upright({ x, y, text }: { x: number; y: number; text: string }) {
  return (
    <text className="drawing-figure" textAnchor="middle" transform={`translate(${x} ${y}) rotate(-90)`}>
      {text}
    </text>
  );
}

/** The lengths of the shape as a chain at the far left: neck, then implanted length. */
function LengthChain({ evaluation }: { evaluation: Evaluation }) {
  const { placement, plan } = evaluation;
  const { transmucosalLength: neck, implantedLength } = plan.implant;
  const x = -AXIS + 20;
  const [top, thread, apex] = [placement.tP, placement.tP + neck, placement.tA].map(yOf);
  const reach = -(plan.implant.platformDiameter / 2) * PX_PER_MM - 4;
  return (
    <g className="chain">
      <path d={`M${x - 5} ${thread}H${reach}M${x - 5} ${apex}H${reach}`} />
      <Dimension from={{ x, y: thread }} to={{ x, y: apex }} />
      <Upright
        x={x - 5}
        y={(thread + apex) / 2}
        text={say('drawing.implanted', { length: mm(implantedLength) })}
      />
      {neck > 0 && (
        <>
          <path d={`M${x - 5} ${top}H${reach}`} />
          <Dimension from={{ x, y: top }} to={{ x, y: thread }} />
          <Upright x={x - 5} y={(top + thread) / 2} text={mm(neck)} />
        </>
      )}
    </g>
  );
}

/** Where the axis passes the incisal line, with the offset as a dimension. */
function IncisalMark({ evaluation, lit, size }: { evaluation: Evaluation; lit: boolean; size: number }) {
  const { anatomy, line } = evaluation;
  const project = intoSection(evaluation);
  const [x, q] = [line.x, line.q]
    .map((p) => project(anatomy.toJaw(p)))
    .map((p) => ({ x: p.x * PX_PER_MM, y: yOf(p.level) }));
  const reading = readingOf(evaluation.readings, 'incisal-line-offset');
  const shown = presentReading(reading);
  const way = (reading.value ?? 0) < 0 ? say('drawing.palatal') : say('drawing.facial');
  const words = shown.number === '0.0' ? undefined : way;
  const width = tagWidth({ number: shown.number, mark: shown.mark, words, size });
  // A long crown reaches up to the heading: the words keep below it, and a large tag within the drawing.
  const left = {
    x: Math.max(Math.min(x.x, q.x) - 14, width + 4 - AXIS),
    y: Math.max(HEADING, q.y),
  };
  return (
    <g data-line="incisal-line-offset">
      <path className="drawing-thin" d={`M${x.x - 6} ${x.y}h12M${x.x} ${x.y - 6}v12`} />
      <path className="drawing-thin" d={`M${x.x + 8} ${x.y}L62 ${Math.max(HEADING, x.y - 10)}`} />
      <text className="drawing-word" x="65" y={Math.max(HEADING, x.y - 10) + 4}>
        {say('drawing.incisalLine')}
      </text>
      <Dimension from={q} to={x} leader={[left]} lit={lit} />
      <Tag
        {...left}
        side="left"
        number={shown.number}
        mark={shown.mark}
        words={words}
        lit={lit}
        size={size}
      />
    </g>
  );
}

interface PlacedProps {
  evaluation: Evaluation;
  kept: Evaluation | null;
  /** What is shown has gone wrong: the kept pose is the plan itself. */
  wrong: boolean;
  kind: 'faciopalatal' | 'mesiodistal';
}

/** The implant in its place, with its axis, and a kept pose's ghost. */
function Placed({ evaluation, kept, wrong, kind }: PlacedProps) {
  const { placement, plan } = evaluation;
  return (
    <>
      <SectionImplant
        shape={plan.implant}
        platform={placement.tP}
        roll={plan.pose.roll - (kind === 'mesiodistal' ? 90 : 0)}
      />
      {kept && <KeptImplant kept={kept} evaluation={evaluation} kind={kind} thin={wrong} />}
      <AxisLine top={yOf(placement.tP - (plan.implant.abutment?.height ?? 0))} foot={yOf(placement.tA)} />
    </>
  );
}

const NOTHING: readonly Loop[] = [];

/** What stands in the section where the implant is planned, and what has been drilled there. */
export interface SectionHand {
  readonly planned: Evaluation;
  /** The implant has gone wrong: it stands beside the plan. */
  readonly wrong: boolean;
  /** What the passes have taken, in the plane's coordinates, mm. */
  readonly hole: readonly Loop[];
  /** The tool in the hand: what the drawing is called, and how it stands in it; null: an implant. */
  readonly tool: { readonly label: string; readonly drawing: ReactNode } | null;
}

interface SectionProps {
  stores: PlanStores;
  hand?: SectionHand;
}

/** The section through the implant's axis, faciopalatal, in true scale: palatal left, facial right, crown up. */
export const Section = memo(function Section({ stores, hand }: SectionProps) {
  const { session, live } = stores;
  const evaluation = useEvaluation(stores);
  const layers = useSelected(session, (state) => state.layers);
  const kind = useSelected(session, (state) => state.section);
  const level = useSelected(session, (state) => state.sectionLevel);
  const lit = useSelected(live, (state) => litReading(state, session.getState()));
  const large = useSelected(live, (state) => state.projector);
  const size = large ? TAG_SIZE.class : TAG_SIZE.desk;
  const { plan } = evaluation;
  const { planned = null, wrong = false, hole = NOTHING, tool = null } = hand ?? {};
  const kept = useKept(stores);
  const acts = useLineActs(stores);
  const outline = useMemo(
    () => sectionOutline(evaluation.anatomy, planeOf(evaluation, kind, level)),
    [evaluation, kind, level],
  );
  const crown = useMemo(
    () => cutCrown(evaluation.restoration.crown, planeOf(evaluation, kind, level)).loops,
    [evaluation, kind, level],
  );
  const thinnest = (id: 'facial-wall-thinnest' | 'palatal-wall-thinnest') => {
    const { value } = readingOf(evaluation.readings, id);
    return value === null ? say('drawing.none') : presentReading(readingOf(evaluation.readings, id)).quantity;
  };
  const label = say('drawing.sectionLabel', {
    facial: thinnest('facial-wall-thinnest'),
    palatal: thinnest('palatal-wall-thinnest'),
    shoulder: formatQuantity({ value: shoulderLevel(plan.pose), unit: 'mm', signed: true }),
  });
  const nameOf = () => {
    if (tool) return tool.label;
    return kind === 'faciopalatal' ? label : say(`drawing.sectionLabel.${kind}`);
  };
  const [left, right] =
    kind === 'mesiodistal' ? (['distal', 'mesial'] as const) : (['palatal', 'facial'] as const);
  return (
    <>
      <SectionWords stores={stores} />
      <svg
        className="drawing section"
        viewBox={`${-AXIS} 0 ${WIDTH} ${DRAWING_HEIGHT}`}
        role="img"
        aria-label={nameOf()}
        data-section={kind}
      >
        {kind === 'across' ? (
          <SectionAcross
            evaluation={evaluation}
            outline={outline}
            planned={crown}
            level={level}
            gum={layers.gum}
            teeth={layers.teeth}
            hole={hole}
            tool={tool !== null}
            good={wrong ? planned : null}
          />
        ) : (
          <>
            <SectionTissues outline={outline} planned={crown} gum={layers.gum} teeth={layers.teeth}>
              <SectionHole outline={outline} hole={hole} gum={layers.gum} />
            </SectionTissues>
            <path className="crest-line" d={CREST} />
            {tool ? (
              tool.drawing
            ) : (
              <Placed evaluation={evaluation} kept={planned ?? kept} wrong={wrong} kind={kind} />
            )}
            {layers.lines && (
              <>
                {!large && !tool && <LengthChain evaluation={evaluation} />}
                {kind === 'faciopalatal' && (
                  <IncisalMark evaluation={evaluation} lit={lit === 'incisal-line-offset'} size={size} />
                )}
                <SectionDimensions evaluation={evaluation} kind={kind} lit={lit} acts={acts} size={size} />
              </>
            )}
          </>
        )}
        <g className="drawing-foot">
          <text className="drawing-word" x={-AXIS + 12} y={DRAWING_HEIGHT - 12}>
            {say(`drawing.${left}`)}
          </text>
          <text className="drawing-word" x={WIDTH - AXIS - 12} y={DRAWING_HEIGHT - 12} textAnchor="end">
            {say(`drawing.${right}`)}
          </text>
          <path
            className="drawing-thin"
            d={`M${-2.5 * PX_PER_MM} ${DRAWING_HEIGHT - 10}h${5 * PX_PER_MM}m0-4v8m${-5 * PX_PER_MM}-8v8`}
          />
          <text className="drawing-figure" x="0" y={DRAWING_HEIGHT - 14} textAnchor="middle">
            {say('drawing.bar')}
          </text>
        </g>
      </svg>
    </>
  );
});
