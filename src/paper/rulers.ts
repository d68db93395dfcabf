import { countedPoint } from '../core/drilling/depthMark.ts';
import { type Drill, pointLength } from '../core/drilling/kit.ts';
import { formatNumber } from '../words/format.ts';
import { markText } from '../words/presentKit.ts';
import { say } from '../words/saySheet.ts';
import { sayTool } from '../words/sayTool.ts';
import { tag } from './marks.ts';
import { area, type Drawing, ink, LINE, line, type Shape, text } from './shapes.ts';

const figure = (value: number): string => formatNumber({ value, unit: 'count' });

/** Length of the bar by which a print is checked, mm. */
export const CHECK_BAR = 50;

/** The bar to lay a ruler on: 50 mm, millimetres as ticks. */
export function checkBar(): Drawing {
  const tick = (mm: number): string => {
    const reach = mm % 10 === 0 ? 2.4 : mm % 5 === 0 ? 1.5 : 0.9;
    return line([
      { x: mm, y: -reach },
      { x: mm, y: mm % 10 === 0 ? 1.2 : 0 },
    ]);
  };
  const ticks = Array.from({ length: CHECK_BAR + 1 }, (_, mm) => mm);
  const bar = line([
    { x: 0, y: 0 },
    { x: CHECK_BAR, y: 0 },
  ]);
  return {
    left: -3,
    top: -3,
    width: CHECK_BAR + 6,
    height: 9,
    label: say('sheet.checkBarLabel', { length: figure(CHECK_BAR) }),
    shapes: [
      ink(bar, 0.4, 'check-bar'),
      ink(ticks.map(tick).join(''), 0.2),
      ...ticks.filter((mm) => mm % 10 === 0).map((mm) => text(mm, 5, figure(mm), 3, { anchor: 'middle' })),
    ],
  };
}

/** A mark to stop at on the drill that is drawn: what it shows, and its words. */
export interface StopMark {
  readonly value: number;
  readonly words: string;
}

/** From where the marks count, mm along the drill, + toward the shank, to the end of the shank that is drawn. */
const SHANK = { fluted: 22, end: 46 } as const;

/** Figures under the marks, in two rows by turns. */
function markFigures(marks: readonly number[], r: number): Shape[] {
  return marks.flatMap((mark, i) => {
    const low = i % 2 === 0 ? 4.6 : 8.4;
    return [
      ink(
        line([
          { x: -mark, y: r },
          { x: -mark, y: r + low - 2.9 },
        ]),
        LINE.fine,
      ),
      text(-mark, r + low, markText(mark), 3.4, { anchor: 'middle', strong: true }),
    ];
  });
}

/**
 * One drill at 1 : 1, lying, its point to the right: a ruler to hold the real one against. Zero is where its marks count from. The mark to stop at is a strong line over it
 * with its number on a tag, a first stop a thin one.
 */
export function drillRuler(drill: Drill, stop: StopMark, first: StopMark | null): Drawing {
  const r = drill.diameter / 2;
  const shift = countedPoint(drill);
  const point = pointLength(drill);
  const bottom = shift;
  const body = line(
    [
      { x: -SHANK.end, y: -r },
      { x: -bottom, y: -r },
      { x: point - bottom, y: 0 },
      { x: -bottom, y: r },
      { x: -SHANK.end, y: r },
    ],
    true,
  );
  const ring = (mark: number) =>
    line([
      { x: -mark, y: -r },
      { x: -mark, y: r },
    ]);
  const leader = (mark: number, top: number) =>
    line([
      { x: -mark, y: r },
      { x: -mark, y: top },
    ]);
  const shank = line(
    [
      { x: -SHANK.end, y: -1.18 },
      { x: -SHANK.fluted, y: -1.18 },
      { x: -SHANK.fluted, y: 1.18 },
      { x: -SHANK.end, y: 1.18 },
    ],
    true,
  );
  const deepest = drill.marks.filter((mark) => mark < SHANK.fluted);
  const number = formatNumber({ value: stop.value, unit: 'mm' });
  const high = -r - 7;
  return {
    left: -SHANK.end - 1,
    top: high - 4.5,
    width: SHANK.end + point + 40,
    height: r + 10 - high + 4.5,
    label: say('sheet.rulerLabel', { tool: sayTool(drill), stop: number }),
    shapes: [
      area(body, 'white', LINE.bold, 'drill'),
      area(shank, 'drill', LINE.thin),
      ink(deepest.map(ring).join(''), 0.5),
      ...markFigures(deepest, r),
      ...(first
        ? [ink(leader(first.value, -r - 3), LINE.thin), text(-first.value + 1, -r - 2.6, first.words, 3.2)]
        : []),
      ink(leader(stop.value, high), 0.7, 'stop'),
      ...tag({ number, words: stop.words }, { x: -stop.value, y: high }, 'left', 4.4),
      text(
        point - bottom + 2,
        1.1,
        say('sheet.pointBeyond', { point: formatNumber({ value: point, unit: 'mm' }) }),
        3,
      ),
    ],
  };
}
