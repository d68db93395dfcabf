import type { Vec3 } from '../geometry/vec.ts';
import type { ToothNumbers } from './site.ts';

export type ToothClass = 'central' | 'lateral' | 'canine' | 'premolar1' | 'premolar2';

/** Class of a tooth by its ISO 3950 code: the second digit counts from the midline. */
export function classOf(code: number): ToothClass {
  const classes: readonly ToothClass[] = ['central', 'lateral', 'canine', 'premolar1', 'premolar2'];
  const found = classes[(code % 10) - 1];
  if (!found) throw new RangeError(`tooth code ${code} is not an upper front tooth or premolar`);
  return found;
}

interface ClassNumbers {
  /** Height of the contacts over the crown length. */
  readonly contactMesial: number;
  readonly contactDistal: number;
  /** How far the edge's ends lie inside the widest points, mm. */
  readonly cornerMesial: number;
  readonly cornerDistal: number;
  /** How far the edge's ends lie below the tip, mm. */
  readonly fallMesial: number;
  readonly fallDistal: number;
  /** How far mesially of the axis the most incisal point stands, mm. */
  readonly tipMesial: number;
}

/** Contact heights, corner sizes, slopes of the edges and places of the cusp tips: textbook proportions, from memory (no page read). */
export const CLASS_NUMBERS: Readonly<Record<ToothClass, ClassNumbers>> = {
  central: {
    contactMesial: 0.86,
    contactDistal: 0.72,
    cornerMesial: 0.9,
    cornerDistal: 1.8,
    fallMesial: 0,
    fallDistal: 0.3,
    tipMesial: 1.5,
  },
  lateral: {
    contactMesial: 0.8,
    contactDistal: 0.64,
    cornerMesial: 1.1,
    cornerDistal: 1.9,
    fallMesial: 0,
    fallDistal: 0.4,
    tipMesial: 1.2,
  },
  canine: {
    contactMesial: 0.7,
    contactDistal: 0.55,
    cornerMesial: 1.0,
    cornerDistal: 0.8,
    fallMesial: 1.5,
    fallDistal: 2.4,
    tipMesial: 0.2,
  },
  premolar1: {
    contactMesial: 0.66,
    contactDistal: 0.62,
    cornerMesial: 0,
    cornerDistal: 0,
    fallMesial: 0,
    fallDistal: 0,
    tipMesial: -0.3,
  },
  premolar2: {
    contactMesial: 0.66,
    contactDistal: 0.64,
    cornerMesial: 0,
    cornerDistal: 0,
    fallMesial: 0,
    fallDistal: 0,
    tipMesial: 0.15,
  },
};

/** How far facially of the tooth's axis the middle of an incisal edge lies, mm (assumed). */
export const EDGE_FACIAL = 0.4;
/** Facial cusp tip of a premolar: share of the crown's depth facially of the axis (assumed). */
export const CUSP_FACIAL = 0.27;

/** Points of a crown in tooth coordinates (rule S7: `x` mesial, `y` facial, `z` incisal from the facial CEJ), mm. */
export interface Landmarks {
  readonly mesialContact: Vec3;
  readonly distalContact: Vec3;
  /** End of the incisal edge on that side; canine: end of its sloping edge; premolar: the facial cusp tip for both. */
  readonly mesialEnd: Vec3;
  readonly distalEnd: Vec3;
  /** Most incisal point of the edge, or the cusp tip. */
  readonly tip: Vec3;
}

/** Landmarks of a crown (rule S10): the crown meshes pass through these points. */
export function landmarksOf(cls: ToothClass, n: ToothNumbers): Landmarks {
  const k = CLASS_NUMBERS[cls];
  const half = n.crownWidth / 2;
  const length = n.crownLength;
  const premolar = cls === 'premolar1' || cls === 'premolar2';
  const tip: Vec3 = [k.tipMesial, premolar ? CUSP_FACIAL * n.crownDepth : EDGE_FACIAL, length];
  return {
    mesialContact: [half, 0, k.contactMesial * length],
    distalContact: [-half, 0, k.contactDistal * length],
    mesialEnd: premolar ? tip : [half - k.cornerMesial, EDGE_FACIAL, length - k.fallMesial],
    distalEnd: premolar ? tip : [-half + k.cornerDistal, EDGE_FACIAL, length - k.fallDistal],
    tip,
  };
}
