import { memo, useId } from 'react';
import { seatNow } from '../core/plan/seat.ts';
import { DOTTED, dashed, HIDDEN } from '../marks/dash.ts';
import { polyline } from '../marks/path.ts';
import type { HandStores } from '../state/held.ts';
import { useEvaluation, usePlan } from '../state/usePlan.ts';
import { formatNumber, formatQuantity } from '../words/format.ts';
import { say } from '../words/saySeat.ts';
import { ContactLegend } from './ContactLegend.tsx';
import {
  CHART_FOOT,
  CHART_WIDTH,
  type ContactBar,
  contactBars,
  LENGTHS,
  lengthRuns,
  lengthsEnd,
  SHARE,
  sharesPath,
} from './contactShape.ts';
import { CREST_Y, DRAWING_HEIGHT, yOf } from './scale.ts';
import './section.css';
import './seat.css';

const LEVELS = [2, 4, 6, 8, 10, 12, 14];
const across = (y: number, from = 0, to = CHART_WIDTH) => [
  { x: from, y },
  { x: to, y },
];
const CREST = dashed(across(CREST_Y), DOTTED);
const figure = (value: number): string => formatNumber({ value, unit: 'count' });
const mm = (value: number): string => formatNumber({ value, unit: 'mm' });

/** Depths at the right, shares and lengths along the foot. */
function Scales({ end }: { end: number }) {
  const shares = [0, 50, 100].map((share) => ({
    share,
    x: SHARE.from + (share / 100) * (SHARE.to - SHARE.from),
  }));
  const lengths = [-1, 0, 1].map((way) => ({ length: way * end, x: LENGTHS.zero + way * LENGTHS.half }));
  const grid = [...shares, ...lengths].map(({ x }) => `M${x} ${CREST_Y}V${CHART_FOOT}`).join('');
  return (
    <g className="scales">
      <path className="grid" d={grid} />
      {LEVELS.map((level) => (
        <text
          key={level}
          className="drawing-figure"
          x={CHART_WIDTH - 6}
          y={yOf(level) + 4.5}
          textAnchor="end"
        >
          {figure(level)}
        </text>
      ))}
      {shares.map(({ share, x }) => (
        <text key={share} className="drawing-figure" x={x} y={CHART_FOOT + 14} textAnchor="middle">
          {figure(share)}
        </text>
      ))}
      {lengths.map(({ length, x }) => (
        <text key={length} className="drawing-figure" x={x} y={CHART_FOOT + 14} textAnchor="middle">
          {length === 0 ? figure(0) : mm(Math.abs(length))}
        </text>
      ))}
      <text className="drawing-word" x={SHARE.from - 4} y={CHART_FOOT + 27}>
        {say('contact.shareScale')}
      </text>
      <text className="drawing-word" x={LENGTHS.zero - 6} y={CHART_FOOT + 27} textAnchor="end">
        {say('contact.gapSide')}
      </text>
      <text className="drawing-word" x={LENGTHS.zero + 6} y={CHART_FOOT + 27}>
        {say('contact.pressSide')}
      </text>
      <text className="drawing-word" x={CHART_WIDTH - 6} y={CHART_FOOT + 27} textAnchor="end">
        {say('contact.mmScale')}
      </text>
    </g>
  );
}

/** Mean press to the right, widest gap to the left, each against depth. */
function Lengths({ bars, end }: { bars: readonly ContactBar[]; end: number }) {
  const press = lengthRuns(bars, (bar) => bar.press, 1, end);
  const gap = lengthRuns(bars, (bar) => bar.widest, -1, end);
  return (
    <>
      <path className="wall-edge" data-contact="press" d={press.map((run) => polyline(run)).join('')} />
      <path className="limit-near" data-contact="widest" d={gap.map((run) => dashed(run, HIDDEN)).join('')} />
    </>
  );
}

/** What of the implant's circumference touches bone, against depth on the section's own scale; press and gap beside it. */
export const ContactChart = memo(function ContactChart({ stores }: { stores: HandStores }) {
  const now = seatNow(usePlan(stores.planned));
  const { placement } = useEvaluation(stores);
  const id = useId();
  if (!now) return <p className="calm">{say('contact.chartEmpty')}</p>;
  const { contact } = now;
  const bars = contactBars(contact, placement.tP);
  const end = lengthsEnd(bars);
  const thread = yOf(placement.tP + contact.grid.stations[contact.grid.threadFrom]);
  const fills = { contact: `url(#${id}contact)`, open: `url(#${id}open)` };
  return (
    <svg
      className="drawing contact-chart"
      viewBox={`0 0 ${CHART_WIDTH} ${DRAWING_HEIGHT}`}
      role="img"
      aria-label={say('contact.chartLabel', {
        thread: formatQuantity({ value: contact.percent, unit: 'percent', limits: [0, 100] }),
        press: formatQuantity({ value: contact.meanPress, unit: 'mm' }),
      })}
      data-contact-chart
    >
      <defs>
        <pattern
          id={`${id}contact`}
          width="4"
          height="4"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect className="wall-fill" width="4" height="4" />
          <path className="hatch-light" d="M0 0V4" />
        </pattern>
        <pattern id={`${id}open`} width="5" height="5" patternUnits="userSpaceOnUse">
          <circle className="dot" cx="1.5" cy="1.5" r="1" />
        </pattern>
        <clipPath id={`${id}plot`}>
          <rect width={CHART_WIDTH} height={CHART_FOOT} />
        </clipPath>
      </defs>
      <ContactLegend fills={fills} />
      <Scales end={end} />
      <g clipPath={`url(#${id}plot)`}>
        <path
          className="gap-bar"
          d={sharesPath(
            bars,
            (bar) => bar.contact,
            (bar) => bar.gap,
          )}
        />
        <path
          fill={fills.open}
          d={sharesPath(
            bars,
            (bar) => bar.contact + bar.gap,
            (bar) => bar.open,
          )}
        />
        <path
          className="contact-bar"
          fill={fills.contact}
          data-contact="share"
          d={sharesPath(
            bars,
            () => 0,
            (bar) => bar.contact,
          )}
        />
        <Lengths bars={bars} end={end} />
        <path className="drawing-thin" d={polyline(across(thread, 4, SHARE.to + 6))} />
      </g>
      <path className="drawing-thin" d={`M${LENGTHS.zero} ${CREST_Y}V${CHART_FOOT}`} />
      <path className="crest-line" d={CREST} />
      <g className="scales">
        <text className="drawing-word" x={CHART_WIDTH - 6} y={CREST_Y - 5} textAnchor="end">
          {say('drawing.crest')}
        </text>
        {thread < CHART_FOOT && (
          <text className="drawing-word" x={SHARE.to + 4} y={thread - 4} textAnchor="end">
            {say('contact.threadStart')}
          </text>
        )}
      </g>
    </svg>
  );
});
