import clipping, { type MultiPolygon, type Ring } from 'polygon-clipping';
import { type Loop, loopArea, type Plane } from '../geometry/slice.ts';
import { outlineInPlane } from './outline.ts';
import type { PassBody } from './passBody.ts';

/** How far coronal of the crest point what was drilled is taken away, mm: beyond every bone and gum. */
const ABOVE = 14;
/** A scrap smaller than this is an artefact of the drawing, mm². */
const SCRAP = 0.005;

const ringOf = (loop: Loop): Ring => loop.map(([x, y]): [number, number] => [x, y]);

/** Outlines of bodies in a plane, one by one. */
export const bodiesInPlane = (bodies: readonly PassBody[], plane: Plane): Loop[] =>
  bodies.flatMap((body) => outlineInPlane(body, plane, ABOVE));

/**
 * What is left of loops (outer ones and holes, by the even-odd rule) when outlines are taken out of them, in the coordinates of their plane, mm. Outer loops run
 * one way, holes the other.
 */
export function carved(loops: readonly Loop[], outlines: readonly Loop[]): Loop[] {
  if (outlines.length === 0 || loops.length === 0) return [...loops];
  const [first, ...rest] = loops.map((loop): MultiPolygon => [[ringOf(loop)]]);
  const whole = clipping.xor(first, ...rest);
  const left = clipping.difference(whole, ...outlines.map((loop): MultiPolygon => [[ringOf(loop)]]));
  return left.flat().filter((ring) => Math.abs(loopArea(ring)) > SCRAP);
}
