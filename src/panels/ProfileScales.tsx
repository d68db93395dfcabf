import { memo } from 'react';
import { dashed, WITHIN } from '../marks/dash.ts';
import { GlyphShape } from '../marks/StatusGlyph.tsx';
import { formatNumber } from '../words/format.ts';
import { say } from '../words/say.ts';
import { FOOT, LEFT, RIGHT, THICK_PX, PROFILE_WIDTH as WIDTH, ZERO } from './profileShape.ts';
import { CREST_Y, yOf } from './scale.ts';

const figure = (value: number): string => formatNumber({ value: Math.abs(value), unit: 'count' });

/** What the lines, fills and glyphs of the profile mean. */
export const ProfileLegend = memo(function ProfileLegend({ hatch }: { hatch: string }) {
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
});

interface ScalesProps {
  /** The level whose figure the facial tag hides, if any: it is left out. */
  hidden: number | undefined;
}

const LEVELS = [2, 4, 6, 8, 10, 12, 14];

/** The figure of the scale that a tag at a level would cover. */
export const hiddenFigure = (level: number | null): number | undefined =>
  level === null ? undefined : LEVELS.find((one) => Math.abs(yOf(one) - yOf(level)) <= 15);

/** Levels down the right side, thicknesses along the foot. */
export const ProfileScales = memo(function ProfileScales({ hidden }: ScalesProps) {
  const shown = LEVELS.filter((level) => level !== hidden);
  const thicknesses = [-4, -2, 0, 2, 4];
  return (
    <g className="scales">
      <path className="grid" d={thicknesses.map((t) => `M${t * THICK_PX} ${CREST_Y}V${FOOT}`).join('')} />
      <path
        className="drawing-thin"
        d={LEVELS.map((level) => `M${RIGHT} ${yOf(level)}h5M${LEFT} ${yOf(level)}h-4`).join('')}
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
});
