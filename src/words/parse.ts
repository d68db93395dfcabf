import { type Unit, unitSymbol } from './format.ts';

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;

/**
 * The number a person typed, or null when it is none. Takes a comma or a point, a hyphen or a true minus,
 * and the field's own unit after it. No exponents, no thousands marks, no blanks inside the number.
 */
export function parseNumber(text: string, unit: Unit): number | null {
  const symbol = unitSymbol(unit);
  let plain = text.trim().replace('\u2212', '-');
  if (symbol !== '' && plain.endsWith(symbol)) plain = plain.slice(0, -symbol.length).trimEnd();
  if (!NUMBER.test(plain)) return null;
  const value = Number(plain.replace(',', '.'));
  return value === 0 ? 0 : value;
}
