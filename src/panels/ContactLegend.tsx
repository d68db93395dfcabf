import { memo } from 'react';
import { dashed, HIDDEN } from '../marks/dash.ts';
import { say } from '../words/saySeat.ts';
import { SHARE } from './contactShape.ts';

const LINE = [
  { x: 0, y: 0 },
  { x: 26, y: 0 },
];

/** What the fills and lines of the chart of contact mean. */
export const ContactLegend = memo(function ContactLegend({
  fills,
}: {
  fills: { readonly contact: string; readonly open: string };
}) {
  const box = { y: -6, width: 26, height: 12 };
  const rows = [
    { key: 'contact', mark: <rect className="legend-box" {...box} fill={fills.contact} /> },
    { key: 'gap', mark: <rect className="legend-box gap-bar" {...box} /> },
    { key: 'open', mark: <rect className="legend-box" {...box} fill={fills.open} /> },
    { key: 'press', mark: <path className="wall-edge" d="M0 0H26" /> },
    { key: 'widest', mark: <path className="limit-near" d={dashed(LINE, HIDDEN)} /> },
  ] as const;
  return (
    <g transform={`translate(${SHARE.from} 48)`}>
      {rows.map(({ key, mark }, i) => (
        <g key={key} transform={`translate(${i < 3 ? 0 : 112} ${(i % 3) * 20})`}>
          {mark}
          <text className="drawing-word" x="32" y="4.5">
            {say(`contact.legend.${key}`)}
          </text>
        </g>
      ))}
    </g>
  );
});
