import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatNumber, formatQuantity, formatTag, type Unit } from '../../src/words/format.ts';

const UNITS: readonly Unit[] = ['mm', 'deg', 'percent', 'mm2', 'mm3', 'Ncm', 'count', 'ratio'];
/** Reads a shown number back, by Unicode's own minus. */
const readBack = (shown: string): number => Number(shown.replace('\u2212', '-').replace('+', ''));

describe('the number formatter', () => {
  // Source of the expected texts: the project's rule for figures (one decimal in mm, U+2212, never across a limit).
  it.each([
    [{ value: 1.24, unit: 'mm' }, '1.2\u00A0mm'],
    [{ value: -0.14, unit: 'mm' }, '\u22120.1\u00A0mm'],
    [{ value: 12, unit: 'deg', signed: true }, '+12.0°'],
    [{ value: 25.4, unit: 'percent' }, '25\u00A0%'],
    [{ value: 61.25, unit: 'mm2' }, '61.3\u00A0mm²'],
    [{ value: 80, unit: 'mm3' }, '80.0\u00A0mm³'],
    [{ value: 35.2, unit: 'Ncm' }, '35\u00A0N·cm'],
    [{ value: 3, unit: 'count' }, '3'],
    [{ value: 0.715, unit: 'ratio' }, '0.71'],
    [{ value: Number.NaN, unit: 'mm' }, '–'],
    [{ value: Number.POSITIVE_INFINITY, unit: 'mm' }, '∞\u00A0mm'],
    [{ value: Number.NEGATIVE_INFINITY, unit: 'ratio' }, '\u2212∞'],
  ] as const)('writes %o as %s', (quantity, text) => {
    expect(formatQuantity(quantity)).toBe(text);
  });

  it.each([
    [0.984, [1], '0.98'],
    [0.96, [1], '0.96'],
    [0.94, [1], '0.9'],
    [0.9996, [1], '0.9996'],
    [0.99999, [1], '0.9999'],
    [1.00001, [1], '1.0001'],
    [1, [1], '1.0'],
    [1 + 1e-12, [1], '1.0'],
    [0.75, [0.75], '0.75'],
    [0.77, [0.75], '0.8'],
    [-0.04, [0], '\u22120.04'],
    [1.97, [1, 2], '1.97'],
    [-1.04, [-1], '\u22121.04'],
  ])('keeps %d on its side of %j: %s', (value, limits, text) => {
    expect(formatNumber({ value, unit: 'mm', limits })).toBe(text);
  });

  it('gives zero no sign', () => {
    for (const value of [0, -0, -0.04, 0.04]) {
      expect(formatNumber({ value, unit: 'mm', signed: true })).toBe('0.0');
    }
  });

  it('shows all decimals of a value under edit, four at most', () => {
    expect(formatNumber({ value: -0.23, unit: 'mm', exact: true })).toBe('\u22120.23');
    expect(formatNumber({ value: 0.1 + 0.2, unit: 'mm', exact: true })).toBe('0.3');
    expect(formatNumber({ value: Math.PI, unit: 'mm', exact: true })).toBe('3.1416');
  });

  it('drops all units on a tag but the degree sign', () => {
    expect(formatTag({ value: 0.8, unit: 'mm' })).toBe('0.8');
    expect(formatTag({ value: 12, unit: 'deg' })).toBe('12.0°');
  });

  it('never carries a number across its limit, whatever both are', () => {
    const thousandths = fc.integer({ min: -40_000, max: 40_000 }).map((n) => n / 1000);
    const near = fc.tuple(thousandths, fc.double({ min: -0.2, max: 0.2, noNaN: true }));
    fc.assert(
      fc.property(near, fc.constantFrom(...UNITS), ([limit, off], unit) => {
        const value = limit + off;
        const shown = readBack(formatNumber({ value, unit, limits: [limit] }));
        if (Math.abs(value - limit) <= 1e-9) expect(shown).toBeCloseTo(limit, 8);
        else expect(Math.sign(shown - limit)).toBe(Math.sign(value - limit));
      }),
      { numRuns: 2000 },
    );
  });

  it('is never further off than half of its last decimal, and mirrors with the sign', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.constantFrom(...UNITS),
        (value, unit) => {
          const shown = formatNumber({ value, unit });
          const decimals = shown.split('.')[1]?.length ?? 0;
          expect(Math.abs(readBack(shown) - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-9);
          expect(readBack(formatNumber({ value: -value, unit }))).toBe(
            readBack(shown) === 0 ? 0 : -readBack(shown),
          );
        },
      ),
    );
  });
});
