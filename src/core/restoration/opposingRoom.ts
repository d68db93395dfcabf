import { Revolved } from '../geometry/revolve.ts';
import { along, dot, scale, sub, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from '../measure/placement.ts';
import { crownClearance, leastClearance, type OpposingClearance } from './guidance.ts';
import type { PlannedCrown } from './plannedCrown.ts';

/** Least distances of the opposing edges on their way (rules C7, C10), site frame, mm. */
export interface OpposingRoom {
  /** To the planned crown and a one-piece abutment. Null: nothing faces it. */
  readonly finished: OpposingClearance | null;
  /** To what stands in the gap while the implant heals. */
  readonly healing: OpposingClearance | null;
}

/** A healing part is no lower than this, mm: what has no height has no inside. */
const LEAST_HEIGHT = 0.01;

/** Of a body about the axis, its outline from the platform up. */
function distanceTo(at: Placement, body: Revolved) {
  return (p: Vec3): { value: number; foot: Vec3 } => {
    const r = sub(p, at.platform);
    const x = dot(r, at.a);
    const radial = along(r, at.a, -x);
    const rho = Math.sqrt(dot(radial, radial));
    const value = body.signed(x, rho);
    const foot = along(along(at.platform, at.a, body.footX), scale(radial, 1 / (rho || 1)), body.footR);
    return { value, foot };
  };
}

/** One-piece: the abutment as it is made. Else a part as wide as the platform that ends level with the gum over the crest, or with the shoulder where that stands higher. */
function healingBody(at: Placement): Revolved {
  const { abutment, platformDiameter } = at.shape;
  if (abutment) {
    const { height, baseDiameter, topDiameter } = abutment;
    return new Revolved([0, height, height], [baseDiameter / 2, topDiameter / 2, 0]);
  }
  const height = Math.max(LEAST_HEIGHT, (at.anatomy.site.gum.crest - at.platform[2]) / at.a[2]);
  const r = platformDiameter / 2;
  return new Revolved([0, height, height], [r, r, 0]);
}

export function opposingRoom(at: Placement, crown: PlannedCrown): OpposingRoom {
  const { guidance, crown: ofCrown } = crownClearance(at.anatomy, crown);
  const healing = leastClearance(guidance, () => true, distanceTo(at, healingBody(at)));
  if (!at.shape.abutment || !healing) return { finished: ofCrown, healing };
  return { finished: ofCrown && ofCrown.value <= healing.value ? ofCrown : healing, healing };
}
