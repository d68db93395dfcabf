import type { DepthChain } from '../core/drilling/depthChain.ts';
import { countedPoint } from '../core/drilling/depthMark.ts';
import type { StripId } from '../core/drilling/depthStrip.ts';
import type { Drill } from '../core/drilling/kit.ts';
import type { Judgement } from '../core/measure/limit.ts';
import type { Drilling } from '../core/plan/drilling.ts';
import { spread } from '../marks/spread.ts';
import { PX_PER_MM } from './scale.ts';

/** Measures of the depth strip, px: its drawing, where levels may lie, where the labels end, and the axes of its two columns. */
export const STRIP = {
  width: 236,
  height: 385,
  top: 30,
  foot: 369,
  labels: 110,
  bone: 117,
  planned: 146,
  hand: 208,
} as const;
/** What is drawn past the outermost levels, mm. */
const PAST = 0.45;
/** Least distance of two labels, px. */
export const LABEL_GAP = 14.5;

export interface StripScale {
  readonly pxPerMm: number;
  /** Share of the section's scale; 1: the same. */
  readonly share: number;
  /** Height on the strip of a level, mm below the bone entry. */
  readonly y: (level: number) => number;
}

/** The section's scale, or a smaller one where the strip would not fit. */
export function stripScale(levels: readonly number[]): StripScale {
  const from = Math.min(...levels) - PAST;
  const to = Math.max(...levels) + PAST;
  const pxPerMm = Math.min(PX_PER_MM, (STRIP.foot - STRIP.top) / (to - from));
  return { pxPerMm, share: pxPerMm / PX_PER_MM, y: (level) => STRIP.top + (level - from) * pxPerMm };
}

/** One label of the strip: a level, a check of a level, the mark to stop at, or the trade's rule of thumb. */
export interface StripRow {
  readonly key: StripId | 'stop' | 'seat' | 'tip-to-floor' | 'thumb' | 'thumb-spare';
  /** The level it belongs to, mm below the bone entry. */
  readonly level: number;
  /** The number it shows, mm. */
  readonly value: number;
  readonly status: Judgement | null;
  /** Drawn as a line across both columns; else a tick at the planned one. */
  readonly across: boolean;
}

const ACROSS: readonly StripId[] = ['present-gum', 'entry', 'floor', 'floor-margin'];

/** What the strip says, from the crown to the floor. */
export function stripRows({ strip, chain }: Drilling, drill: Drill): StripRow[] {
  const levels = strip.map(
    ({ id, level }): StripRow => ({
      key: id,
      level,
      value: level,
      status: null,
      across: ACROSS.includes(id),
    }),
  );
  const note = (key: StripRow['key'], level: number, value: number): StripRow => ({
    key,
    level,
    value,
    status: null,
    across: false,
  });
  const checks = chain.checks.map(({ id, value, status }): StripRow => {
    const level = id === 'seat' ? chain.fullDepth : chain.tip;
    return { key: id, level: level + 1e-3, value, status, across: false };
  });
  const { thumb } = chain;
  return [
    ...levels,
    note('stop', readLevel(drill, chain) + 1e-3, chain.mark.value),
    ...checks,
    ...(thumb ? [note('thumb', thumb.depth, thumb.depth)] : []),
    ...(thumb ? [note('thumb-spare', thumb.depth + 1e-3, thumb.spare)] : []),
  ];
}

/** Where the mark to stop at stands when the drill is at the planned depth, mm below the bone entry. */
export const readLevel = (drill: Drill, { fullDepth, mark }: DepthChain): number =>
  fullDepth + countedPoint(drill) - mark.value;

/** Heights of the labels, none nearer to another than {@link LABEL_GAP}. */
export const labelHeights = (rows: readonly StripRow[], { y }: StripScale): number[] =>
  spread(
    rows.map(({ level }) => y(level)),
    LABEL_GAP,
    STRIP.top + 6,
    STRIP.foot - 4,
  );
