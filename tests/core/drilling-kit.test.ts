import { describe, expect, it } from 'vitest';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { pointLength } from '../../src/core/drilling/kit.ts';
import { IMPLANT_LIBRARY } from '../../src/core/implant/library.ts';
import type { Fault } from '../../src/core/plan/fault.ts';
import { kitFile, readKit } from '../../src/core/plan/readKit.ts';
import { parseKitFile, printKitFile } from '../../src/io/kitFile.ts';
import { presentFault } from '../../src/words/presentFault.ts';

/** The generic kit as a file, with one value replaced at a path. */
function spoiled(path: string, value: unknown): unknown {
  const file = JSON.parse(JSON.stringify(kitFile(GENERIC_KIT))) as Record<string, unknown>;
  const keys = path.split('.');
  const last = keys.pop() as string;
  const at = keys.reduce<Record<string, unknown>>((o, k) => o[k] as Record<string, unknown>, file);
  if (value === undefined) delete at[last];
  else at[last] = value;
  return file;
}

const faultsOf = (value: unknown): readonly Fault[] => {
  const result = readKit(value);
  return result.ok ? [] : result.faults;
};

describe('a user’s own kit', () => {
  it('takes the generic kit through a file and back', () => {
    expect(parseKitFile(printKitFile(GENERIC_KIT))).toEqual({ ok: true, kit: GENERIC_KIT });
    expect(parseKitFile(`\uFEFF${printKitFile(GENERIC_KIT)}`).ok).toBe(true);
    expect(parseKitFile('{')).toMatchObject({ ok: false, faults: [{ code: 'not-json' }] });
    expect(parseKitFile(' '.repeat(300_000))).toMatchObject({ ok: false, faults: [{ code: 'too-large' }] });
  });

  const drill = GENERIC_KIT.drills[0];
  it.each([
    ['drills.2.diameter', 0.5, { code: 'out-of-range', value: 0.5, low: 1, high: 7 }],
    ['drills.2.diameter', '2.8', { code: 'wrong-type', value: '"2.8"', low: 1, high: 7 }],
    ['drills.2.diameter', undefined, { code: 'missing', value: null, low: 1, high: 7 }],
    ['drills.2.point', 200, { code: 'out-of-range', value: 200, low: 60, high: 180 }],
    ['drills.2.length', Number.NaN, { code: 'out-of-range', value: 'NaN', low: 15, high: 60 }],
    ['drills.0.speed.high', 5000, { code: 'out-of-range', value: 5000, low: 10, high: 3000 }],
    ['drills.0.marks.3', 31, { code: 'out-of-range', value: 31, low: 1, high: 30 }],
    ['drills.0.marks', [], { code: 'wrong-count', value: 0, low: 1, high: 20 }],
    ['drills', [], { code: 'wrong-count', value: 0, low: 1, high: 16 }],
    ['necks.1.height', 0, { code: 'out-of-range', value: 0, low: 0.5, high: 6 }],
    ['handpiece.headDiameter', 3, { code: 'out-of-range', value: 3, low: 4, high: 20 }],
    ['title', 'x'.repeat(81), { code: 'too-long', value: 81, low: null, high: 80 }],
    ['drills.0.marksCountPoint', 1, { code: 'wrong-type', value: 1, low: null, high: null }],
  ] as const)('refuses %s = %s', (path, value, expected) => {
    const [first] = faultsOf(spoiled(path, value));
    expect(first).toMatchObject({ field: path, ...expected });
    expect(presentFault(first)).toContain(path);
  });

  it('refuses a field it does not know, at its place', () => {
    expect(faultsOf(spoiled('drills.1.colour', 'red'))).toMatchObject([
      { code: 'unknown-field', field: 'drills.1.colour' },
    ]);
  });

  it.each([
    ['drills.1.diameter', 2, { low: 2.1, high: null, allowed: 'drills.0.diameter' }],
    ['drills.1.diameter', 1.5, { low: 2.1, high: null, allowed: 'drills.0.diameter' }],
    ['drills.0.marks.2', 6, { low: 6.1, high: null, allowed: 'drills.0.marks.1' }],
    ['drills.0.marks.7', 30, { low: null, high: drill.length, allowed: 'drills.0.length' }],
    ['drills.0.speed.high', 900, { low: 1000, high: null, allowed: 'drills.0.speed.low' }],
    ['necks.0.shoulderDiameter', 2.5, { low: 3, high: null, allowed: 'necks.0.neckDiameter' }],
  ] as const)('refuses %s = %s, which another number forbids', (field, value, expected) => {
    expect(faultsOf(spoiled(field, value))).toMatchObject([
      { code: 'contradiction', field, value, ...expected },
    ]);
  });

  it.each([
    [[], { code: 'wrong-type', field: '', allowed: 'object' }],
    [null, { code: 'wrong-type', field: '', allowed: 'object' }],
    [spoiled('format', undefined), { code: 'missing', field: 'format', allowed: 'ridgewright-kit' }],
    [
      spoiled('format', 'ridgewright-plan'),
      { code: 'not-allowed', field: 'format', value: '"ridgewright-plan"', allowed: 'ridgewright-kit' },
    ],
    [spoiled('version', 2), { code: 'unknown-version', field: 'version', value: 2, low: 1, high: 1 }],
  ])('refuses what is no kit file', (value, expected) => {
    expect(faultsOf(value)).toMatchObject([expected]);
  });
});

describe('the generic kit', () => {
  // Model 5: a drill of each diameter in rising order, marks every 2 mm from 4 to 18. Speeds 800–1200 rpm: common practice, no source.
  it('keeps to what the trade is used to', () => {
    const { drills } = GENERIC_KIT;
    for (const { marks, marksCountPoint, speed, point } of drills) {
      expect(marks).toEqual([4, 6, 8, 10, 12, 14, 16, 18]);
      expect(marksCountPoint).toBe(false);
      expect(point).toBe(120);
      expect(speed.low).toBeGreaterThanOrEqual(800);
      expect(speed.high).toBeLessThanOrEqual(1200);
    }
    const falling = drills.map((d) => d.speed.high);
    expect(falling).toEqual([...falling].sort((a, b) => b - a));
    expect(falling.at(-1)).toBeLessThan(falling[0]);
  });

  it('has a neck cutter for every flared neck of the library', () => {
    const flared = IMPLANT_LIBRARY.filter((s) => s.platformDiameter > s.implantedDiameter);
    expect(flared.length).toBeGreaterThan(3);
    for (const shape of flared) {
      expect(GENERIC_KIT.necks).toContainEqual(
        expect.objectContaining({
          neckDiameter: shape.implantedDiameter,
          shoulderDiameter: shape.platformDiameter,
          height: shape.transmucosalLength,
        }),
      );
    }
  });

  // Reference values 6.3: y = (D/2)/tan(point/2), arithmetic.
  it.each([
    [2, 90, 1],
    [2, 118, 0.601],
    [2, 120, 0.577],
    [2, 135, 0.414],
    [2.4, 90, 1.2],
    [2.4, 118, 0.721],
    [2.4, 120, 0.6928],
    [2.4, 135, 0.497],
    [3.2, 90, 1.6],
    [3.2, 118, 0.961],
    [3.2, 120, 0.924],
    [3.2, 135, 0.663],
  ])('a drill of %s mm with a point of %s° reaches %s mm beyond its full diameter', (diameter, point, y) => {
    expect(pointLength({ diameter, point })).toBeCloseTo(y, 3);
  });
});
