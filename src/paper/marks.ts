import type { Point } from '../marks/path.ts';
import type { Mark } from '../marks/StatusGlyph.tsx';
import { area, circle, ink, LINE, line, type Shape, text } from './shapes.ts';

const OCTAGON = Array.from({ length: 8 }, (_, i) => {
  const turn = ((i + 0.5) * Math.PI) / 4;
  return { x: 8 * Math.cos(turn), y: 8 * Math.sin(turn) };
});
const STRIPES = [
  [-7.4, -0.6, -0.6, -7.4],
  [-6.6, 4.2, 4.2, -6.6],
  [-3.2, 6.4, 6.4, -3.2],
  [1.2, 7.4, 7.4, 1.2],
];

/** The state as a shape, `size` mm wide about a point: as the page draws it. */
export function glyph(mark: Mark, c: Point, size: number): Shape[] {
  const k = size / 16;
  const p = (x: number, y: number): Point => ({ x: c.x + k * x, y: c.y + k * y });
  const stroke = 1.3 * k;
  switch (mark) {
    case 'within':
      return [
        area(circle(c, 7.4 * k), 'within', stroke),
        {
          kind: 'path',
          d: line([p(-3.6, 0.2), p(-1, 2.9), p(3.7, -2.7)]),
          stroke: 'white',
          width: 2.1 * k,
        },
      ];
    case 'near':
      return [
        area(line([p(0, -7.6), p(8.1, 6.4), p(-8.1, 6.4)], true), 'near', stroke),
        ink(line([p(0, -2.6), p(0, 1.8)]), 1.7 * k),
        area(circle(p(0, 4.2), k), 'ink'),
      ];
    case 'beyond': {
      const rim = line(
        OCTAGON.map(({ x, y }) => p(x, y)),
        true,
      );
      const stripes = STRIPES.map(([a, b, x, y]) => line([p(a, b), p(x, y)])).join('');
      return [
        area(rim, 'beyond'),
        { kind: 'path', d: stripes, stroke: 'white', width: 1.4 * k },
        ink(rim, stroke),
      ];
    }
    case 'none':
      return Array.from({ length: 8 }, (_, i) => {
        const turn = (i * Math.PI) / 4;
        const on = (by: number) => p(7.2 * Math.cos(turn + by), 7.2 * Math.sin(turn + by));
        return ink(line([on(0), on(0.2), on(0.4)]), stroke);
      });
  }
}

/** Rough advance of a condensed figure or letter, as a share of the type size. */
const ADVANCE = 0.5;
const roomFor = (words: string, size: number): number => words.length * size * ADVANCE;

export interface PaperTag {
  readonly number: string;
  readonly mark?: Mark;
  readonly words?: string;
  readonly reading?: string;
}

/** Width of a tag, mm. */
export function tagRoom({ number, mark, words = '' }: PaperTag, size: number): number {
  const small = words === '' ? 0 : 0.35 * size + roomFor(words, 0.8 * size);
  return 0.7 * size + (mark ? 1.25 * size : 0) + roomFor(number, size) + small;
}

/** A number on a paper tag whose near side's middle stands at a point: glyph, digits, small words; the two corners at the leader are cut. */
export function tag(of: PaperTag, end: Point, side: 'left' | 'right', size: number): Shape[] {
  const { number, mark, words = '', reading } = of;
  const width = tagRoom(of, size);
  const half = 0.75 * size;
  const cut = 0.3 * size;
  const way = side === 'right' ? 1 : -1;
  const p = (x: number, y: number): Point => ({ x: end.x + way * x, y: end.y + y });
  const outline = line(
    [p(cut, -half), p(width, -half), p(width, half), p(cut, half), p(0, half - cut), p(0, cut - half)],
    true,
  );
  const left = side === 'right' ? end.x : end.x - width;
  const start = left + 0.35 * size + (mark ? 1.25 * size : 0);
  const after = start + roomFor(number, size) + 0.35 * size;
  return [
    area(outline, 'white', LINE.thin),
    ...(mark ? glyph(mark, { x: left + 0.85 * size, y: end.y }, 0.95 * size) : []),
    text(start, end.y + 0.35 * size, number, size, { strong: true, reading }),
    ...(words === '' ? [] : [text(after, end.y + 0.35 * size, words, 0.8 * size, { tone: 'soft' })]),
  ];
}

/** Shorter than this, mm, the arrows stand outside and point inward (ISO 129-1). */
const SHORT = 5;
const ARROW = { length: 2, half: 0.38 } as const;
const TICK = 1.1;

const along = (p: Point, u: Point, k: number): Point => ({ x: p.x + k * u.x, y: p.y + k * u.y });

function arrowhead(tip: Point, u: Point): string {
  const back = along(tip, u, ARROW.length);
  const across = { x: -u.y * ARROW.half, y: u.x * ARROW.half };
  return line([tip, along(back, across, 1), along(back, across, -1)], true);
}

/** A dimension line between two points (ISO 129-1): ticks, closed arrowheads, then a leader from corner to corner. */
export function dimension(from: Point, to: Point, leader: readonly Point[] = []): Shape[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const u = length > 1e-6 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x: 1, y: 0 };
  const away = { x: -u.x, y: -u.y };
  const short = length < SHORT;
  const start = short ? along(from, u, -ARROW.length - 0.8) : from;
  const end = short ? along(to, u, ARROW.length + 0.6) : to;
  const across = { x: -u.y, y: u.x };
  const tick = (p: Point) => line([along(p, across, -TICK), along(p, across, TICK)]);
  const d = line([start, end, ...leader]) + tick(from) + tick(to);
  return [
    { kind: 'path', d, stroke: 'white', width: 0.9 },
    ink(d, LINE.thin),
    area(arrowhead(from, short ? away : u) + arrowhead(to, short ? u : away), 'ink'),
  ];
}
