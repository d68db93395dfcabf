import type { PerspectiveCamera } from 'three';
import type { Anatomy } from '../../core/anatomy/anatomy.ts';
import type { PlacedTooth } from '../../core/anatomy/teeth.ts';
import { broughtOut, type Placed } from '../../core/geometry/carry.ts';
import { add, cross, dot, scale, unit, type Vec3 } from '../../core/geometry/vec.ts';
import type { Evaluation } from '../../core/plan/evaluate.ts';
import { KEY } from '../shaders.ts';
import type { Look } from './looks.ts';

/** The drawing's lens, longer than the stage's: vertical field of view in degrees. */
export const SHOW_LENS = { fov: 12, near: 40, far: 900 } as const;

/** A part of the picture, px from its upper left corner. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Which way the front of the drawing looks in its own frame, in which all that lights it stands still. */
const FRONT_AZIMUTH = Math.atan2(KEY.y, KEY.x) + (55 * Math.PI) / 180;
const FRONT: Vec3 = [Math.cos(FRONT_AZIMUTH), Math.sin(FRONT_AZIMUTH), 0];

/** To the right on the picture, seen from the front. */
const ACROSS = cross([0, 0, 1], FRONT);

/**
 * Where the drawing's own key stands, seen from the front: to the left of the eye and up, degrees. Lower than the stage's, or gum that looks down would
 * lie in shade.
 */
const KEY_AT = { left: 38, up: 24 } as const;

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

/** Direction toward that key, unit, in the drawing's own frame. */
export const SHOW_KEY: Vec3 = (() => {
  const [a, up] = [FRONT_AZIMUTH - rad(KEY_AT.left), rad(KEY_AT.up)];
  return [Math.cos(up) * Math.cos(a), Math.cos(up) * Math.sin(a), Math.sin(up)];
})();

/** How the jaw stands in the drawing: crowns hang down, the gap's facial side is to the front. A proper turn, no reflection. */
export function jawStands({ toJawDirection }: Anatomy): Placed {
  const [x, y] = toJawDirection([0, 1, 0]);
  // Upside down about the y axis, then about the upright.
  const turn = FRONT_AZIMUTH - Math.atan2(y, -x);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return { origin: [0, 0, 0], ex: [-c, -s, 0], ey: [-s, c, 0], ez: [0, 0, -1] };
}

const middle = (numbers: readonly number[]) => (Math.min(...numbers) + Math.max(...numbers)) / 2;
const spread = (numbers: readonly number[]) => Math.max(...numbers) - Math.min(...numbers);

/** What has to be seen: both teeth beside the gap from edge to root tip, and the implant's tip; as it stands in the drawing. */
export function seenPoints({ anatomy, placement }: Evaluation): Vec3[] {
  const { teeth, toJaw } = anatomy;
  const stands = jawStands(anatomy);
  const beside = [teeth.mesial, teeth.distal];
  const points = beside.flatMap(({ marks, root }) => [
    marks.tip,
    marks.mesialContact,
    marks.distalContact,
    root.apex,
  ]);
  return [...points, placement.axisPoint(placement.tA)].map((p) => broughtOut(stands, toJaw(p)));
}

/** A neighbour's contact that faces the gap. */
export function facing({ marks: { mesialContact, distalContact } }: PlacedTooth): Vec3 {
  return Math.abs(mesialContact[0]) < Math.abs(distalContact[0]) ? mesialContact : distalContact;
}

/** Where the eye looks from: away from the drawing, unit, in the drawing's own frame. */
function towardEye({ azimuth, elevation }: Look): Vec3 {
  const flat = add(scale(FRONT, Math.cos(rad(azimuth))), scale(ACROSS, Math.sin(rad(azimuth))));
  return unit(add(scale(flat, Math.cos(rad(elevation))), [0, 0, Math.sin(rad(elevation))]));
}

/** Room that is left round what has to be seen, mm: gum and bone reach a little further. */
const ROOM = 2.5;
/** How a look fits into a frame. Size and middle are those seen straight from the front, so that turning never makes it jump. */
function fitted(evaluation: Evaluation, look: Look, frame: Frame) {
  const points = seenPoints(evaluation);
  const across = points.map((p) => dot(p, ACROSS));
  const high = points.map((p) => p[2]);
  const deep = points.map((p) => dot(p, FRONT));
  const target = add(add(scale(ACROSS, middle(across)), scale(FRONT, middle(deep))), [
    0,
    0,
    middle(high) - look.lift,
  ]);
  const wide = frame.width / (spread(across) + 2 * ROOM);
  const tall = frame.height / (spread(high) + 2 * ROOM);
  const millimetre = look.size * Math.min(wide, tall);
  return { target, millimetre };
}

/** Stands the camera so that the drawing fits into `frame` of a picture and turns about its own middle. */
export function standCamera(
  camera: PerspectiveCamera,
  evaluation: Evaluation,
  look: Look,
  size: Size,
  frame: Frame,
): void {
  const { target, millimetre } = fitted(evaluation, look, frame);
  const distance = size.height / millimetre / 2 / Math.tan(rad(SHOW_LENS.fov / 2));
  const eye = add(target, scale(towardEye(look), distance));
  camera.fov = SHOW_LENS.fov;
  camera.near = Math.max(5, distance - 60);
  camera.far = distance + 60;
  camera.up.set(0, 0, 1);
  camera.position.set(...eye);
  camera.lookAt(...target);
  const right = frame.left + frame.width / 2 - size.width / 2;
  const down = frame.top + frame.height / 2 - size.height / 2;
  camera.setViewOffset(size.width, size.height, -right, -down, size.width, size.height);
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}
