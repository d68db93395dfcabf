import type { PerspectiveCamera } from 'three';
import type { Anatomy } from '../../core/anatomy/anatomy.ts';
import { fromArch } from '../../core/anatomy/arch.ts';
import { shownRange } from '../../core/anatomy/section.ts';
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

/** How far to the left of the eye the key light stands, seen from the front, degrees. */
const RAKING = 55;

/** Which way the front of the drawing looks: so that the key, which stands still, always rakes it from the left. */
const FRONT_AZIMUTH = Math.atan2(KEY.y, KEY.x) + (RAKING * Math.PI) / 180;
const FRONT: Vec3 = [Math.cos(FRONT_AZIMUTH), Math.sin(FRONT_AZIMUTH), 0];

/** To the right on the picture, seen from the front. */
const ACROSS = cross([0, 0, 1], FRONT);

/** How the jaw stands in the drawing: crowns hang down, the gap's facial side is to the front. A proper turn, no reflection. */
export function jawStands({ toJawDirection }: Anatomy): Placed {
  const [x, y] = toJawDirection([0, 1, 0]);
  // Upside down about the y axis, then about the upright.
  const turn = FRONT_AZIMUTH - Math.atan2(y, -x);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return { origin: [0, 0, 0], ex: [-c, -s, 0], ey: [-s, c, 0], ez: [0, 0, -1] };
}

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const middle = (numbers: readonly number[]) => (Math.min(...numbers) + Math.max(...numbers)) / 2;
const spread = (numbers: readonly number[]) => Math.max(...numbers) - Math.min(...numbers);

/** What has to be seen: both teeth beside the gap from edge to root tip, and the implant's tip; as it stands in the drawing. */
function seenPoints({ anatomy, placement }: Evaluation): Vec3[] {
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

/** Where the eye looks from: away from the drawing, unit, in the drawing's own frame. */
function towardEye({ azimuth, elevation }: Look): Vec3 {
  const flat = add(scale(FRONT, Math.cos(rad(azimuth))), scale(ACROSS, Math.sin(rad(azimuth))));
  return unit(add(scale(flat, Math.cos(rad(elevation))), [0, 0, Math.sin(rad(elevation))]));
}

/** Room that is left round what has to be seen, mm: gum and bone reach a little further. */
const ROOM = 2.5;
/** How far beside the outermost contacts the drawing has run out into the paper, mm: before the model ends. */
const RUNS_OUT = 5.6;

/** How far over the highest tip the drawing has run out, and over which length it does so, mm. */
const OVER = 2.6;
const FADE = 4.5;

/** Where along the picture the drawing runs out: a little beside what has to be seen, and before the model ends. */
function sidesOf(anatomy: Anatomy, across: readonly number[]): [number, number] {
  const { from, to } = shownRange(anatomy);
  const stands = jawStands(anatomy);
  const ends = [from, to].map((q) =>
    dot(broughtOut(stands, anatomy.toJaw(fromArch(anatomy.arch, q, 0, 0))), ACROSS),
  );
  return [
    Math.max(Math.min(...across) - RUNS_OUT, Math.min(...ends)),
    Math.min(Math.max(...across) + RUNS_OUT, Math.max(...ends)),
  ];
}

/** How a look fits into a frame. Size and middle are those seen straight from the front, so that turning never makes it jump. */
function fitted(evaluation: Evaluation, look: Look, frame: Frame) {
  const { anatomy } = evaluation;
  const points = seenPoints(evaluation);
  const across = points.map((p) => dot(p, ACROSS));
  const high = points.map((p) => p[2]);
  const deep = points.map((p) => dot(p, FRONT));
  const target = add(add(scale(ACROSS, middle(across)), scale(FRONT, middle(deep))), [
    0,
    0,
    middle(high) - look.lift,
  ]);
  const floor = broughtOut(jawStands(anatomy), anatomy.toJaw([0, 0, anatomy.ridge.floor]))[2];
  const ends = Math.min(Math.max(...high) + OVER, floor - 0.3);
  const wide = frame.width / (spread(across) + 2 * ROOM);
  const tall = frame.height / (spread(high) + 2 * ROOM);
  const millimetre = look.size * Math.min(wide, tall);
  return {
    target,
    millimetre,
    sides: sidesOf(anatomy, across).map((at) => (at - middle(across)) * millimetre),
    top: (ends - middle(high)) * millimetre,
  };
}

/** Where on the picture the drawing has run out into the paper, and over which length it does so upward; px. */
export function edgesOf(evaluation: Evaluation, look: Look, frame: Frame) {
  const { sides, top, millimetre } = fitted(evaluation, look, frame);
  const [x, y] = [frame.left + frame.width / 2, frame.top + frame.height / 2];
  return {
    left: Math.max(frame.left - 10, x + Math.min(...sides)),
    right: Math.min(frame.left + frame.width + 10, x + Math.max(...sides)),
    top: y - top - look.lift * millimetre,
    bottom: frame.top + frame.height,
    fade: FADE * millimetre,
  };
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
