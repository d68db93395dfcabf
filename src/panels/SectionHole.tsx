import { memo, useId } from 'react';
import type { SectionOutline } from '../core/anatomy/section.ts';
import type { Loop } from '../core/geometry/slice.ts';
import { polyline } from '../marks/path.ts';
import { CREST_Y, PX_PER_MM } from './scale.ts';

interface SectionHoleProps {
  outline: SectionOutline;
  /** What the passes have taken, in the plane's coordinates, mm. */
  hole: readonly Loop[];
  gum: boolean;
  /** Where the plane's origin stands, px from the top. */
  origin?: number;
}

/**
 * The hole drilled so far, taken out of bone, marrow and gum. The edges are drawn first, within the tissues, and the void over them: overlapping passes
 * are one hole.
 */
export const SectionHole = memo(function SectionHole({
  outline,
  hole,
  gum,
  origin = CREST_Y,
}: SectionHoleProps) {
  const id = useId();
  if (hole.length === 0) return null;
  const pathOf = (loops: readonly Loop[]): string =>
    loops
      .map((loop) =>
        polyline(
          loop.map(([x, y]) => ({ x: x * PX_PER_MM, y: origin - y * PX_PER_MM })),
          true,
        ),
      )
      .join('');
  const taken = hole.map((loop) => pathOf([loop]));
  const within = (name: string, loops: readonly Loop[]) => (
    <clipPath id={id + name}>
      <path d={pathOf(loops)} clipRule="evenodd" />
    </clipPath>
  );
  return (
    <g data-outline="hole">
      <defs>
        {within('bone', outline.bone)}
        {within('gum', outline.gum)}
      </defs>
      {gum && (
        <g clipPath={`url(#${id}gum)`}>
          {taken.map((d) => (
            <path key={d} className="hole-edge-gum" d={d} />
          ))}
        </g>
      )}
      <g clipPath={`url(#${id}bone)`}>
        {taken.map((d) => (
          <path key={d} className="hole-edge" d={d} />
        ))}
      </g>
      {taken.map((d) => (
        <path key={d} className="hole-void" d={d} />
      ))}
    </g>
  );
});
