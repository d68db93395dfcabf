import { memo } from 'react';
import { GlyphShape, type Mark } from './StatusGlyph.tsx';
import './marks.css';

export interface TagProps {
  /** The end of the leader, where the tag begins: the middle of its near side, px of the drawing. */
  x: number;
  y: number;
  /** On which side of that point the tag lies. */
  side: 'left' | 'right';
  number: string;
  mark?: Mark;
  /** Small words after the number. */
  words?: string;
  lit?: boolean;
  /** Type size of the number, px. */
  size?: number;
}

/** Rough advance of a condensed figure or letter, as a share of the type size: a tag is wide enough, not exact. */
const ADVANCE = 0.52;

/** Width of a tag, px, without drawing it. */
export function tagWidth({
  number,
  mark,
  words = '',
  size = 14.5,
}: Omit<TagProps, 'x' | 'y' | 'side'>): number {
  const glyph = mark ? size * 1.5 : 0;
  const small = words === '' ? 0 : 4 + words.length * size * 0.8 * ADVANCE;
  return Math.ceil(size * 0.9 + glyph + number.length * size * ADVANCE + small);
}

/** A number on a paper tag: glyph, digits, perhaps words; the two corners at the leader are cut. */
export const Tag = memo(function Tag(props: TagProps) {
  const { x, y, side, number, mark, words, lit = false, size = 14.5 } = props;
  const width = tagWidth(props);
  const half = (size * 1.5) / 2;
  const cut = 4;
  const way = side === 'right' ? 1 : -1;
  const outline = `M${cut * way} ${-half}H${width * way}V${half}H${cut * way}L0 ${half - cut}V${cut - half}Z`;
  const left = side === 'right' ? 0 : -width;
  const inset = size * 0.45;
  const start = left + inset + (mark ? size * 1.4 : 0);
  return (
    <g className={lit ? 'tag tag-lit' : 'tag'} transform={`translate(${x} ${y})`}>
      <path className="tag-shadow" d={outline} transform="translate(0 1.2)" />
      <path className="tag-paper" d={outline} />
      {mark && (
        <g transform={`translate(${left + inset + size * 0.5} 0) scale(${size / 19})`}>
          <GlyphShape mark={mark} />
        </g>
      )}
      <text className="tag-number" x={start} y={size * 0.34} fontSize={size}>
        {number}
        {words !== undefined && (
          <tspan className="tag-words" dx="4">
            {words}
          </tspan>
        )}
      </text>
    </g>
  );
});
