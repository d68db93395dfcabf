import { classOf } from '../anatomy/landmarks.ts';
import type { RidgeNumbers, Site, SiteCode, WidthEntry } from '../anatomy/site.ts';
import { defaultNeighbour } from '../anatomy/toothDefaults.ts';
import { DEFAULT_TILT, TOOTH_TABLE } from '../anatomy/toothTable.ts';

/** A published (or assumed) number with where it comes from; the catalogue has the words. */
export interface Origin {
  readonly source: string;
  readonly known: 'read' | 'second-hand' | 'memory' | 'derived' | 'ours';
}

const widths = (rows: readonly (readonly [number, number, number])[]): WidthEntry[] =>
  rows.map(([depth, facial, palatal]) => ({ depth, facial, palatal }));

/** Ridge inclination less the tooth's: published for central and lateral; the rest assumed. Degrees. */
const RIDGE_OVER_TOOTH = { central: 15, lateral: 19, canine: 12, premolar1: 12, premolar2: 12 } as const;
/** Mean of a dentate ridge's width over three levels, mm (Zhang 2015); premolars assumed as the canine. */
const FULL_WIDTH = { central: 9.55, lateral: 8.3, canine: 9.62, premolar1: 9.62, premolar2: 9.62 } as const;
/** Facial undercut: depth and distance below the crest, mm (Zhang 2015; canine's depth from memory; premolars assumed). */
const UNDERCUT = {
  central: { depth: 0.76, level: 5.84 },
  lateral: { depth: 0.87, level: 3.59 },
  canine: { depth: 0.73, level: 5.11 },
  premolar1: { depth: 0.5, level: 5 },
  premolar2: { depth: 0.5, level: 5 },
} as const;

/** Where the site defaults come from; whatever is not listed is assumed. */
export const SITE_ORIGINS: Readonly<Record<string, Origin>> = {
  'ridge.fullWidths': { source: 'zhang-2015', known: 'read' },
  'ridge.undercut': { source: 'zhang-2015', known: 'read' },
  'ridge.height': { source: 'zhang-2015', known: 'read' },
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
  const full = FULL_WIDTH[cls];
  const tilt = DEFAULT_TILT[cls];
  const ridge: RidgeNumbers = {
    // 6.5 mm at 4 mm below the crest: assumed, no good mean of a healed front ridge was found.
    widths: widths([
      [1, 2, 2.4],
      [4, 3, 3.5],
      [8, 3.4, 4.3],
      [12, 3.8, 5.2],
    ]),
    // Half of the dentate mean at 4 mm each side, growing apically.
    fullWidths: widths([
      [1, 0.42 * full, 0.42 * full],
      [4, 0.47 * full, 0.5 * full],
      [8, 0.48 * full, 0.55 * full],
      [12, 0.5 * full, 0.65 * full],
    ]),
    blend: { from: 2, to: 6.5 },
    crestRounding: 1.5,
    undercut: { ...UNDERCUT[cls], halfHeight: 3 },
    inclination: tilt.faciopalatal + RIDGE_OVER_TOOTH[cls],
    height: 19.2,
    floor: place >= 4 ? 'sinus' : 'nose',
    eminence: { height: 0.4, halfWidth: 3 },
    cortex: { facial: 0.9, palatal: 1.2 },
    boneClass: 3,
    crestDrop: bone,
  };
  const mesialCode = place === 1 ? across + 1 : tooth - 1;
  return {
    tooth,
    arch: { width: 34, depth: 6 },
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
