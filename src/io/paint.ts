import type { Belongs } from '../solids/model.ts';

/** Colours of a model's surfaces, sRGB, 0 to 1. */
const PAINTS = {
  bone: [0.91, 0.85, 0.73],
  hole: [0.75, 0.36, 0.28],
  implant: [0.62, 0.65, 0.68],
  foot: [0.8, 0.8, 0.78],
  tooth: [0.96, 0.95, 0.91],
} as const;

/** The colour of what a surface belongs to; every tooth has the same. */
export const paintOf = (name: Belongs): readonly [number, number, number] =>
  name.startsWith('tooth-') ? PAINTS.tooth : PAINTS[name as keyof typeof PAINTS];

/** As a web colour, `#RRGGBB`. */
export const hexOf = (paint: readonly number[]): string =>
  `#${paint
    .map((v) =>
      Math.round(255 * v)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`.toUpperCase();
