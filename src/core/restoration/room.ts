import type { PlacedTooth } from '../anatomy/teeth.ts';
import { broughtOut } from '../geometry/carry.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
import type { ImplantShape } from '../implant/shape.ts';
import { gapContact } from '../measure/lines.ts';
import type { Placement } from '../measure/placement.ts';
import type { PlannedCrown } from './plannedCrown.ts';

/**
 * Papillae that filled the space between teeth by the distance from contact to bone, mm → per cent of sites: Tarnow DP, Magner AW, Fletcher P. J Periodontol
 * 1992;63:995–6 (6 and 7 mm read; 3 to 5 mm from memory).
 */
const PAPILLA: Readonly<Record<number, number>> = { 3: 100, 4: 100, 5: 98, 6: 56, 7: 27 };

/** The study's percentage for a distance, which it gave in whole millimetres; null where it had no such class or a number that is not sure. */
export const papillaShare = (distance: number): number | null => PAPILLA[Math.round(distance)] ?? null;

/** A stretch along `c`, with its ends in the site frame, mm. */
interface Stretch {
  readonly value: number;
  readonly from: Vec3;
  readonly to: Vec3;
}

/**
 * From a neighbour's contact point toward the gap to the bone at its root there, along `c`. Bone at a root follows the cervical line at one distance all
 * round (`cejAboveBone`), so that it stands higher beside a curved line than the ridge between the teeth.
 */
export function contactToBone(tooth: PlacedTooth, mesialNeighbour: boolean): Stretch {
  const from = gapContact(tooth, mesialNeighbour);
  const n = tooth.numbers;
  const facesDistally = mesialNeighbour === (tooth.turn === 1);
  const curve = facesDistally ? n.cejCurveDistal : n.cejCurveMesial;
  const beside = along(tooth.origin, tooth.ex, ((facesDistally ? -1 : 1) * n.cervixWidth) / 2);
  const bone = along(beside, tooth.a, curve)[2] - n.cejAboveBone;
  return { value: from[2] - bone, from, to: [from[0], from[1], bone] };
}

/** From the shoulder's centre along the axis to the occlusal level of the planned edge's most incisal point. */
export function crownHeight(at: Placement, crown: PlannedCrown): Stretch {
  const level = Math.max(...crown.edge.map((p) => broughtOut(crown.frame, p)[2]));
  const value = (level - at.platform[2]) / at.a[2];
  return { value, from: at.platform, to: along(at.platform, at.a, value) };
}

/** Room that an implant asks for on each side of it between two teeth, mm (Buser 2004; Esposito 1993). */
const BESIDE = 1.5;

/** Mesiodistal room that an implant asks for between two teeth, mm. */
export const roomNeeded = (shape: ImplantShape): number => shape.implantedDiameter + 2 * BESIDE;

/** Room between the two contacts over what the implant asks for, + to spare. */
export function mesiodistalRoom(at: Placement): Stretch {
  const { mesial, distal } = at.anatomy.teeth;
  const [from, to] = [gapContact(distal, false), gapContact(mesial, true)];
  return { value: to[0] - from[0] - roomNeeded(at.shape), from, to };
}
