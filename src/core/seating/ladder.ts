import { type ImplantShape, leadOf } from '../implant/shape.ts';

/**
 * Height between two rungs of the depth ladder, mm: an `n`-fold neck faces rightly once every `360/n` degrees, and a turn goes one lead
 * deep (model 6: `lead / n`). Null for a round neck, which may stop anywhere.
 */
export const rungOf = (shape: ImplantShape): number | null =>
  shape.index === 0 ? null : leadOf(shape) / shape.index;

/**
 * Rungs from the highest to the lowest between two shoulder levels, mm, + coronal: `S_k = S_0 − k · rung`. `first` is the level of the first stop;
 * it is unknown until the thread has bitten, so before that the ladder may stand anywhere and a level can be met to ± half a rung.
 */
export function ladder(first: number, rung: number, high: number, low: number): number[] {
  const from = Math.ceil((first - high) / rung - 1e-9);
  const to = Math.floor((first - low) / rung + 1e-9);
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => first - (from + i) * rung);
}
