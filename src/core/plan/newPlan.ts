import type { Site } from '../anatomy/site.ts';
import { axisFrame, axisOf } from '../geometry/pose.ts';
import type { ImplantShape } from '../implant/shape.ts';
import type { Fixing } from '../measure/limit.ts';
import { type CrownChoices, DEFAULT_CROWN, plannedTilt } from '../restoration/crownChoices.ts';
import { crownFrame } from '../restoration/plannedCrown.ts';
import { heldPose } from './edits.ts';
import { evaluate, solidsOf } from './evaluate.ts';
import { PLAN_FORMAT, PLAN_VERSION, type Plan } from './plan.ts';

/** Shoulder below the planned margin that a fixing asks for, mm: the middle of its band. */
const DEPTH: Readonly<Record<Fixing, number>> = { 'screw-bone': 3.5, 'screw-gum': 1.5, cemented: 0.5 };

/**
 * A plan with the implant along the planned crown's axis and mesiodistally in it, its aim point on the incisal line (cemented) or 1 mm palatal of it, the
 * shoulder in the middle of its depth's band. A place to begin from, not an answer: along the tooth's own axis the facial wall is often lost.
 */
export function planAlongCrown(
  site: Site,
  implant: ImplantShape,
  fixing: Fixing,
  title: string,
  crown: CrownChoices = DEFAULT_CROWN,
): Plan {
  const tilt = plannedTilt(site.crown.tilt, crown);
  // The depth is judged at the shoulder's facial edge, which a facial tilt carries apically.
  const edge = (implant.platformDiameter / 2) * axisFrame(axisOf(tilt)).ef[2];
  const c = site.reference.margin - DEPTH[fixing] - edge;
  const start: Plan = {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    title,
    note: '',
    site,
    implant,
    fixing,
    pose: heldPose({ platform: { m: 0, f: 0, c }, tilt, roll: 0 }),
    crown,
    crestMargin: 1,
    limits: {},
    rehearsal: null,
  };
  // On the planned crown's axis mesiodistally; the line's offset moves with the shift one to one, facially.
  const { origin, ez } = crownFrame(solidsOf(site), crown);
  const m = origin[0] + (ez[0] / ez[2]) * (c - origin[2]);
  const moved = { ...start, pose: heldPose({ ...start.pose, platform: { m, f: 0, c } }) };
  const aim = fixing === 'cemented' ? 0 : -1;
  const f = aim - evaluate(moved).line.offset;
  return { ...moved, pose: heldPose({ ...moved.pose, platform: { m, f, c } }) };
}
