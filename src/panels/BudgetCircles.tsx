import type { RingAndDot } from '../core/drilling/outlook.ts';
import type { BudgetNow } from '../core/plan/budgetNow.ts';
import { AXIS, dashed } from '../marks/dash.ts';
import { GlyphShape, type Mark } from '../marks/StatusGlyph.tsx';
import { formatNumber } from '../words/format.ts';
import { say } from '../words/sayDrill.ts';
import { sayDepth } from '../words/sayTool.ts';

const WIDTH = 236;
const HEIGHT = 118;
/** Radius of what a circle is drawn in, px, and how much of it the farther of ring and dot fills. */
const ROOM = 43;
const FILLED = 0.86;
const CENTRES = [60, 178] as const;

export const offOf = ({ facial, mesial }: RingAndDot): number => Math.hypot(facial, mesial);

const TOLERANCE = 1e-6;
const inside = (one: RingAndDot): boolean => offOf(one) <= one.ring + TOLERANCE;

interface OneProps {
  one: RingAndDot;
  x: number;
  pxPerMm: number;
  mark: Mark;
  name: string;
}

/** A circle within a circle: the dot must stay within the ring. Facial to the right, mesial up. */
function One({ one, x, pxPerMm, mark, name }: OneProps) {
  const y = 50;
  const [dx, dy] = [one.facial * pxPerMm, -one.mesial * pxPerMm];
  const ring = Math.max(0, one.ring) * pxPerMm;
  const reach = ROOM + 3;
  const cross = (from: { x: number; y: number }, to: { x: number; y: number }) => dashed([from, to], AXIS);
  return (
    <g transform={`translate(${x} ${y})`}>
      <path
        className="drawing-thin"
        d={cross({ x: -reach, y: 0 }, { x: reach, y: 0 }) + cross({ x: 0, y: -reach }, { x: 0, y: reach })}
      />
      <circle className="budget-ring" r={ring} />
      <path className="budget-way" d={`M0 0L${dx} ${dy}`} />
      <circle className="budget-dot" cx={dx} cy={dy} r="4.5" />
      <g transform={`translate(${-ROOM - 4} ${-ROOM + 4}) scale(0.85)`}>
        <GlyphShape mark={mark} />
      </g>
      <text className="drawing-word" y={reach + 15} textAnchor="middle">
        <tspan className="budget-name">{name}</tspan>
        <tspan dx="5">
          {say('budget.offOf', {
            off: formatNumber({ value: offOf(one), unit: 'mm', limits: [one.ring] }),
            ring: formatNumber({ value: one.ring, unit: 'mm' }),
          })}
        </tspan>
      </text>
    </g>
  );
}

interface CirclesProps {
  now: BudgetNow;
  /** What is to be said of a dot outside its ring. */
  outside: Mark;
}

/** Where the axis of the pass goes through crest and planned depth, against what the last drill takes up. */
export function BudgetCircles({ now, outside }: CirclesProps) {
  const { crest, apex } = now.circles;
  const farthest = Math.max(crest.ring, offOf(crest), offOf(apex), 0.1);
  const pxPerMm = (FILLED * ROOM) / farthest;
  const last = sayDepth(now.diameters.last);
  const mark = (one: RingAndDot): Mark => (inside(one) ? 'within' : outside);
  return (
    <svg
      className="drawing budget-circles"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={say('budget.circlesLabel', {
        crest: sayDepth(offOf(crest)),
        ring: sayDepth(crest.ring),
        apex: sayDepth(offOf(apex)),
        last,
      })}
      data-circles
    >
      <One one={crest} x={CENTRES[0]} pxPerMm={pxPerMm} mark={mark(crest)} name={say('budget.crest')} />
      <One one={apex} x={CENTRES[1]} pxPerMm={pxPerMm} mark={mark(apex)} name={say('budget.apex')} />
    </svg>
  );
}
