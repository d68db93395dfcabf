export type Fixing = 'screw-bone' | 'screw-gum' | 'cemented';

/** How a number is known: read in the work, read in a text citing it, from memory, arithmetic, or ours. */
export type Known = 'read' | 'second-hand' | 'memory' | 'derived' | 'ours' | 'common-practice';
export type Strength =
  | 'convention'
  | 'expert'
  | 'moderate'
  | 'good'
  | 'consensus'
  | 'clinical'
  | 'cross-sectional'
  | 'review'
  | 'ours';

/**
 * Bands of one reading. Below `low.near` it is near, below `low.beyond` beyond; above `high.near` near, above `high.beyond` beyond.
 * The bounds themselves belong to the better band (rule M14).
 */
export interface Bands {
  readonly low?: { readonly near: number; readonly beyond: number };
  readonly high?: { readonly near: number; readonly beyond: number };
}

export interface Limit {
  /** Key of the limit in the catalogue and in a plan's own limits. */
  readonly key: string;
  readonly bands: Bands;
  /** Catalogue code of the source behind the numbers. */
  readonly source: string;
  readonly known: Known;
  readonly strength: Strength;
}

export type Judgement = 'within' | 'near' | 'beyond';
const TOLERANCE = 1e-9;

/** Judge a value by its bands (rule M14). */
export function judge(value: number, bands: Bands): Judgement {
  const { low, high } = bands;
  if (low && value < low.beyond - TOLERANCE) return 'beyond';
  if (high && value > high.beyond + TOLERANCE) return 'beyond';
  if (low && value < low.near - TOLERANCE) return 'near';
  if (high && value > high.near + TOLERANCE) return 'near';
  return 'within';
}

/** Distance to the nearest bound that would make it better; 0 when within. In the reading's unit, positive. */
export function shortfall(value: number, bands: Bands): number {
  const { low, high } = bands;
  return Math.max(0, low ? low.near - value : 0, high ? value - high.near : 0);
}
