import type { Answer, MendableUntil } from '../core/drilling/outlook.ts';
import type { BudgetNow } from '../core/plan/budgetNow.ts';
import { GlyphShape, type Mark } from '../marks/StatusGlyph.tsx';
import { spread } from '../marks/spread.ts';
import { formatNumber } from '../words/format.ts';
import { say } from '../words/sayDrill.ts';
import { sayDepth } from '../words/sayTool.ts';

export const MARK_OF = { round: 'within', covered: 'near', open: 'beyond' } as const satisfies Record<
  Answer,
  Mark
>;
export const ANSWERS = ['round', 'covered', 'open'] as const;

const WIDTH = 84;
const HEIGHT = 166;
const BAR = { x: 4, width: 20, top: 20, foot: 160 } as const;
/** Least room for a glyph in a stretch, px. */
const GLYPH = 16;

/** The three stretches of depth, mm; one that has no length is left out. */
export function stretches({ round, covered }: MendableUntil, full: number) {
  const ends = [round ?? 0, covered ?? 0, full];
  return ANSWERS.map((answer, i) => ({
    answer,
    from: i === 0 ? 0 : ends[i - 1],
    to: Math.max(ends[i], i === 0 ? 0 : ends[i - 1]),
  })).filter(({ from, to }) => to - from > 1e-6);
}

interface BarProps {
  now: BudgetNow;
  until: MendableUntil;
}

/** Depth downward: down to where this direction may be mended and how the hole then ends, and where the pass is now. */
export function BudgetBar({ now, until }: BarProps) {
  const { depth, fullDepth } = now;
  const most = Math.max(fullDepth, depth);
  const y = (level: number) => BAR.top + (level / most) * (BAR.foot - BAR.top);
  const parts = stretches(until, fullDepth);
  const ends = parts.map(({ to }) => to);
  const figures = [
    ...ends.map((level) => ({ level, now: false })),
    ...(now.drilled ? [{ level: depth, now: true }] : []),
  ].filter(({ level, now: isNow }) => isNow || !now.drilled || Math.abs(level - depth) > 0.05);
  const heights = spread(
    figures.map(({ level }) => y(level)),
    14,
    BAR.top + 4,
    BAR.foot,
  );
  const said = (level: number | null) => (level === null ? say('drawing.none') : sayDepth(level));
  return (
    <svg
      className="drawing budget-bar"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={say('budget.barLabel', {
        round: said(until.round),
        covered: said(until.covered),
        depth: sayDepth(depth),
        full: sayDepth(fullDepth),
      })}
      data-budget-bar
    >
      <text className="strip-word" x="0" y="10">
        {say('budget.mendedAt')}
      </text>
      {parts.map(({ answer, from, to }) => (
        <g key={answer}>
          <rect
            className="budget-stretch"
            x={BAR.x}
            y={y(from)}
            width={BAR.width}
            height={y(to) - y(from)}
            data-stretch={answer}
          />
          {y(to) - y(from) >= GLYPH && (
            <g transform={`translate(${BAR.x + BAR.width / 2} ${(y(from) + y(to)) / 2}) scale(0.8)`}>
              <GlyphShape mark={MARK_OF[answer]} />
            </g>
          )}
        </g>
      ))}
      {figures.map(({ level, now: isNow }, i) => (
        <g key={`${level}${isNow}`}>
          <path
            className={isNow ? 'budget-now' : 'drawing-thin'}
            d={
              isNow
                ? `M${BAR.x - 4} ${y(level)}H${BAR.x + BAR.width + 4}L${BAR.x + BAR.width + 8} ${heights[i]}`
                : `M${BAR.x + BAR.width} ${y(level)}L${BAR.x + BAR.width + 8} ${heights[i]}`
            }
          />
          <text
            className={isNow ? 'strip-word strip-strong' : 'strip-word'}
            x={BAR.x + BAR.width + 10}
            y={heights[i] + 4}
          >
            {isNow
              ? say('budget.now', { depth: formatNumber({ value: level, unit: 'mm' }) })
              : formatNumber({ value: level, unit: 'mm' })}
          </text>
        </g>
      ))}
    </svg>
  );
}
