import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatQuantity } from '../../src/words/format.ts';
import { parseNumber } from '../../src/words/parse.ts';

describe('reading a typed number', () => {
  // Source: what Number() makes of the same text with a decimal point and a hyphen.
  it.each([
    ['1.5', 1.5],
    ['1,5', 1.5],
    [' +0,2 ', 0.2],
    ['-3', -3],
    ['\u22123.25', -3.25],
    ['.5', 0.5],
    ['2.', 2],
    ['1.2 mm', 1.2],
  ])('takes %s', (text, value) => {
    expect(parseNumber(text, 'mm')).toBe(value);
  });

  it.each([
    '',
    ' ',
    'abc',
    '1e3',
    '1.2.3',
    '1,000.5',
    '--1',
    '1 2',
    'NaN',
    'Infinity',
    '0x10',
    '1°',
    'mm',
    '.',
  ])('refuses “%s”', (text) => {
    expect(parseNumber(text, 'mm')).toBeNull();
  });

  it('never answers with a negative zero', () => {
    expect(Object.is(parseNumber('-0.0', 'mm'), 0)).toBe(true);
  });

  it('reads back what the formatter wrote', () => {
    fc.assert(
      fc.property(fc.integer({ min: -400_000, max: 400_000 }), fc.constantFrom('mm', 'deg'), (n, unit) => {
        const value = n / 10_000;
        expect(parseNumber(formatQuantity({ value, unit, signed: true, exact: true }), unit)).toBeCloseTo(
          value,
          9,
        );
      }),
    );
  });
});
