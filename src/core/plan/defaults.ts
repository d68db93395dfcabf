import { classOf, type ToothClass } from '../anatomy/landmarks.ts';
import type { RidgeNumbers, Site, SiteCode } from '../anatomy/site.ts';
import { defaultNeighbour, RIDGE_OVER_TOOTH, widthEntries as widths } from '../anatomy/toothDefaults.ts';
import { DEFAULT_TILT, TOOTH_TABLE } from '../anatomy/toothTable.ts';

/** A published (or assumed) number with where it comes from; the catalogue has the words. */
export interface Origin {
  readonly source: string;
  readonly known: 'read' | 'second-hand' | 'memory' | 'derived' | 'ours';
}

/**
 * Crest to floor along the ridge's own axis, mm: such that the mean root's apex is as far from the floor, along that axis, as measured (Ducommun 2019: 8.54,
 * 9.49, 5.39 for central, lateral, canine); the central's agrees with 19.23 read from crest to floor (Zhang 2015). Premolars assumed.
 */
const HEIGHT = { central: 20.2, lateral: 21.8, canine: 20.5, premolar1: 18, premolar2: 18 } as const;
/** Facial undercut: depth and distance below the crest, mm (Zhang 2015; canine's depth from memory; premolars assumed). */
const UNDERCUT = {
  central: { depth: 0.76, level: 5.84 },
  lateral: { depth: 0.87, level: 3.59 },
  canine: { depth: 0.73, level: 5.11 },
  premolar1: { depth: 0.5, level: 5 },
  premolar2: { depth: 0.5, level: 5 },
} as const;

/**
 * Half-widths of a healed ridge, mm, by depth, facial, palatal: 6.5 mm at 4 mm below the crest but for the hollow; assumed, no good mean of a healed front ridge
 * was found. One curve, entered well away from the level of each tooth's undercut, which would otherwise count as contained in the widths (rule S3).
 */
const HEALED = {
  central: [
    [1, 2, 2.4],
    [4, 3, 3.5],
    [8, 3.4, 4.3],
    [12, 3.8, 5.2],
  ],
  lateral: [
    [1, 2, 2.4],
    [6, 3.2, 3.9],
    [9, 3.5, 4.5],
    [12, 3.8, 5.2],
  ],
  other: [
    [1, 2, 2.4],
    [3, 2.8, 3.2],
    [7, 3.3, 4.1],
    [12, 3.8, 5.2],
  ],
} as const;

const healedWidths = (cls: ToothClass) =>
  widths(HEALED[cls === 'central' || cls === 'lateral' ? cls : 'other']);

/** Where the site defaults come from; whatever is not listed is assumed. */
export const SITE_ORIGINS: Readonly<Record<string, Origin>> = {
  'neighbour.ridge.widths': { source: 'zhang-2015', known: 'derived' },
  'ridge.undercut': { source: 'zhang-2015', known: 'read' },
  'ridge.height': { source: 'ducommun-2019', known: 'derived' },
  'ridge.inclination': { source: 'tooth-to-ridge-2021', known: 'read' },
  'ridge.widths': { source: 'assumed', known: 'ours' },
  'gum.crest': { source: 'munakata-2021', known: 'second-hand' },
  'gum.facial': { source: 'kan-2010', known: 'read' },
  canal: { source: 'canal-300', known: 'read' },
  'opposing.overbite': { source: 'brunelle-1996', known: 'read' },
  'opposing.overjet': { source: 'brunelle-1996', known: 'memory' },
  'neighbour.cejAboveBone': { source: 'januario-2011', known: 'memory' },
};

/** The mean site of a tooth: healed, published means where there are any, otherwise assumed (see {@link SITE_ORIGINS}). */
export function defaultSite(tooth: SiteCode): Site {
  const cls = classOf(tooth);
  const place = tooth % 10;
  const side = tooth - place;
  const across = side === 10 ? 20 : 10;
  const bone = 1;
  const tilt = DEFAULT_TILT[cls];
  const ridge: RidgeNumbers = {
    widths: healedWidths(cls),
    blend: { from: 2, to: 6.5 },
    crestRounding: 1.5,
    undercut: { ...UNDERCUT[cls], halfHeight: 3 },
    inclination: tilt.faciopalatal + RIDGE_OVER_TOOTH[cls],
    height: HEIGHT[cls],
    floor: place >= 4 ? 'sinus' : 'nose',
    eminence: { height: 0.4, halfWidth: 3 },
    cortex: { facial: 0.9, palatal: 1.2 },
    boneClass: 3,
    scallop: 1.2,
    crestDrop: bone,
  };
  const mesialCode = place === 1 ? across + 1 : tooth - 1;
  return {
    tooth,
    arch: { width: 34, depth: 5.5 },
    ridge,
    state: { kind: 'healed' },
    gap: TOOTH_TABLE[cls].crownWidth,
    mesial: defaultNeighbour(mesialCode, bone),
    distal: defaultNeighbour(tooth + 1, bone),
    reference: { kind: 'tooth', cej: 1.8, margin: 2.8 },
    gum: { crest: 3, facial: 1.1, palatal: 2.5, papillaMesial: 4, papillaDistal: 3.5 },
    crown: { ...TOOTH_TABLE[cls], tilt },
    canal: { behind: 8, below: 2, inclination: 32, length: 10.7, foramen: 3.6, middle: 2.1, nasal: 3.3 },
    opposing: { overjet: 2.9, overbite: 2.9 },
  };
}
