import { classOf } from './landmarks.ts';
import type { Neighbour } from './site.ts';
import { DEFAULT_ROOT_TILT, DEFAULT_TILT, TOOTH_TABLE } from './toothTable.ts';

/** Bone follows the CEJ about 2 mm below it: 1.6–3.0 in Januario 2011 (from memory). */
export const CEJ_ABOVE_BONE = 2;

/** A neighbour of published mean dimensions at a bone level (mm above the site's crest). */
export function defaultNeighbour(code: number, boneLevel: number): Neighbour {
  const cls = classOf(code);
  return {
    ...TOOTH_TABLE[cls],
    tilt: DEFAULT_TILT[cls],
    rootTilt: DEFAULT_ROOT_TILT,
    boneLevel,
    cejAboveBone: CEJ_ABOVE_BONE,
  };
}
