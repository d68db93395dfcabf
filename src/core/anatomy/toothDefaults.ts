import { classOf, type ToothClass } from './landmarks.ts';
import type { Neighbour, WidthEntry } from './site.ts';
import { DEFAULT_ROOT_TILT, DEFAULT_TILT, TOOTH_TABLE } from './toothTable.ts';

/** Bone follows the CEJ about 2 mm below it: 1.6–3.0 in Januario 2011 (from memory). */
export const CEJ_ABOVE_BONE = 2;

export const widthEntries = (rows: readonly (readonly [number, number, number])[]): WidthEntry[] =>
  rows.map(([depth, facial, palatal]) => ({ depth, facial, palatal }));

/** How much more facially the ridge leans than its tooth, degrees: central and lateral published (doi 10.1186/s12903-021-01848-x), the rest assumed. */
export const RIDGE_OVER_TOOTH: Readonly<Record<ToothClass, number>> = {
  central: 15,
  lateral: 19,
  canine: 12,
  premolar1: 12,
  premolar2: 12,
};

/**
 * Half-widths of a ridge with its tooth, mm, by depth, facial, palatal. Facially the mean root's surface at that depth plus the published wall over it, less
 * the eminence (0.8 at the crest: Heimes 2021; 0.9 at mid-root, 2.0 at the apex: Lau 2011); in all the published width, the mean of the three upper levels (9.55, 8.30,
 * 9.62 for central, lateral, canine: Zhang 2015). Premolars assumed as the canine.
 */
const RIDGE_WIDTHS: Readonly<Record<ToothClass, readonly (readonly [number, number, number])[]>> = {
  central: [
    [1, 4, 4],
    [4, 4.35, 5.05],
    [8, 4.85, 6.05],
    [12, 5.6, 6.6],
  ],
  lateral: [
    [1, 3.6, 3.2],
    [4, 4.3, 3.9],
    [8, 5.2, 4.7],
    [12, 6, 5.6],
  ],
  canine: [
    [1, 4.4, 4],
    [4, 4.85, 4.75],
    [8, 5.35, 5.55],
    [12, 5.8, 6.4],
  ],
  premolar1: [
    [1, 4.6, 4.4],
    [4, 4.8, 4.9],
    [8, 4.8, 5.4],
    [12, 5.2, 6.8],
  ],
  premolar2: [
    [1, 4.6, 4.4],
    [4, 4.8, 4.9],
    [8, 4.8, 5.4],
    [12, 5.2, 6.8],
  ],
};

/** A neighbour of published mean dimensions at a bone level (mm above the site's crest). */
export function defaultNeighbour(code: number, boneLevel: number): Neighbour {
  const cls = classOf(code);
  return {
    ...TOOTH_TABLE[cls],
    tilt: DEFAULT_TILT[cls],
    rootTilt: DEFAULT_ROOT_TILT,
    boneLevel,
    cejAboveBone: CEJ_ABOVE_BONE,
    ridge: {
      widths: widthEntries(RIDGE_WIDTHS[cls]),
      inclination: DEFAULT_TILT[cls].faciopalatal + RIDGE_OVER_TOOTH[cls],
    },
  };
}
