import { memo, useId } from 'react';
import type { ReadingId, Side } from '../core/measure/reading.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { Dimension } from '../marks/Dimension.tsx';
import { AXIS, DOTTED, dashed } from '../marks/dash.ts';
import { Tag, tagWidth } from '../marks/Tag.tsx';
import { litReading } from '../state/litReading.ts';
import type { PlanStores } from '../state/stores.ts';
import { useEvaluation } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { presentReading } from '../words/presentReading.ts';
import { say } from '../words/say.ts';
import { hiddenFigure, ProfileLegend, ProfileScales } from './ProfileScales.tsx';
import { Bare, KeptEdge, Limits, Wall } from './ProfileWalls.tsx';
import { FOOT, LEFT, PROFILE_WIDTH, RIGHT, THICK_PX, wayOf, ZERO } from './profileShape.ts';
import { CREST_Y, DRAWING_HEIGHT, TAG_SIZE, yOf } from './scale.ts';
import { useKept } from './useKept.ts';
import { type LineActs, useLineActs } from './useLineActs.ts';
import './section.css';

/** The crest's level right across, and the implant's surface from there down, in their dashes. */
const CREST = dashed(
  [
    { x: -ZERO, y: CREST_Y },
    { x: PROFILE_WIDTH - ZERO, y: CREST_Y },
  ],
  DOTTED,
);
const MIDDLE = dashed(
  [
    { x: 0, y: CREST_Y - 12 },
    { x: 0, y: FOOT },
  ],
  AXIS,
);
interface ThinnestProps {
  evaluation: Evaluation;
  side: Side;
  lit: ReadingId | null;
  acts: (id: ReadingId) => LineActs;
  /** Type size of the tag, px. */
  size: number;
}

/** The thinnest place of a side: a dimension line and a tag. */
function Thinnest({ evaluation, side, lit, acts, size }: ThinnestProps) {
  const id = `${side}-wall-thinnest` as const;
  const reading = readingOf(evaluation.readings, id);
  if (reading.value === null || reading.level === null) return null;
  const shown = presentReading(reading);
  const way = wayOf(side);
  const y = yOf(reading.level);
  const zero = { x: 0, y };
  const edge = { x: way * reading.value * THICK_PX, y };
  // A surface that stands out is measured across the middle; the leader starts on the tag's own side.
  const [from, end] = reading.value < 0 ? [edge, zero] : [zero, edge];
  const width = tagWidth({ number: shown.number, mark: shown.mark, size });
  // The facial tag stands right of the wall, the palatal one above the crest, where the plot is free.
  const tag =
    side === 'facial'
      ? { x: Math.min(72, PROFILE_WIDTH - ZERO - width - 2, Math.max(end.x + 18, 58)), y }
      : { x: Math.max(-44, width + 6 - ZERO), y: Math.min(CREST_Y - 18, y - 18) };
  const leader = side === 'facial' ? [tag] : [{ x: Math.min(end.x - 12, -44), y }, tag];
  return (
    <g className="line" data-line={id} {...acts(id)}>
      <Dimension from={from} to={end} leader={leader} lit={lit === id} />
      <Tag
        {...tag}
        side={side === 'facial' ? 'right' : 'left'}
        number={shown.number}
        mark={shown.mark}
        lit={lit === id}
        size={size}
      />
    </g>
  );
}

/** Both walls against depth on the section's own scale: palatal left, facial right, the limits as lines. */
export const WallProfile = memo(function WallProfile({ stores }: { stores: PlanStores }) {
  const { session, live } = stores;
  const evaluation = useEvaluation(stores);
  const lit = useSelected(live, (state) => litReading(state, session.getState()));
  const size = useSelected(live, (state) => (state.projector ? TAG_SIZE.class : TAG_SIZE.desk));
  const kept = useKept(stores);
  const acts = useLineActs(stores);
  const id = useId();
  const [hatch, bare] = [`url(#${id}void)`, `url(#${id}bare)`];
  const facialLevel = readingOf(evaluation.readings, 'facial-wall-thinnest').level;
  const thinnest = (side: Side) => {
    const shown = presentReading(readingOf(evaluation.readings, `${side}-wall-thinnest`));
    return shown.level === ''
      ? say('drawing.none')
      : say('drawing.at', { value: shown.quantity, level: shown.level });
  };
  return (
    <svg
      className="drawing profile"
      viewBox={`${-ZERO} 0 ${PROFILE_WIDTH} ${DRAWING_HEIGHT}`}
      role="img"
      aria-label={say('drawing.profileLabel', { facial: thinnest('facial'), palatal: thinnest('palatal') })}
      data-wall-profile
    >
      <defs>
        <pattern
          id={`${id}void`}
          width="5"
          height="5"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <path className="hatch-light" d="M0 0V5" />
        </pattern>
        <pattern
          id={`${id}bare`}
          width="3"
          height="3"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path className="hatch-dense" d="M0 0V3" />
        </pattern>
        <clipPath id={`${id}plot`}>
          <rect x={LEFT} y={CREST_Y - 60} width={RIGHT - LEFT} height={FOOT - CREST_Y + 60} />
        </clipPath>
      </defs>
      <ProfileLegend hatch={hatch} />
      <ProfileScales hidden={hiddenFigure(facialLevel)} />
      <path className="crest-line" d={CREST} />
      <text className="drawing-word" x={PROFILE_WIDTH - ZERO - 8} y={CREST_Y - 5} textAnchor="end">
        {say('drawing.crest')}
      </text>
      <g clipPath={`url(#${id}plot)`}>
        {evaluation.profiles.map((profile) => (
          <Wall key={profile.side} profile={profile} hatch={hatch} />
        ))}
        {evaluation.profiles.map((profile) => (
          <Bare key={profile.side} profile={profile} hatch={bare} />
        ))}
        {kept?.profiles.map((profile) => (
          <KeptEdge key={profile.side} profile={profile} />
        ))}
        <Limits evaluation={evaluation} side="palatal" />
        <Limits evaluation={evaluation} side="facial" />
      </g>
      <path className="axis" d={MIDDLE} />
      <Thinnest evaluation={evaluation} side="palatal" lit={lit} acts={acts} size={size} />
      <Thinnest evaluation={evaluation} side="facial" lit={lit} acts={acts} size={size} />
    </svg>
  );
});
