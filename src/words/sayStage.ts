import type { Tilt } from '../core/geometry/pose.ts';
import { formatTag } from './format.ts';
import { say } from './say.ts';

/** A tilt on a tag: its size and the way the crown end leans; the mesiodistal or the faciopalatal one. */
export function sayTiltOf(tilt: Tilt, mesiodistal: boolean): { number: string; words: string } {
  const value = mesiodistal ? tilt.mesiodistal : tilt.faciopalatal;
  const number = formatTag({ value: Math.abs(value), unit: 'deg' });
  const way = mesiodistal
    ? say(value < 0 ? 'way.distally' : 'way.mesially')
    : say(value < 0 ? 'way.palatally' : 'way.facially');
  return { number, words: way };
}
