import { Matrix4, Vector3 } from 'three';
import type { Anatomy } from '../../core/anatomy/anatomy.ts';
import { siteInJaw } from '../../core/anatomy/jawFrame.ts';
import { plannedTooth } from '../../core/anatomy/toothMeshes.ts';
import { broughtInto, broughtOut } from '../../core/geometry/carry.ts';
import { along, dot, sub, unit, type Vec3 } from '../../core/geometry/vec.ts';
import type { Evaluation } from '../../core/plan/evaluate.ts';
import { crownFrame } from '../../core/restoration/plannedCrown.ts';
import { facing } from './showCamera.ts';

/** A narrowing and a shift along one direction of the site frame, mm. */
export interface CrownFit {
  /** From the distal neighbour's contact to the mesial one's, unit. */
  readonly way: Vec3;
  /** Place along it that the narrowing leaves where it is. */
  readonly middle: number;
  readonly factor: number;
  readonly shift: number;
}

/** Room that is left on each side, mm: as much as an ink edge needs. */
const ROOM = 0.12;

/**
 * How the crown is made to stand between its neighbours: one that is planned wider than the gap, or that leans into a neighbour, would be drawn
 * within it. Who makes the crown does the same; nothing is read off this.
 */
export function crownFit({ anatomy, plan }: Evaluation): CrownFit {
  const [to, from] = [facing(anatomy.teeth.mesial), facing(anatomy.teeth.distal)];
  const way = unit(sub(to, from));
  const { origin, ex, ey, a, marks } = plannedTooth(anatomy);
  const stands = crownFrame(anatomy, plan.crown);
  const place = (p: Vec3): number => dot(broughtOut(stands, broughtInto({ origin, ex, ey, ez: a }, p)), way);
  const [low, high] = [place(marks.distalContact), place(marks.mesialContact)];
  const [least, most] = [dot(from, way) + ROOM, dot(to, way) - ROOM];
  const factor = Math.min(1, (most - least) / (high - low));
  const middle = (low + high) / 2;
  const half = (factor * (high - low)) / 2;
  const fits = Math.min(most - half, Math.max(least + half, middle));
  return { way, middle, factor, shift: fits - middle };
}

/** A point of the crown, site frame, as it is drawn. */
export const fitted = (p: Vec3, { way, middle, factor, shift }: CrownFit): Vec3 =>
  along(p, way, (factor - 1) * (dot(p, way) - middle) + shift);

/** The same for what is laid in the jaw frame. */
export function fittingMatrix(fit: CrownFit, anatomy: Anatomy): Matrix4 {
  const site = siteInJaw(anatomy);
  const at = (p: Vec3): Vector3 => new Vector3(...broughtOut(site, fitted(p, fit)));
  const origin = at([0, 0, 0]);
  const [x, y, z] = [at([1, 0, 0]), at([0, 1, 0]), at([0, 0, 1])].map((p) => p.sub(origin));
  const [ex, ey, ez] = [site.ex, site.ey, site.ez].map((v) => new Vector3(...v));
  const laid = new Matrix4().makeBasis(ex, ey, ez).setPosition(...site.origin);
  return new Matrix4().makeBasis(x, y, z).setPosition(origin).multiply(laid.invert());
}
