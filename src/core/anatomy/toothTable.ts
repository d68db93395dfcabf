import type { Tilt } from '../geometry/pose.ts';
import type { ToothClass } from './landmarks.ts';
import type { ToothNumbers } from './site.ts';

/** Every tooth of the table: the upper ones by class, and the lower incisors that oppose them. */
export type TableTooth = ToothClass | 'lower-central' | 'lower-lateral';

/** How a number of the table is known: read in the cited table, from memory and not read, or assumed by this project. */
export type TableKnown = 'read' | 'memory' | 'ours';

/** Where a number comes from, as a catalogue code. */
export interface TableOrigin {
  readonly source: 'nelson-ash-table-1-1' | 'tong-2012' | 'andrews-1989' | 'assumed';
  readonly known: TableKnown;
}

type Row = readonly [
  crownLength: number,
  rootLength: number,
  crownWidth: number,
  cervixWidth: number,
  crownDepth: number,
  cervixDepth: number,
  cejCurveMesial: number,
  cejCurveDistal: number,
];

/**
 * Carving averages in mm, Nelson SJ, Ash MM, *Wheeler's Dental Anatomy, Physiology and Occlusion*, Table 1-1: lengths,
 * mesiodistal ("width") and labiolingual ("depth") diameters of crown and cervix, height of the curve of the cervical line.
 */
const ROWS: Readonly<Record<TableTooth, Row>> = {
  central: [10.5, 13, 8.5, 7, 7, 6, 3.5, 2.5],
  lateral: [9, 13, 6.5, 5, 6, 5, 3, 2],
  canine: [10, 17, 7.5, 5.5, 8, 7, 2.5, 1.5],
  premolar1: [8.5, 14, 7, 5, 9, 8, 1, 0],
  premolar2: [8.5, 14, 7, 5, 9, 8, 1, 0],
  'lower-central': [9, 12.5, 5, 3.5, 6, 5.3, 3, 2],
  'lower-lateral': [9.5, 14, 5.5, 4, 6.5, 5.8, 3, 2],
};

/** Rows that were read in the table, except for their depth at the cervix; the other rows are from memory. */
const READ: ReadonlySet<TableTooth> = new Set<TableTooth>(['central', 'lateral']);

const named = (r: Row): ToothNumbers => ({
  crownLength: r[0],
  rootLength: r[1],
  crownWidth: r[2],
  cervixWidth: r[3],
  crownDepth: r[4],
  cervixDepth: r[5],
  cejCurveMesial: r[6],
  cejCurveDistal: r[7],
});

/** Published mean of every upper tooth this project draws, mm; the source of each number is {@link originOf}. */
export const TOOTH_TABLE: Readonly<Record<ToothClass, ToothNumbers>> = {
  central: named(ROWS.central),
  lateral: named(ROWS.lateral),
  canine: named(ROWS.canine),
  premolar1: named(ROWS.premolar1),
  premolar2: named(ROWS.premolar2),
};

/** The lower incisors of the same table, mm; their facial side is `+ y` of their own frame too. */
export const LOWER_INCISORS: Readonly<Record<'central' | 'lateral', ToothNumbers>> = {
  central: named(ROWS['lower-central']),
  lateral: named(ROWS['lower-lateral']),
};

/** Source of one number of the tooth table and how it is known. */
export function originOf(tooth: TableTooth, column: keyof ToothNumbers): TableOrigin {
  const read = READ.has(tooth) && column !== 'cervixDepth';
  return { source: 'nelson-ash-table-1-1', known: read ? 'read' : 'memory' };
}

/**
 * Default axis of the whole tooth from the normal of the occlusal plane, degrees: faciopalatal + crown facial,
 * mesiodistal + crown mesial. **Assumed**: studies and reference lines differ (a central runs from 20 to 33.5).
 */
export const DEFAULT_TILT: Readonly<Record<ToothClass, Tilt>> = {
  central: { faciopalatal: 28, mesiodistal: 6 },
  lateral: { faciopalatal: 26, mesiodistal: 6.5 },
  canine: { faciopalatal: 16, mesiodistal: 11 },
  premolar1: { faciopalatal: 9, mesiodistal: 2.7 },
  premolar2: { faciopalatal: 9, mesiodistal: 0 },
};

/**
 * Where the default tilts lean on a study: mesiodistal angles of the whole tooth of central (about 6), lateral (slightly more) and
 * canine (11) by Tong 2012, read; the first premolar's is its crown's angulation by Andrews 1989, from memory. The rest is assumed.
 */
export function tiltOriginOf(cls: ToothClass, part: keyof Tilt): TableOrigin {
  if (part === 'faciopalatal' || cls === 'premolar2') return { source: 'assumed', known: 'ours' };
  if (cls === 'premolar1') return { source: 'andrews-1989', known: 'memory' };
  return { source: 'tong-2012', known: cls === 'lateral' ? 'ours' : 'read' };
}

/** Default of the root's further tilt: no mean of the crown-to-root angle is published that could be cited. */
export const DEFAULT_ROOT_TILT: Tilt = { faciopalatal: 0, mesiodistal: 0 };
