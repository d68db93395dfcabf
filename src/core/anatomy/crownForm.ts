import { CLASS_NUMBERS, type ToothClass } from './landmarks.ts';

/** A smooth dent in (−) or swelling on (+) one face: centre and half-widths in shares of the half-width and of the crown's height; mm. */
export interface Relief {
  readonly across: number;
  readonly halfAcross: number;
  readonly up: number;
  readonly halfUp: number;
  readonly height: number;
  /** With a level floor across, so that the flanks stand as ridges. */
  readonly flat?: boolean;
}

/** Values at shares of the crown's height, joined by a natural cubic spline. */
export type Knots = readonly (readonly [share: number, value: number])[];

/** One side of the facial outline, mesial or distal. */
export interface SideForm {
  /** Height of the contact over the crown length. */
  readonly contact: number;
  /** How far the edge's end lies inside the contact, mm. */
  readonly corner: number;
  /** How far the edge's end lies below the tip, mm. */
  readonly fall: number;
  /** Power of the corner's superellipse: 2 is a round quarter, more is squarer. Null: the outline bends into a canine's slope. */
  readonly power: number | null;
  /** Slope of the outline at the neck, relative to a straight line to the contact: 1.5 nearly straight, 2 rounder. */
  readonly flare: number;
}

/** What tells one front crown from another, beside its table numbers. Proportions of carving texts, from memory, then by eye. */
export interface FrontForm {
  readonly mesial: SideForm;
  readonly distal: SideForm;
  /** Height of the facial contour, and the share of the table's growth from cervix to crown that stands facially. */
  readonly facialContour: number;
  readonly facialShare: number;
  /** How soon the facial profile turns toward the edge: small is early, so a straighter face. */
  readonly facialTurn: number;
  /** Exponents of the section's superellipse: 2 an ellipse, more is boxier. */
  readonly facialPower: Knots;
  readonly palatalPower: Knots;
  /** Palatal profile of the marginal ridges: 1 at the cingulum's height of contour, 0 at the edge. The first knot is replaced by the cervix. */
  readonly palatal: Knots;
  /** How far distally the cingulum stands, mm. */
  readonly cingulumDistal: number;
  readonly facialRelief: readonly Relief[];
  readonly palatalRelief: readonly Relief[];
  /** Thickness of the edge and over how much of the height it is rounded, mm. */
  readonly edge: number;
  readonly edgeRound: number;
  /** Roundness of the cusp tip in shares of the half-width; large: the edge bends evenly. How far mesially the tip stands, mm. */
  readonly tip: number;
  readonly tipMesial: number;
}

const side = (cls: ToothClass, which: 'mesial' | 'distal', power: number | null, flare: number): SideForm => {
  const k = CLASS_NUMBERS[cls];
  return which === 'mesial'
    ? { contact: k.contactMesial, corner: k.cornerMesial, fall: k.fallMesial, power, flare }
    : { contact: k.contactDistal, corner: k.cornerDistal, fall: k.fallDistal, power, flare };
};

const CENTRAL: FrontForm = {
  mesial: side('central', 'mesial', 2.8, 1.5),
  distal: side('central', 'distal', 2.1, 1.85),
  facialContour: 0.2,
  facialShare: 0.4,
  facialTurn: 0.9,
  facialPower: [
    [0, 2],
    [0.2, 2.15],
    [0.6, 2.6],
    [1, 3],
  ],
  palatalPower: [
    [0, 2],
    [0.15, 1.8],
    [0.45, 2.4],
    [0.75, 2.9],
    [1, 3],
  ],
  palatal: [
    [0, 0.8],
    [0.14, 1],
    [0.3, 0.85],
    [0.45, 0.59],
    [0.6, 0.38],
    [0.75, 0.23],
    [0.9, 0.1],
    [1, 0],
  ],
  cingulumDistal: 0.6,
  facialRelief: [
    { across: 0.33, halfAcross: 0.3, up: 0.78, halfUp: 0.45, height: -0.09 },
    { across: -0.35, halfAcross: 0.3, up: 0.75, halfUp: 0.45, height: -0.09 },
  ],
  palatalRelief: [{ across: 0, halfAcross: 0.88, up: 0.57, halfUp: 0.42, height: -0.68, flat: true }],
  edge: 0.9,
  edgeRound: 0.5,
  tip: 3,
  tipMesial: CLASS_NUMBERS.central.tipMesial,
};

const LATERAL: FrontForm = {
  ...CENTRAL,
  mesial: side('lateral', 'mesial', 2.1, 1.6),
  distal: side('lateral', 'distal', 1.9, 2),
  facialPower: [
    [0, 2],
    [0.2, 2.1],
    [0.6, 2.35],
    [1, 2.7],
  ],
  palatalPower: [
    [0, 2],
    [0.15, 1.8],
    [0.45, 2.3],
    [0.75, 2.6],
    [1, 2.7],
  ],
  cingulumDistal: 0.25,
  facialRelief: [
    { across: 0.33, halfAcross: 0.3, up: 0.85, halfUp: 0.45, height: -0.06 },
    { across: -0.35, halfAcross: 0.3, up: 0.82, halfUp: 0.45, height: -0.06 },
  ],
  palatalRelief: [{ across: 0, halfAcross: 0.84, up: 0.56, halfUp: 0.42, height: -0.66, flat: true }],
  edge: 0.85,
  edgeRound: 0.5,
  tipMesial: CLASS_NUMBERS.lateral.tipMesial,
};

const CANINE: FrontForm = {
  mesial: side('canine', 'mesial', null, 1.6),
  distal: side('canine', 'distal', null, 2),
  facialContour: 0.24,
  facialShare: 0.4,
  facialTurn: 0.7,
  facialPower: [
    [0, 2],
    [0.25, 2.05],
    [0.6, 2.1],
    [1, 2.4],
  ],
  palatalPower: [
    [0, 2],
    [0.18, 1.85],
    [0.45, 2.1],
    [0.75, 2.3],
    [1, 2.4],
  ],
  palatal: [
    [0, 0.82],
    [0.16, 1],
    [0.33, 0.84],
    [0.48, 0.6],
    [0.63, 0.4],
    [0.78, 0.24],
    [0.9, 0.11],
    [1, 0],
  ],
  cingulumDistal: 0.1,
  facialRelief: [
    { across: 0.5, halfAcross: 0.36, up: 0.74, halfUp: 0.42, height: -0.12 },
    { across: -0.58, halfAcross: 0.46, up: 0.64, halfUp: 0.46, height: -0.3 },
  ],
  palatalRelief: [
    { across: 0.36, halfAcross: 0.42, up: 0.55, halfUp: 0.42, height: -0.6 },
    { across: -0.36, halfAcross: 0.42, up: 0.5, halfUp: 0.42, height: -0.6 },
  ],
  edge: 1,
  edgeRound: 0.6,
  tip: 0.24,
  tipMesial: CLASS_NUMBERS.canine.tipMesial,
};

/** Height of both contacts of a lower incisor over its crown's length: in the incisal third, level with each other (from memory). */
export const LOWER_CONTACT = 0.9;

/** Lower incisors, seen only as opponents: slim, level, symmetrical, with little relief. */
export const LOWER_INCISOR: FrontForm = {
  ...CENTRAL,
  mesial: { contact: LOWER_CONTACT, corner: 0.5, fall: 0, power: 2.2, flare: 1.5 },
  distal: { contact: LOWER_CONTACT, corner: 0.6, fall: 0, power: 2.2, flare: 1.5 },
  cingulumDistal: 0,
  facialRelief: [],
  palatalRelief: [{ across: 0, halfAcross: 0.75, up: 0.6, halfUp: 0.36, height: -0.35 }],
  edge: 0.8,
  tipMesial: 0,
};

export const FRONT_FORMS: Readonly<Record<'central' | 'lateral' | 'canine', FrontForm>> = {
  central: CENTRAL,
  lateral: LATERAL,
  canine: CANINE,
};
