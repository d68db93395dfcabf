import type { PatientStep } from '../../words/presentPatient.ts';

/** How the drawing looks at one moment. Veils: 0 solid, 1 a clear shell. Shares: 0 not there, 1 there. */
export interface Look {
  readonly gumVeil: number;
  readonly boneVeil: number;
  /** How much bone has its own colour: without it, gum runs on over it as in the mouth. */
  readonly bone: number;
  /** How far the implant, and the crown, still stand outside their place along the axis, mm. */
  readonly implantOut: number;
  readonly implant: number;
  readonly crownOut: number;
  readonly crown: number;
  /** The dashed outline of the crown that is to come. */
  readonly outline: number;
  readonly bite: number;
  /** Where the eye stands: from straight in front of the gap toward the patient's left, and up; degrees. */
  readonly azimuth: number;
  readonly elevation: number;
  /** Size of the drawing against the size that just fits. */
  readonly size: number;
  /** How far above the middle of its place it stands, mm of the drawing. */
  readonly lift: number;
}

const FAR = { implantOut: 24, crownOut: 16 } as const;

const GAP: Look = {
  ...FAR,
  gumVeil: 0,
  boneVeil: 0,
  bone: 0,
  implant: 0,
  crown: 0,
  outline: 0,
  bite: 0,
  azimuth: 0,
  elevation: -3,
  size: 1,
  lift: 0,
};
const BONE: Look = { ...GAP, gumVeil: 1, boneVeil: 0.5, bone: 1 };
const IMPLANT: Look = { ...BONE, gumVeil: 1, boneVeil: 1, implant: 1, implantOut: 0, outline: 1 };
const HEALING: Look = { ...IMPLANT, gumVeil: 0.9, bite: 0.75, size: 0.84, lift: 2 };
const TOOTH: Look = { ...IMPLANT, gumVeil: 0.62, outline: 0, crown: 1, crownOut: 0 };

export const LOOKS: Readonly<Record<PatientStep, Look>> = {
  gap: GAP,
  bone: BONE,
  implant: IMPLANT,
  healing: HEALING,
  tooth: TOOTH,
  choices: { ...TOOTH, gumVeil: 0, boneVeil: 0, bone: 0, implant: 0 },
};

/** Within which part of a change each thing moves: first the eye turns and gum and bone clear, then what is new comes in. */
const WHEN: Readonly<Record<keyof Look, readonly [from: number, to: number]>> = {
  gumVeil: [0, 0.5],
  boneVeil: [0.1, 0.6],
  bone: [0, 0.5],
  implantOut: [0.35, 1],
  implant: [0.3, 0.45],
  crownOut: [0.35, 1],
  crown: [0.3, 0.45],
  outline: [0.75, 1],
  bite: [0.2, 0.8],
  azimuth: [0, 0.6],
  elevation: [0, 0.6],
  size: [0, 0.6],
  lift: [0, 0.6],
};

const eased = (w: number): number => w * w * (3 - 2 * w);

/** The look at part `w` (0 to 1) of the way from one to another. */
export function lookBetween(a: Look, b: Look, w: number): Look {
  const at = (key: keyof Look): number => {
    const [from, to] = WHEN[key];
    const share = eased(Math.min(1, Math.max(0, (w - from) / (to - from))));
    return a[key] + (b[key] - a[key]) * share;
  };
  return {
    gumVeil: at('gumVeil'),
    boneVeil: at('boneVeil'),
    bone: at('bone'),
    implantOut: at('implantOut'),
    implant: at('implant'),
    crownOut: at('crownOut'),
    crown: at('crown'),
    outline: at('outline'),
    bite: at('bite'),
    azimuth: at('azimuth'),
    elevation: at('elevation'),
    size: at('size'),
    lift: at('lift'),
  };
}
