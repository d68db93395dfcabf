import type { Pixels, Rgb } from './pixels.ts';

export type Matrix = readonly [Rgb, Rgb, Rgb];

/**
 * How colours look without one kind of cone, on linear RGB. Source: Machado, Oliveira and Fernandes, A
 * physiologically-based model for simulation of color vision deficiency, IEEE TVCG 15 (2009), table of severity 1.0.
 * Written from memory, then found alike in several published copies.
 */
export const DEFICIENCIES = {
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
} as const satisfies Readonly<Record<string, Matrix>>;

/** Nothing is changed. */
export const IDENTITY: Matrix = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** Luminance weights of sRGB's primaries: IEC 61966-2-1, the middle row of `TO_XYZ`. */
const Y: Rgb = [0.2126, 0.7152, 0.0722];
/** Everything is seen by its luminance. */
export const GREY: Matrix = [Y, Y, Y];
const TO_XYZ: Matrix = [[0.4124, 0.3576, 0.1805], Y, [0.0193, 0.1192, 0.9505]];
/** White of D65: what sRGB's own white comes to. */
const WHITE: Rgb = [0.9505, 1, 1.089];

const times = (m: Matrix, [r, g, b]: Rgb): [number, number, number] => {
  const row = (i: 0 | 1 | 2) => m[i][0] * r + m[i][1] * g + m[i][2] * b;
  return [row(0), row(1), row(2)];
};

/** IEC 61966-2-1: a byte of a screen's colour as linear light, 0 to 1. */
const linear = (byte: number): number => {
  const v = byte / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
};

/** How a colour (bytes) is seen through the matrix: linear light, 0 to 1. */
export function seen(matrix: Matrix, [r, g, b]: Rgb): Rgb {
  const [x, y, z] = times(matrix, [linear(r), linear(g), linear(b)]);
  const held = (v: number) => Math.min(1, Math.max(0, v));
  return [held(x), held(y), held(z)];
}

/** CIE 1976 L*, a*, b* of linear light, white D65. */
export function lab(light: Rgb): Rgb {
  const f = (t: number) => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
  const [x, y, z] = times(TO_XYZ, light).map((v, i) => f(v / WHITE[i]));
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** CIE 1976 difference of two colours in L*, a*, b*. */
export const difference = (a: Rgb, b: Rgb): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Every pixel of a picture as it is seen through the matrix, in L*, a*, b*. */
export function labPixels({ bytes }: Pixels, matrix: Matrix): Rgb[] {
  const out: Rgb[] = [];
  for (let i = 0; i < bytes.length; i += 4) {
    out.push(lab(seen(matrix, [bytes[i], bytes[i + 1], bytes[i + 2]])));
  }
  return out;
}
