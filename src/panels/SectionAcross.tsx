import type { SectionOutline } from '../core/anatomy/section.ts';
import type { Loop } from '../core/geometry/slice.ts';
import { dot, sub } from '../core/geometry/vec.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { dashed, GOOD } from '../marks/dash.ts';
import { polyline } from '../marks/path.ts';
import { planeOf } from '../paper/sectionPlane.ts';
import { SectionHole } from './SectionHole.tsx';
import { SectionTissues } from './SectionTissues.tsx';
import { DRAWING_HEIGHT, PX_PER_MM } from './scale.ts';

/** Where the axis stands in the section across it, px from the top. */
const MIDDLE = DRAWING_HEIGHT / 2 + 16;

interface SectionAcrossProps {
  evaluation: Evaluation;
  outline: SectionOutline;
  /** The planned crown in the plane. */
  planned: readonly Loop[];
  /** mm apical of the entry. */
  level: number;
  gum: boolean;
  teeth: boolean;
  /** What has been drilled, in the plane's coordinates, mm. */
  hole: readonly Loop[];
  /** A tool stands in the implant's place. */
  tool: boolean;
  /** The plan, where the implant has gone wrong. */
  good: Evaluation | null;
}

/** The plan's implant where its axis passes the level. */
function Good({
  good,
  evaluation,
  level,
}: Pick<SectionAcrossProps, 'evaluation' | 'level'> & { good: Evaluation }) {
  const { origin, x, y } = planeOf(evaluation, 'across', level);
  const off = sub(good.placement.axisPoint(level), origin);
  const middle = { x: dot(off, x) * PX_PER_MM, y: MIDDLE - dot(off, y) * PX_PER_MM };
  const r = good.placement.radius(level) * PX_PER_MM;
  const points = Array.from({ length: 72 }, (_, i) => {
    const turn = (i * Math.PI) / 36;
    return { x: middle.x + r * Math.cos(turn), y: middle.y + r * Math.sin(turn) };
  });
  return (
    <>
      <path className="good-casing" d={polyline(points, true)} />
      <path className="good-edge" d={dashed(points, GOOD, true)} />
    </>
  );
}

/** The section across the axis at a level: facial right, mesial up; the implant as its envelope and its core. */
export function SectionAcross(props: SectionAcrossProps) {
  const { evaluation, outline, planned, level, gum, teeth, hole, tool, good } = props;
  const { placement, plan } = evaluation;
  const inside = level >= placement.tP && level <= placement.tA;
  const r = placement.radius(level);
  const threaded = !tool && level > placement.tP + plan.implant.transmucosalLength;
  return (
    <>
      <SectionTissues outline={outline} planned={planned} gum={gum} teeth={teeth} origin={MIDDLE}>
        <SectionHole outline={outline} hole={hole} gum={gum} origin={MIDDLE} />
      </SectionTissues>
      {inside && (
        <g className={tool ? 'tool-cut' : 'implant-cut'} data-outline="implant-across">
          <circle cx="0" cy={MIDDLE} r={r * PX_PER_MM} />
          {threaded && <circle cx="0" cy={MIDDLE} r={(r - plan.implant.thread.depth) * PX_PER_MM} />}
        </g>
      )}
      {good && <Good good={good} evaluation={evaluation} level={level} />}
      <path className="drawing-thin" d={`M-7 ${MIDDLE}h14M0 ${MIDDLE - 7}v14`} />
    </>
  );
}
