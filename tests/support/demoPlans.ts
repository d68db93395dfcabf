import type { Neighbour, Site, WidthEntry } from '../../src/core/anatomy/site.ts';
import { libraryShape } from '../../src/core/implant/library.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import type { Fixing } from '../../src/core/measure/limit.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { PLAN_FORMAT, PLAN_VERSION, type Plan } from '../../src/core/plan/plan.ts';
import { DEFAULT_CROWN } from '../../src/core/restoration/crownChoices.ts';

/** The demo plans of `assets/plans`, as code: invented scenarios of this project; `npm run assets` writes them. */
export interface DemoPlan {
  readonly id: string;
  readonly plan: Plan;
}

type PoseNumbers = readonly [m: number, f: number, c: number, faciopalatal: number, mesiodistal: number];

export const shape = (name: string): ImplantShape => {
  const found = libraryShape(name);
  if (!found) throw new Error(`no shape ${name}`);
  return found;
};

function plan(
  title: string,
  note: string,
  site: Site,
  implant: ImplantShape,
  fixing: Fixing,
  [m, f, c, faciopalatal, mesiodistal]: PoseNumbers,
): Plan {
  return {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    title,
    note,
    site,
    implant,
    fixing,
    pose: { platform: { m, f, c }, tilt: { faciopalatal, mesiodistal }, roll: 0 },
    crown: DEFAULT_CROWN,
    crestMargin: 1,
    limits: {},
    rehearsal: null,
  };
}

/** A neighbour whose ridge leans so much more facially than it does, degrees. */
const leaning = (tooth: Neighbour, over: number): Neighbour => ({
  ...tooth,
  ridge: { ...tooth.ridge, inclination: tooth.tilt.faciopalatal + over },
});

function narrowLateral(): Plan {
  const s = defaultSite(12);
  const site: Site = {
    ...s,
    gap: 6.3,
    ridge: {
      ...s.ridge,
      inclination: 30,
      height: 18.5,
      crestRounding: 1.4,
      widths: [
        { depth: 1, facial: 2.3, palatal: 2.3 },
        { depth: 4, facial: 2.9, palatal: 3.1 },
        { depth: 7, facial: 2.5, palatal: 3.7 },
        { depth: 12, facial: 3.4, palatal: 4.8 },
      ],
      undercut: { depth: 0.9, level: 7, halfHeight: 3 },
    },
    mesial: leaning({ ...s.mesial, tilt: { faciopalatal: 24, mesiodistal: 2 }, cejAboveBone: 1.8 }, 8),
    distal: leaning({ ...s.distal, tilt: { faciopalatal: 18, mesiodistal: 8 } }, 8),
    reference: { kind: 'tooth', cej: 0.7, margin: 1.7 },
    gum: { ...s.gum, crest: 2.6 },
    crown: { ...s.crown, tilt: { faciopalatal: 22, mesiodistal: 4 } },
  };
  return plan(
    '12 that never formed; narrow ridge, facial undercut',
    'An adult whose growth is finished. The ridge is narrow, undercut facially, and both roots stand close.',
    site,
    shape('tapered-flared-30x11'),
    'cemented',
    [-1, -0.2, 1.1, 23.6, 5.3],
  );
}

function freshSocket(): Plan {
  const s = defaultSite(21);
  const site: Site = {
    ...s,
    gap: 8.6,
    ridge: {
      ...s.ridge,
      inclination: 36,
      height: 20,
      widths: [
        { depth: 1, facial: 3.9, palatal: 3.6 },
        { depth: 4, facial: 4.5, palatal: 4.6 },
        { depth: 8, facial: 4.5, palatal: 5.4 },
        { depth: 12, facial: 4.6, palatal: 6.4 },
      ],
      undercut: { depth: 0, level: 6, halfHeight: 3 },
      crestDrop: 0,
    },
    state: {
      kind: 'socket',
      axis: { faciopalatal: 26, mesiodistal: 4 },
      width: 6.4,
      breadth: 5.6,
      depth: 11,
      parallel: 1,
      wall: { thickness: 0.8, level: 2 },
      dehiscence: { depth: 0, width: 4 },
    },
    mesial: leaning({ ...s.mesial, boneLevel: 0 }, 10),
    distal: leaning({ ...s.distal, boneLevel: 0 }, 10),
    reference: { kind: 'tooth', cej: 0.8, margin: 1.8 },
    gum: { ...s.gum, crest: 1.9 },
    crown: { ...s.crown, tilt: { faciopalatal: 26, mesiodistal: 4 } },
  };
  return plan(
    '21, fresh socket after a root fracture',
    'The facial wall is 0.8 mm thin. The implant stands in the palatal wall; the gap in front of it is no bone.',
    site,
    shape('tapered-straight-40x13'),
    'screw-bone',
    [1.1, -1, -1.6, 35, -6],
  );
}

function widePremolar(): Plan {
  const s = defaultSite(14);
  const site: Site = {
    ...s,
    ridge: {
      ...s.ridge,
      inclination: 12,
      height: 19,
      widths: [
        { depth: 1, facial: 3.4, palatal: 3.6 },
        { depth: 4, facial: 4.2, palatal: 4.8 },
        { depth: 8, facial: 4.6, palatal: 5.4 },
        { depth: 12, facial: 4.8, palatal: 5.8 },
      ],
      undercut: { depth: 0, level: 5, halfHeight: 3 },
    },
    gap: 7.4,
    mesial: leaning({ ...s.mesial, tilt: { faciopalatal: 14, mesiodistal: 5 } }, 3),
    distal: leaning(s.distal, 3),
    reference: { kind: 'tooth', cej: 1.6, margin: 2.6 },
  };
  return plan(
    '14, healed, plenty of bone',
    'A broad healed ridge: the place to learn what the readings look like when nothing is tight.',
    site,
    shape('tapered-straight-40x11'),
    'screw-bone',
    [-0.4, -0.9, -0.9, 11, 2],
  );
}

function thinGum(): Plan {
  const s = defaultSite(11);
  const site: Site = {
    ...s,
    ridge: {
      ...s.ridge,
      inclination: 34,
      widths: [
        { depth: 1, facial: 3.1, palatal: 3 },
        { depth: 4, facial: 3.8, palatal: 4.2 },
        { depth: 8, facial: 3.9, palatal: 5 },
        { depth: 12, facial: 4.1, palatal: 6 },
      ],
      undercut: { depth: 0, level: 6, halfHeight: 3 },
    },
    mesial: leaning(s.mesial, 6),
    distal: leaning(s.distal, 6),
    reference: { kind: 'recession', cej: 1.4, margin: 1.6 },
    gum: { crest: 1.6, facial: 0.7, palatal: 2, papillaMesial: 3, papillaDistal: 3 },
  };
  return plan(
    '11, thin gum: depth is everything',
    'The margin is thin and high; a shoulder a millimetre too far coronal shows.',
    site,
    shape('tapered-straight-35x11'),
    'screw-bone',
    [0.2, -1.8, -1.5, 30, -4],
  );
}

/** Straight arch, constant width, no rounding to speak of: every answer can be worked on paper. */
export function slabSite(width = 7.5): Site {
  const s = defaultSite(12);
  const half = width / 2;
  const widths = [
    { depth: 1, facial: half, palatal: half },
    { depth: 12, facial: half, palatal: half },
  ];
  return {
    ...s,
    arch: { width: 34, depth: 0 },
    ridge: {
      ...s.ridge,
      widths,
      crestRounding: 0.05,
      undercut: { depth: 0, level: 5, halfHeight: 3 },
      inclination: 0,
      height: 18,
      eminence: { height: 0, halfWidth: 3 },
      scallop: 0,
      crestDrop: 0,
    },
    mesial: upright(s.mesial, widths),
    distal: upright(s.distal, widths),
    crown: { ...s.crown, tilt: { faciopalatal: 0, mesiodistal: 0 } },
    reference: { kind: 'typed', cej: 2, margin: 3 },
    gum: { ...s.gum, crest: 3 },
  };
}

const upright = (tooth: Neighbour, widths: readonly WidthEntry[]): Neighbour => ({
  ...tooth,
  boneLevel: 0,
  tilt: { faciopalatal: 0, mesiodistal: 0 },
  ridge: { widths, inclination: 0 },
});

function slab(): Plan {
  return plan(
    'Plain slab for checking the arithmetic',
    'Width 7.5 everywhere, implant 3.5 upright in the middle: both walls are 2.0 by hand.',
    { ...slabSite(), gap: 8 },
    shape('parallel-straight-35x11'),
    'screw-bone',
    [0, 0, -0.1, 0, 0],
  );
}

function onePiece(): Plan {
  const s = defaultSite(22);
  const site: Site = {
    ...s,
    gap: 6.6,
    ridge: {
      ...s.ridge,
      inclination: 29,
      height: 19,
      crestRounding: 1.4,
      widths: [
        { depth: 1, facial: 2.9, palatal: 2.9 },
        { depth: 4, facial: 3.4, palatal: 3.6 },
        { depth: 8, facial: 3.2, palatal: 4.4 },
        { depth: 12, facial: 3.7, palatal: 5.2 },
      ],
      undercut: { depth: 0.5, level: 8, halfHeight: 3 },
    },
    mesial: leaning({ ...s.mesial, tilt: { faciopalatal: 24, mesiodistal: 2 }, cejAboveBone: 1.8 }, 8),
    distal: leaning({ ...s.distal, tilt: { faciopalatal: 18, mesiodistal: 8 } }, 8),
    reference: { kind: 'tooth', cej: 0.9, margin: 1.9 },
    gum: { ...s.gum, crest: 2.7 },
    crown: { ...s.crown, tilt: { faciopalatal: 22, mesiodistal: 4 } },
  };
  return plan(
    '22, one-piece implant: what the crown asks of its abutment',
    'The abutment is part of the implant. Where the crown over it would be too thin, it is ground; how much depends on the material.',
    site,
    shape('tapered-one-piece-30x11'),
    'cemented',
    [-1.2, -0.2, 1.6, 23, 7],
  );
}

export const SITES_DEMO: readonly DemoPlan[] = [
  { id: 'demo-1-narrow-lateral', plan: narrowLateral() },
  { id: 'demo-2-fresh-socket', plan: freshSocket() },
  { id: 'demo-3-wide-premolar', plan: widePremolar() },
  { id: 'demo-4-thin-gum', plan: thinGum() },
  { id: 'demo-5-slab', plan: slab() },
  { id: 'demo-6-one-piece', plan: onePiece() },
];
