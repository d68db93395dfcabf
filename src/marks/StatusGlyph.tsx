import './marks.css';

/** Codes of a reading's state: judged, or `none` where there is nothing to judge. */
export type Mark = 'within' | 'near' | 'beyond' | 'none';

const OCTAGON = Array.from({ length: 8 }, (_, i) => {
  const turn = ((i + 0.5) * Math.PI) / 4;
  return `${8 * Math.cos(turn)},${8 * Math.sin(turn)}`;
}).join(' ');

/** White stripes at 45°, cut to the octagon by hand: a pattern would need an id of its own on every glyph. */
const STRIPES = 'M-7.4 -0.6 -0.6 -7.4M-6.6 4.2 4.2 -6.6M-3.2 6.4 6.4 -3.2M1.2 7.4 7.4 1.2';

/**
 * The state as a shape: ticked disc within, triangle near, hatched octagon beyond, dashed ring for nothing to
 * judge. Told apart without colour. About the origin of an SVG, 16 units wide; the word stands beside it, so
 * it says nothing to a screen reader.
 */
export function GlyphShape({ mark }: { mark: Mark }) {
  switch (mark) {
    case 'within':
      return (
        <g className="glyph glyph-within">
          <circle r="7.4" />
          <path d="M-3.6 0.2-1 2.9 3.7-2.7" />
        </g>
      );
    case 'near':
      return (
        <g className="glyph glyph-near">
          <path d="M0-7.6 8.1 6.4H-8.1Z" />
          <path className="glyph-bang" d="M0-2.6V1.8" />
          <circle className="glyph-dot" cy="4.2" r="1" />
        </g>
      );
    case 'beyond':
      return (
        <g className="glyph glyph-beyond">
          <polygon points={OCTAGON} />
          <path d={STRIPES} />
          <polygon className="glyph-rim" points={OCTAGON} />
        </g>
      );
    case 'none':
      return (
        <g className="glyph glyph-none">
          <circle r="7.2" />
        </g>
      );
  }
}

/** The shape as a picture of its own, `size` px wide. */
export function StatusGlyph({ mark, size = 17 }: { mark: Mark; size?: number }) {
  return (
    <svg
      className="status-glyph"
      viewBox="-9 -9 18 18"
      width={size}
      height={size}
      aria-hidden="true"
      data-mark={mark}
    >
      <GlyphShape mark={mark} />
    </svg>
  );
}
