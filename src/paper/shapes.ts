import type { Point } from '../marks/path.ts';

/** Fills and inks of a drawing on paper: ink on white, told apart in grey too. */
export const TONES = {
  ink: '#1e2430',
  soft: '#4f5665',
  white: '#ffffff',
  bone: '#f1eadb',
  spongy: '#f9f5ea',
  profile: '#e6ddcb',
  gum: '#e9e6e0',
  steel: '#555555',
  drill: '#c9ccd1',
  within: '#0072b2',
  near: '#f0e442',
  beyond: '#d55e00',
} as const;
export type Tone = keyof typeof TONES;

/** A line or an area. Lengths in mm of the paper, from the upper left. */
export interface PathShape {
  readonly kind: 'path';
  readonly d: string;
  readonly fill?: Tone;
  readonly stroke?: Tone;
  /** Width of the stroke, mm. */
  readonly width?: number;
  /** A name by which whoever reads the drawing finds this shape. */
  readonly part?: string;
}

export interface TextShape {
  readonly kind: 'text';
  readonly x: number;
  /** The baseline. */
  readonly y: number;
  readonly text: string;
  /** mm. */
  readonly size: number;
  readonly strong?: boolean;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly tone?: Tone;
  /** Written upward. */
  readonly upright?: boolean;
  /** On a casing of the paper. */
  readonly cased?: boolean;
  /** The reading whose digits these are. */
  readonly reading?: string;
}

export type Shape = PathShape | TextShape;

/** A drawing on paper: `width` × `height` mm, its coordinates mm of the paper from `left`, `top`. */
export interface Drawing {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** What it shows, in words. */
  readonly label: string;
  readonly shapes: readonly Shape[];
}

/** Widths of the lines, mm (ISO 128): an outline, a thin line, the finest. */
export const LINE = { outline: 0.45, bold: 0.35, thin: 0.25, fine: 0.15 } as const;
/** Line types of ISO 128 on paper: strokes and gaps by turns, mm. */
export const DASHES = {
  axis: [5, 0.9, 0.7, 0.9],
  beforeTheCut: [4, 0.8, 0.6, 0.8, 0.6, 0.8],
  hidden: [1.6, 0.9],
  within: [2, 1],
  dotted: [0.4, 0.9],
} as const;

/** Tenths of a micrometre are enough, and keep the text short. */
const round = (value: number): number => Math.round(value * 1e4) / 1e4;
export const at = ({ x, y }: Point): string => `${round(x)} ${round(y)}`;

/** A straight-sided path through points. */
export const line = (points: readonly Point[], closed = false): string =>
  points.length === 0 ? '' : `M${points.map(at).join('L')}${closed ? 'Z' : ''}`;

/** A circle as a path. */
export const circle = (c: Point, r: number): string =>
  `M${at({ x: c.x - r, y: c.y })}a${round(r)} ${round(r)} 0 1 0 ${round(2 * r)} 0a${round(r)} ${round(r)} 0 1 0 ${round(-2 * r)} 0Z`;

/** An inked line. */
export const ink = (d: string, width: number = LINE.thin, part?: string): PathShape => ({
  kind: 'path',
  d,
  stroke: 'ink',
  width,
  part,
});

/** A filled area, with an edge where a width is given. */
export const area = (d: string, fill: Tone, width = 0, part?: string): PathShape => ({
  kind: 'path',
  d,
  fill,
  ...(width > 0 ? { stroke: 'ink', width } : {}),
  part,
});

export const text = (
  x: number,
  y: number,
  words: string,
  size: number,
  rest: Partial<Omit<TextShape, 'kind' | 'x' | 'y' | 'text' | 'size'>> = {},
): TextShape => ({ kind: 'text', x, y, text: words, size, ...rest });

/** A shape moved by an offset: its path is wrapped by no transform, so that what is printed is where it says. */
export function moved(shape: Shape, by: Point): Shape {
  if (shape.kind === 'text') return { ...shape, x: shape.x + by.x, y: shape.y + by.y };
  return { ...shape, d: movedPath(shape.d, by) };
}

/** Absolute `M`, `L` commands are moved, relative ones and `Z` go with them. */
const movedPath = (d: string, by: Point): string =>
  d.replace(
    /([ML])(-?[\d.]+) (-?[\d.]+)/g,
    (_, command: string, x: string, y: string) =>
      `${command}${at({ x: Number(x) + by.x, y: Number(y) + by.y })}`,
  );
