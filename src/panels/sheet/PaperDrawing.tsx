import { memo } from 'react';
import { type Drawing, type Shape, TONES } from '../../paper/shapes.ts';

function Drawn({ shape }: { shape: Shape }) {
  if (shape.kind === 'path') {
    const { d, fill, stroke, width, part } = shape;
    return (
      <path
        d={d}
        fill={fill ? TONES[fill] : 'none'}
        fillRule="evenodd"
        stroke={stroke ? TONES[stroke] : undefined}
        strokeWidth={stroke ? width : undefined}
        data-part={part}
      />
    );
  }
  const { x, y, size, strong, anchor, tone = 'ink', upright, cased, reading } = shape;
  return (
    <text
      x={upright ? undefined : x}
      y={upright ? undefined : y}
      transform={upright ? `translate(${x} ${y}) rotate(-90)` : undefined}
      fontSize={size}
      fontWeight={strong ? 600 : 500}
      textAnchor={anchor}
      fill={TONES[tone]}
      className={cased ? 'paper-cased' : undefined}
      data-drawn-reading={reading}
    >
      {shape.text}
    </text>
  );
}

/** A drawing on the page in its own millimetres, so that a print at 100 % has them true. */
export const PaperDrawing = memo(function PaperDrawing({
  drawing,
  name,
}: {
  drawing: Drawing;
  name: string;
}) {
  const { left, top, width, height, label, shapes } = drawing;
  return (
    <svg
      className="paper-drawing"
      width={`${width}mm`}
      height={`${height}mm`}
      viewBox={`${left} ${top} ${width} ${height}`}
      role="img"
      aria-label={label}
      data-drawing={name}
    >
      {shapes.map((shape, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: shapes have no names of their own and no state
        <Drawn key={i} shape={shape} />
      ))}
    </svg>
  );
});
