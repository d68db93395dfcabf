import { memo, type ReactNode, useId } from 'react';
import type { SectionOutline } from '../core/anatomy/section.ts';
import type { Loop } from '../core/geometry/slice.ts';
import { BEFORE_THE_CUT, dashed, HIDDEN } from '../marks/dash.ts';
import { type Point, polyline } from '../marks/path.ts';
import { CREST_Y, PX_PER_MM } from './scale.ts';

interface TissuesProps {
  /** Where the plane's origin stands, px from the top. */
  origin?: number;
  outline: SectionOutline;
  /** The planned crown in the plane. */
  planned: readonly Loop[];
  gum: boolean;
  teeth: boolean;
  /** Drawn over gum and bone, under the teeth. */
  children?: ReactNode;
}

/** Gum, bone with hatched cortex and dotted spongy bone, canal, teeth that the plane meets, planned crown. */
export const SectionTissues = memo(function SectionTissues({
  outline,
  planned,
  gum,
  teeth,
  origin = CREST_Y,
  children,
}: TissuesProps) {
  const pointsOf = (loop: Loop): Point[] =>
    loop.map(([x, y]) => ({ x: x * PX_PER_MM, y: origin - y * PX_PER_MM }));
  /** Loops as one path: a hole runs the other way round and stays open under the even-odd rule. */
  const pathOf = (loops: readonly Loop[]): string =>
    loops.map((loop) => polyline(pointsOf(loop), true)).join('');
  const brokenOf = (loops: readonly Loop[], pattern: readonly number[]): string =>
    loops.map((loop) => dashed(pointsOf(loop), pattern, true)).join('');
  const id = useId();
  const bone = pathOf(outline.bone);
  const marrow = pathOf(outline.marrow);
  return (
    <>
      <defs>
        <pattern
          id={`${id}hatch`}
          width="4.2"
          height="4.2"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path className="hatch" d="M0 0V4.2" />
        </pattern>
        <pattern id={`${id}dots`} width="11" height="11" patternUnits="userSpaceOnUse">
          <circle className="dot" cx="2.5" cy="3" r="0.7" />
          <circle className="dot" cx="8" cy="8.5" r="0.6" />
        </pattern>
      </defs>
      {gum && <path className="gum-cut" d={pathOf(outline.gum)} />}
      <path className="bone-cut" d={bone} />
      <path d={bone} fill={`url(#${id}hatch)`} fillRule="evenodd" />
      <path className="marrow" d={marrow} />
      <path d={marrow} fill={`url(#${id}dots)`} fillRule="evenodd" />
      <path className="bone-edge" d={bone} data-outline="bone" />
      <path className="canal" d={pathOf(outline.canal)} />
      {children}
      {teeth &&
        outline.teeth.map(({ code, root, crown }) => (
          <path key={code} className="hidden-tooth" d={brokenOf([...root, ...crown], HIDDEN)} />
        ))}
      {teeth && <path className="planned-crown" d={brokenOf(planned, BEFORE_THE_CUT)} />}
    </>
  );
});
