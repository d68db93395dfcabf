import type { SectionOutline } from '../core/anatomy/section.ts';
import type { Loop } from '../core/geometry/slice.ts';
import { dashed } from '../marks/dash.ts';
import type { Point } from '../marks/path.ts';
import { dotted, hatched, type Loops } from './hatch.ts';
import { area, DASHES, ink, LINE, line, type Shape } from './shapes.ts';

/** Below this scale hatch and dots would be a grey, so they are left out. */
const HATCHED_FROM = 2;

const pathOf = (loops: Loops): string => loops.map((loop) => line(loop, true)).join('');

/**
 * What a plane through the axis cuts, at a scale (mm of paper a mm of the model): gum, bone with hatched cortex and dotted spongy bone, canal, roots, planned crown. The plane's
 * origin is the drawing's, its `y` runs up the paper. Below `foot` (mm of the model, apical of the origin) it is cut off.
 */
export function tissues(outline: SectionOutline, scale: number, foot: number): Shape[] {
  const placed = (loops: readonly Loop[]): Loops =>
    loops
      .map((loop) => cutOff(loop, foot).map(([x, y]): Point => ({ x: x * scale, y: -y * scale })))
      .filter((loop) => loop.length > 2);
  const fine = scale >= HATCHED_FROM;
  const [gum, bone, marrow] = [outline.gum, outline.bone, outline.marrow].map(placed);
  const broken = (loops: readonly Loop[], pattern: readonly number[]) =>
    placed(loops)
      .map((loop) => dashed(loop, pattern, true))
      .join('');
  const crown = broken(outline.crown, fine ? DASHES.beforeTheCut : DASHES.hidden);
  const teeth = outline.teeth
    .map(({ root, crown: own }) => broken([...root, ...own], DASHES.hidden))
    .join('');
  return [
    area(pathOf(gum), 'gum', fine ? LINE.thin : LINE.fine),
    area(pathOf(bone), 'bone'),
    ...(fine ? [ink(hatched(bone, 1), LINE.fine)] : []),
    area(pathOf(marrow), 'spongy', LINE.fine),
    ...(fine ? [area(dotted(marrow, 1.1, 0.16), 'soft')] : []),
    ink(pathOf(bone), fine ? LINE.outline : LINE.thin, 'bone'),
    area(pathOf(placed(outline.canal)), 'white', LINE.thin),
    ink(teeth, LINE.fine),
    ink(crown, fine ? LINE.thin : LINE.fine, 'planned-crown'),
  ].filter((shape) => shape.d !== '');
}

/** The part of a loop that lies coronal of a level, mm. */
function cutOff(loop: Loop, foot: number): (readonly [number, number])[] {
  return loop.flatMap((p, i) => {
    const next = loop[(i + 1) % loop.length];
    const own = p[1] >= -foot ? [p] : [];
    if (p[1] >= -foot === next[1] >= -foot) return own;
    const w = (-foot - p[1]) / (next[1] - p[1]);
    return [...own, [p[0] + w * (next[0] - p[0]), -foot] as const];
  });
}
