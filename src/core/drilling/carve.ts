import { Clipper, FillRule, type Paths64 } from 'clipper2-ts';
import { type Loop, loopArea } from '../geometry/slice.ts';

/** A scrap smaller than this is an artefact of the drawing, mm². */
const SCRAP = 0.005;
/** The clipper counts in whole numbers, which is what makes it sound: so many to a millimetre. */
const GRAIN = 1e5;

const pathOf = (loop: Loop): Paths64[number] =>
  loop.map(([x, y]) => ({ x: Math.round(x * GRAIN), y: Math.round(y * GRAIN) }));

const loopOf = (path: Paths64[number]): Loop => path.map(({ x, y }) => [x / GRAIN, y / GRAIN] as const);

/** The same loop, anticlockwise. */
const turned = (loop: Loop): Loop => (loopArea(loop) < 0 ? [...loop].reverse() : loop);

/**
 * What is left of loops (outer ones and holes, by the even-odd rule) when outlines are taken out of them, in the coordinates of their plane, mm. Outer loops run
 * one way, holes the other.
 */
export function carved(loops: readonly Loop[], outlines: readonly Loop[]): Loop[] {
  if (outlines.length === 0 || loops.length === 0) return [...loops];
  const taken = Clipper.union(
    outlines.map((loop) => pathOf(turned(loop))),
    FillRule.NonZero,
  );
  const left = Clipper.difference(loops.map(pathOf), taken, FillRule.EvenOdd);
  return left.map(loopOf).filter((loop) => Math.abs(loopArea(loop)) > SCRAP);
}
