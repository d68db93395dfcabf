import type { Tilt } from '../geometry/pose.ts';
import { leastCover, type Material } from './material.ts';

/** How the planned crown differs from the reference tooth's mirror image. */
export interface CrownForm {
  /** Taken off the edge along the crown's axis, from its most incisal point, mm. */
  readonly wear: number;
  /** Turned about the facial middle of its CEJ, away from the reference tooth's axis: projected angles, + the edge facially / mesially, degrees. */
  readonly tilt: Tilt;
}

/** The least post that a reduction leaves: a cylinder about the axis from the shoulder up, mm. */
export interface LeastPost {
  readonly diameter: number;
  readonly height: number;
}

/** What is chosen for the crown, and the distances that are kept about it; mm and degrees. */
export interface CrownChoices extends CrownForm {
  readonly material: Material;
  /** Between abutment and crown. */
  readonly cementGap: number;
  readonly post: LeastPost;
  /** How far below the planned gum margin a finishing line is hidden. */
  readonly belowGum: number;
  /** The finishing line never comes nearer to the bone than this. */
  readonly overBone: number;
  /** How far coronal of the shoulder a screw's channel can bend: the height of a screw's head. */
  readonly channelBend: number;
  /** Thickness of the clear tray that keeps chewing off the implant while it heals. */
  readonly tray: number;
}

/** As the reference tooth is. */
export const UNCHANGED: CrownForm = { wear: 0, tilt: { faciopalatal: 0, mesiodistal: 0 } };

/** Of a plan that says nothing else; sources in `plan/crownFields.ts`. */
export const DEFAULT_CROWN: CrownChoices = {
  material: 'lithium-disilicate',
  ...UNCHANGED,
  cementGap: 0.05,
  post: { diameter: 1.5, height: 3 },
  belowGum: 0.5,
  overBone: 1,
  channelBend: 2,
  tray: 1,
};

/** The least distance of an abutment to the crown's surface, mm. */
export const coverOf = ({ material, cementGap }: CrownChoices): number => leastCover(material, cementGap);

/** Projected angles of the planned crown's axis: the reference tooth's and what it is turned by. */
export const plannedTilt = (reference: Tilt, { tilt }: CrownForm): Tilt => ({
  faciopalatal: reference.faciopalatal + tilt.faciopalatal,
  mesiodistal: reference.mesiodistal + tilt.mesiodistal,
});
