import { along } from '../core/geometry/vec.ts';
import { envelopePolyline } from '../core/implant/profile.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { dashed, GHOST, GOOD } from '../marks/dash.ts';
import { polyline } from '../marks/path.ts';
import { intoSection } from '../paper/sectionPlane.ts';
import { PX_PER_MM, yOf } from './scale.ts';

interface KeptImplantProps {
  kept: Evaluation;
  evaluation: Evaluation;
  kind: 'faciopalatal' | 'mesiodistal';
  /** The plan under what has gone wrong: in thin lines, with its axis. */
  thin?: boolean;
}

/** The kept pose's envelope as it is seen across the section of this one. */
export function KeptImplant({ kept, evaluation, kind, thin = false }: KeptImplantProps) {
  const project = intoSection(evaluation, kind);
  const { placement, plan, anatomy } = kept;
  const { x, r } = envelopePolyline(plan.implant);
  const across = kind === 'faciopalatal' ? placement.ef : placement.em;
  const side = (way: 1 | -1) =>
    [...x].map((station, i) => {
      const centre = placement.axisPoint(placement.tP + station);
      const { x: out, level } = project(anatomy.toJaw(along(centre, across, way * r[i])));
      return { x: out * PX_PER_MM, y: yOf(level) };
    });
  const edge = [...side(1), ...side(-1).reverse()];
  if (!thin) return <path className="kept-edge" d={dashed(edge, GHOST, true)} />;
  return (
    <>
      <path className="good-casing" d={polyline(edge, true)} />
      <path className="good-edge" d={dashed(edge, GOOD, true)} />
    </>
  );
}
