import { carried } from '../geometry/carry.ts';
import { Kept } from '../geometry/kept.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { add, along, dot, rad, scale, sub, unit, type Vec3 } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { type Arch, archDirections, fromArch } from './arch.ts';
import { type CrownOptions, lowerCrownMesh } from './crown.ts';
import { LOWER_CONTACT } from './crownForm.ts';
import { EDGE_FACIAL } from './landmarks.ts';
import type { ToothNumbers } from './site.ts';
import type { PlacedTooth } from './teeth.ts';
import type { MeshInPlace } from './toothMeshes.ts';
import { LOWER_INCISORS } from './toothTable.ts';

/** How far the crowns of lower incisors lean facially from the occlusal plane's normal, degrees: Downs 1948, mean 14.5 (from memory). */
const LEAN = 14.5;

/** Radius of the arc through the lower contacts as a share of the upper arch's: a lower arch is narrower and rounder (assumed). */
const ROUNDER = 0.6;

/** A lower incisor in its place: its own axes and points in the site frame, mm. Its root is not drawn. */
export interface Opponent {
  /** ISO 3950: 31, 32, 41 or 42. */
  readonly code: number;
  readonly cls: 'central' | 'lateral';
  readonly numbers: ToothNumbers;
  /** Most apical point of the facial CEJ's level on the tooth's axis, as rule S7 has it. */
  readonly origin: Vec3;
  /** Tooth axes `x` mesial, `y` facial, `z` toward the edge. */
  readonly ex: Vec3;
  readonly ey: Vec3;
  readonly a: Vec3;
  /** Middle of the incisal edge. */
  readonly edge: Vec3;
}

/** Occlusal directions at the midline in the site frame: across it (+ the site's mesial, so away from its side) and facial. */
interface Midline {
  readonly origin: Vec3;
  readonly across: Vec3;
  readonly facial: Vec3;
}

/** The upper central incisor from which overjet and overbite are taken: the one on the site's side, or for sites 11 and 21 the other. */
export function measuredCentral({ teeth }: Anatomy): PlacedTooth {
  const found = [teeth.mesial, ...teeth.further].find((tooth) => tooth.cls === 'central');
  if (!found) throw new RangeError('no upper central incisor stands beside the site');
  return found;
}

/** One side's central or lateral on an arc through the contacts: its mesial and distal contacts are the ends of a chord. */
function onArc(
  mid: Midline,
  arc: Arch,
  side: 1 | -1,
  from: number,
  cls: 'central' | 'lateral',
): Omit<Opponent, 'code'> & { readonly reached: number } {
  const numbers = LOWER_INCISORS[cls];
  const { radius } = arc;
  const turn =
    radius === Number.POSITIVE_INFINITY
      ? numbers.crownWidth
      : 2 * radius * Math.asin(numbers.crownWidth / (2 * radius));
  const reached = from + turn;
  const at = (s: number): Vec3 => {
    const [x, y] = fromArch(arc, side * s, 0, 0);
    return add(mid.origin, add(scale(mid.across, x), scale(mid.facial, y)));
  };
  const [near, far] = [at(from), at(reached)];
  const ex = unit(sub(near, far));
  const { normal } = archDirections(arc, side * (from + turn / 2));
  const outward = add(scale(mid.across, normal[0]), scale(mid.facial, normal[1]));
  const [cos, sin] = [Math.cos(rad(LEAN)), Math.sin(rad(LEAN))];
  const a: Vec3 = [sin * outward[0], sin * outward[1], -cos];
  const ey: Vec3 = [cos * outward[0], cos * outward[1], sin];
  const middle = scale(add(near, far), 0.5);
  const origin = along(middle, a, -LOWER_CONTACT * numbers.crownLength);
  const edge = along(along(origin, ey, EDGE_FACIAL), a, numbers.crownLength);
  return { cls, numbers, origin, ex, ey, a, edge, reached };
}

/**
 * The four lower incisors in the site frame (rule S16), mm: the central on the measured side has its edge `overjet` behind and
 * `overbite` beyond the upper central's most incisal point, in the midline's directions; all edges are level.
 */
export function opposingIncisors(anatomy: Anatomy): readonly Opponent[] {
  const { arch, site, teeth } = anatomy;
  const { tangent, normal } = archDirections(arch, teeth.midline);
  const upper = measuredCentral(anatomy);
  const { overjet, overbite } = site.opposing;
  const start = fromArch(arch, teeth.midline, 0, 0);
  const mid: Midline = { origin: start, across: tangent, facial: normal };
  const behind = dot(sub(upper.marks.tip, start), normal) - overjet;
  const arc: Arch = { radius: ROUNDER * arch.radius };
  const level = upper.marks.tip[2] - overbite;
  const sides = [-1, 1] as const;
  const placed = sides.flatMap((side) => {
    const central = onArc(mid, arc, side, 0, 'central');
    const lateral = onArc(mid, arc, side, central.reached, 'lateral');
    const quadrant = (side === -1) === site.tooth < 20 ? 4 : 3;
    return [
      { ...central, code: 10 * quadrant + 1 },
      { ...lateral, code: 10 * quadrant + 2 },
    ];
  });
  const shift = behind - dot(sub(placed[0].edge, start), normal);
  return placed.map(({ reached: _, ...tooth }): Opponent => {
    const move = add(scale(normal, shift), [0, 0, level - tooth.edge[2]]);
    return { ...tooth, origin: add(tooth.origin, move), edge: add(tooth.edge, move) };
  });
}

/** A lower incisor with its crown in tooth coordinates, in its place. */
export interface OpposingCrown extends MeshInPlace {
  readonly tooth: Opponent;
}

const crowns = new Kept<TriangleMesh>(4);

function crownOf({ cls, numbers }: Opponent, options: CrownOptions): TriangleMesh {
  const question = [cls, options.columns, options.rings].join(' ');
  return crowns.get(question, () => lowerCrownMesh(numbers, options));
}

/** The crowns of the four lower incisors in their places: closed, outward. They come back as the same meshes, in new places. */
export const opposingInPlace = (anatomy: Anatomy, options: CrownOptions = {}): readonly OpposingCrown[] =>
  opposingIncisors(anatomy).map((tooth) => {
    const { origin, ex, ey, a } = tooth;
    return { tooth, mesh: crownOf(tooth, options), frame: { origin, ex, ey, ez: a } };
  });

/** The crowns of the four lower incisors in the site frame, mm. */
export const opposingMeshes = (anatomy: Anatomy, options: CrownOptions = {}) =>
  opposingInPlace(anatomy, options).map(({ tooth, mesh, frame }) => ({ tooth, crown: carried(mesh, frame) }));
