import type { Language } from './language.ts';
import { sayerOf } from './sayer.ts';
import { unitWords } from './units.en.ts';

/** Lengths mm, angles deg, shares percent (0 to 100), areas mm2, volumes mm3, torque Ncm, speeds rpm, times s, pieces, plain ratios. */
export type Unit = 'mm' | 'deg' | 'percent' | 'mm2' | 'mm3' | 'Ncm' | 'rpm' | 's' | 'count' | 'ratio';

export interface Quantity {
  value: number;
  unit: Unit;
  /** Limits the value is judged by, in the same unit: the shown number stays on the value's side of each. */
  limits?: readonly number[];
  /** Write a plus sign before a positive number. */
  signed?: boolean;
  /** Show every decimal the value has (at most four), for a field that is being edited. */
  exact?: boolean;
}

const say = sayerOf(unitWords);

const MINUS = '\u2212';
const NO_ANSWER = '\u2013';
const MOST_DECIMALS = 4;
/** Two numbers closer than this (in the unit) are the same number; arithmetic noise is far below it. */
const SAME = 1e-9;

/** What stands before the decimals. */
const DECIMAL_MARK: Readonly<Record<Language, string>> = { en: '.', de: ',', es: ',' };

const DECIMALS: Readonly<Record<Unit, number>> = {
  mm: 1,
  deg: 1,
  percent: 0,
  mm2: 1,
  mm3: 1,
  Ncm: 0,
  rpm: 0,
  s: 0,
  count: 0,
  ratio: 2,
};

/** -1, 0 or +1: on which side of the limit the value lies. */
const side = (value: number, limit: number): number =>
  Math.abs(value - limit) <= SAME ? 0 : Math.sign(value - limit);

/** One unit of the last decimal, taken off or put on so that the shown number keeps to the value's side. */
function nudged(value: number, limits: readonly number[]): string {
  const unit = 10 ** MOST_DECIMALS;
  const shown = value.toFixed(MOST_DECIMALS);
  const crossed = limits.find((limit) => side(Number(shown), limit) !== side(value, limit));
  if (crossed === undefined || side(value, crossed) === 0) return shown;
  const stepped =
    value < crossed ? Math.ceil(crossed * unit - SAME) - 1 : Math.floor(crossed * unit + SAME) + 1;
  return (stepped / unit).toFixed(MOST_DECIMALS);
}

function digits({ value, unit, limits = [], exact = false }: Quantity): string {
  for (let decimals = DECIMALS[unit]; decimals <= MOST_DECIMALS; decimals++) {
    const shown = value.toFixed(decimals);
    const rounded = Number(shown);
    const keepsSide = limits.every((limit) => side(rounded, limit) === side(value, limit));
    if (keepsSide && (!exact || Math.abs(rounded - value) <= SAME)) return shown;
  }
  return nudged(value, limits);
}

/**
 * The number alone, without its unit. One decimal for mm, degrees, mm² and mm³, none for percent, N·cm and
 * counts, two for ratios; more (up to four) where rounding would carry the number onto or across a limit,
 * so 0.984 against 1.0 is 0.98. A value within 1e-9 of a limit is on it. Minus is U+2212; a number that
 * rounds to zero carries no sign. NaN, for no answer, is an en dash; an infinite value is ∞. The decimal mark is
 * the language's.
 */
export function formatNumber(quantity: Quantity, language: Language = 'en'): string {
  const { value, signed = false } = quantity;
  if (Number.isNaN(value)) return NO_ANSWER;
  const text = Number.isFinite(value) ? digits(quantity).replace(/^-/, '') : '∞';
  const written = text.replace('.', DECIMAL_MARK[language]);
  if (Number(text) === 0) return written;
  if (value < 0) return MINUS + written;
  return signed ? `+${written}` : written;
}

/** The symbol of a unit, empty for counts and ratios. */
export function unitSymbol(unit: Unit): string {
  return say(`unit.${unit}`);
}

/** The number with its unit: `−0.1 mm`, `+12.0°`, `25 %`, `4`. No answer carries no unit. */
export function formatQuantity(quantity: Quantity, language: Language = 'en'): string {
  const number = formatNumber(quantity, language);
  const symbol = unitSymbol(quantity.unit);
  if (number === NO_ANSWER || symbol === '') return number;
  return quantity.unit === 'deg' ? number + symbol : `${number}\u00A0${symbol}`;
}

/** The number as a tag in a drawing shows it: the title block says mm, only degrees carry their sign. */
export function formatTag(quantity: Quantity): string {
  return quantity.unit === 'deg' ? formatQuantity(quantity) : formatNumber(quantity);
}
