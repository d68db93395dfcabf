import { memo, useId } from 'react';
import type { WallProfile as Profile, ReadingId, Side } from '../core/measure/reading.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { Dimension } from '../marks/Dimension.tsx';
import { AXIS, DOTTED, dashed, WITHIN } from '../marks/dash.ts';
import { polyline } from '../marks/path.ts';
import { GlyphShape } from '../marks/StatusGlyph.tsx';
import { Tag, tagWidth } from '../marks/Tag.tsx';
import { litReading } from '../state/litReading.ts';
import type { PlanStores } from '../state/stores.ts';
import { useEvaluation } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { formatNumber } from '../words/format.ts';
import { presentReading } from '../words/presentReading.ts';
import { say } from '../words/say.ts';
import { areaOf, edgesOf, limitLine, runsOf, THICK_PX, wayOf } from './profileShape.ts';
import { CREST_Y, DRAWING_HEIGHT, yOf } from './scale.ts';
import './section.css';

const WIDTH = 236;
/** Where thickness 0, the implant's surface, stands, px from the left. */
const ZERO = 108;
const LEFT = 8 - ZERO;
const RIGHT = 206 - ZERO;
const FOOT = DRAWING_HEIGHT - 32;
/** The crest's level right across, and the implant's surface from there down, in their dashes. */
const CREST = dashed(
  [
    { x: -ZERO, y: CREST_Y },
    { x: WIDTH - ZERO, y: CREST_Y },
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
/** Type size of the tags, px. */
const TAG = 14;

const figure = (value: number): string => formatNumber({ value: Math.abs(value), unit: 'count' });

function Legend({ hatch }: { hatch: string }) {
  const rows = [
    {
      key: 'within',
      mark: (
        <path
          className="limit-near"
          d={dashed(
            [
              { x: 0, y: 0 },
              { x: 34, y: 0 },
            ],
            WITHIN,
          )}
        />
      ),
      word: say('drawing.withinLine'),
    },
    { key: 'beyond', mark: <path className="limit-beyond" d="M0 0H34" />, word: say('drawing.beyondLine') },
    {
      key: 'bone',
      mark: <rect className="wall-fill wall-edge" y="-7" width="34" height="14" />,
      word: say('drawing.boneFill'),
    },
    {
      key: 'void',
      mark: <rect className="void-edge" y="-7" width="34" height="14" fill={hatch} />,
      word: say('drawing.voidFill'),
    },
  ];
  return (
    <g transform={`translate(${LEFT + 6} 50)`}>
      {rows.map(({ key, mark, word }, i) => (
        <g key={key} transform={`translate(0 ${i * 22})`}>
          {mark}
          <text className="drawing-word" x="42" y="4.5">
            {word}
          </text>
        </g>
      ))}
      <g transform="translate(8 92)">
        {(['within', 'near', 'beyond'] as const).map((mark, i) => (
          <g key={mark} transform={`translate(${i * 70} 0)`}>
            <GlyphShape mark={mark} />
            <text className="drawing-word" x="13" y="4.5">
              {say(`status.${mark}`)}
            </text>
          </g>
        ))}
      </g>
    </g>
  );
}

interface ScalesProps {
  /** Height of the facial tag, px: the figure behind it is left out. */
  behind: number | null;
}

function Scales({ behind }: ScalesProps) {
  const levels = [2, 4, 6, 8, 10, 12, 14];
  const shown = levels.filter((level) => behind === null || Math.abs(yOf(level) - behind) > 15);
  const thicknesses = [-4, -2, 0, 2, 4];
  return (
    <g className="scales">
      <path className="grid" d={thicknesses.map((t) => `M${t * THICK_PX} ${CREST_Y}V${FOOT}`).join('')} />
      <path
        className="drawing-thin"
        d={levels.map((level) => `M${RIGHT} ${yOf(level)}h5M${LEFT} ${yOf(level)}h-4`).join('')}
      />
      {shown.map((level) => (
        <text
          key={level}
          className="drawing-figure"
          x={WIDTH - ZERO - 8}
          y={yOf(level) + 4.5}
          textAnchor="end"
        >
          {figure(level)}
        </text>
      ))}
      {thicknesses.map((t) => (
        <text key={t} className="drawing-figure" x={t * THICK_PX} y={FOOT + 14} textAnchor="middle">
          {figure(t)}
        </text>
      ))}
      <text className="drawing-word" x={LEFT + 2} y={FOOT + 27}>
        {say('drawing.palatalMm')}
      </text>
      <text className="drawing-word" x={WIDTH - ZERO - 8} y={FOOT + 27} textAnchor="end">
        {say('drawing.facialMm')}
      </text>
    </g>
  );
}

interface WallProps {
  profile: Profile;
  hatch: string;
  bare: string;
}

/** One side's bone: filled, its edge strong where it counts; void hatched outside it, a bare surface hatched across the axis. */
function Wall({ profile, hatch, bare }: WallProps) {
  const { side, samples } = profile;
  const runs = runsOf(samples);
  const none = () => 0;
  const wall = (s: { wall: number | null }) => Math.max(0, s.wall ?? 0);
  const outside = (s: { wall: number | null }) => Math.min(0, s.wall ?? 0);
  const paths = (of: (run: (typeof runs)[number]) => string) => runs.map(of).join('');
  return (
    <g data-profile={side}>
      <path className="wall-fill" d={paths((run) => polyline(areaOf(run, side, none, wall), true))} />
      {samples.some(({ gap }) => gap > 0.005) && (
        <path
          className="void-edge"
          data-void={side}
          fill={hatch}
          d={paths((run) =>
            polyline(
              areaOf(run, side, wall, (s) => wall(s) + s.gap),
              true,
            ),
          )}
        />
      )}
      {samples.some((s) => outside(s) < 0) && (
        <path
          className="bare"
          fill={bare}
          d={paths((run) => polyline(areaOf(run, side, none, outside), true))}
        />
      )}
      <path
        className="wall-edge-thin"
        d={paths((run) =>
          edgesOf(run, side, false)
            .map((e) => polyline(e))
            .join(''),
        )}
      />
      <path
        className="wall-edge"
        data-edge={side}
        d={paths((run) =>
          edgesOf(run, side, true)
            .map((e) => polyline(e))
            .join(''),
        )}
      />
    </g>
  );
}

function Limits({ evaluation, side }: { evaluation: Evaluation; side: Side }) {
  const { plan, placement } = evaluation;
  const [from, to] = [Math.max(0, placement.tP), placement.tA];
  return (
    <>
      <path className="limit-near" d={dashed(limitLine(plan, side, 'near', from, to), WITHIN)} />
      <path className="limit-beyond" d={polyline(limitLine(plan, side, 'beyond', from, to))} />
    </>
  );
}

/** The thinnest place of a side: a dimension line and a tag. */
function Thinnest({ evaluation, side, lit }: { evaluation: Evaluation; side: Side; lit: ReadingId | null }) {
  const id = `${side}-wall-thinnest` as const;
  const reading = readingOf(evaluation.readings, id);
  if (reading.value === null || reading.level === null) return null;
  const shown = presentReading(reading);
  const way = wayOf(side);
  const y = yOf(reading.level);
  const end = { x: way * Math.max(reading.value * THICK_PX, 0), y };
  // The facial tag stands right of the wall, the palatal one above the crest, where the plot is free.
  const tag =
    side === 'facial'
      ? { x: Math.min(72, Math.max(end.x + 18, 58)), y }
      : { x: Math.max(-44, tagWidth({ ...shown, size: TAG }) + 6 - ZERO), y: Math.min(CREST_Y - 18, y - 18) };
  const leader = side === 'facial' ? [tag] : [{ x: Math.min(end.x - 12, -44), y }, tag];
  return (
    <g data-line={id}>
      <Dimension from={{ x: 0, y }} to={end} leader={leader} lit={lit === id} />
      <Tag
        {...tag}
        side={side === 'facial' ? 'right' : 'left'}
        number={shown.number}
        mark={shown.mark}
        lit={lit === id}
        size={TAG}
      />
    </g>
  );
}

/** Both walls against depth on the section's own scale: palatal left, facial right, the limits as lines. */
export const WallProfile = memo(function WallProfile({ stores }: { stores: PlanStores }) {
  const { session, live } = stores;
  const evaluation = useEvaluation(stores);
  const lit = useSelected(live, (state) => litReading(state, session.getState()));
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
      viewBox={`${-ZERO} 0 ${WIDTH} ${DRAWING_HEIGHT}`}
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
      <Legend hatch={hatch} />
      <Scales behind={facialLevel === null ? null : yOf(facialLevel)} />
      <path className="crest-line" d={CREST} />
      <text className="drawing-word" x={WIDTH - ZERO - 8} y={CREST_Y - 5} textAnchor="end">
        {say('drawing.crest')}
      </text>
      <g clipPath={`url(#${id}plot)`}>
        {evaluation.profiles.map((profile) => (
          <Wall key={profile.side} profile={profile} hatch={hatch} bare={bare} />
        ))}
        <Limits evaluation={evaluation} side="palatal" />
        <Limits evaluation={evaluation} side="facial" />
      </g>
      <path className="axis" d={MIDDLE} />
      <Thinnest evaluation={evaluation} side="palatal" lit={lit} />
      <Thinnest evaluation={evaluation} side="facial" lit={lit} />
    </svg>
  );
});
