import { memo } from 'react';
import type { ImplantShape } from '../core/implant/shape.ts';
import { type Point, polyline } from '../marks/path.ts';
import { implantOutline, postOutline, shoulderEdge } from '../paper/implantOutline.ts';
import { PX_PER_MM, yOf } from './scale.ts';

interface SectionImplantProps {
  shape: ImplantShape;
  /** Level of the platform plane, mm apical of the entry. */
  platform: number;
  /** Degrees. */
  roll: number;
}

/** The implant in section, upright: its axis is the drawing's vertical. */
export const SectionImplant = memo(function SectionImplant({ shape, platform, roll }: SectionImplantProps) {
  const turn = (roll * Math.PI) / 180;
  const place = (points: readonly Point[]) =>
    points.map(({ x, y }) => ({ x: x * PX_PER_MM, y: yOf(platform + y) }));
  const edge = shape.scallop > 0 ? [...shoulderEdge(shape, turn)] : [];
  return (
    <g className="implant-cut" data-outline="implant">
      {edge.length > 0 && <path d={polyline(place(edge), true)} />}
      <path d={polyline(place(postOutline(shape)), true)} />
      <path d={polyline(place(implantOutline(shape, turn)), true)} />
    </g>
  );
});
