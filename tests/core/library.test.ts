import { describe, expect, it } from 'vitest';
import { DEFAULT_IMPLANT, IMPLANT_LIBRARY, libraryShape } from '../../src/core/implant/library.ts';

const isMultiple = (value: number, step: number): boolean =>
  Math.abs(value / step - Math.round(value / step)) < 1e-9;

describe('the implant library', () => {
  it('has at least twelve shapes under names of their own', () => {
    expect(IMPLANT_LIBRARY.length).toBeGreaterThanOrEqual(12);
    expect(new Set(IMPLANT_LIBRARY.map((s) => s.name)).size).toBe(IMPLANT_LIBRARY.length);
    for (const s of IMPLANT_LIBRARY) expect(libraryShape(s.name)).toBe(s);
    expect(libraryShape('nothing')).toBeUndefined();
  });

  it('starts with a slim tapered one with a flared neck', () => {
    expect(DEFAULT_IMPLANT).toEqual({
      name: 'tapered-flared-30x11',
      implantedLength: 11,
      transmucosalLength: 1.5,
      apicalDiameter: 2,
      implantedDiameter: 3,
      platformDiameter: 3.5,
      taperLength: 8,
      thread: { depth: 0.3, pitch: 0.8, starts: 1 },
      flutes: { count: 3, length: 3.5, depth: 0.4 },
      scallop: 0,
      index: 0,
      abutment: null,
      maxTorque: 35,
    });
  });

  it.each(IMPLANT_LIBRARY.map((s) => [s.name, s] as const))('%s is sound and in round steps', (name, s) => {
    // The name says implanted diameter in tenths × implanted length (this project's own convention).
    const [, tenths, length] = /-(\d\d)x(\d+)$/.exec(name) ?? [];
    expect(s.implantedDiameter).toBeCloseTo(Number(tenths) / 10, 9);
    expect(s.implantedLength).toBe(Number(length));
    // Round steps of our own: half millimetres; a shape remembered from a product would break them.
    for (const d of [s.apicalDiameter, s.implantedDiameter, s.platformDiameter, s.transmucosalLength])
      expect(isMultiple(d, 0.5)).toBe(true);
    expect(isMultiple(s.taperLength, 1)).toBe(true);
    // Rules S15, M13: no taper longer than the body, no shoulder wider than the crest is meant to hold, a scallop has one or two sides.
    expect(s.taperLength).toBeLessThanOrEqual(s.implantedLength);
    expect(s.apicalDiameter).toBeLessThanOrEqual(s.implantedDiameter);
    if (s.transmucosalLength === 0) expect(s.platformDiameter).toBe(s.implantedDiameter);
    if (s.scallop > 0) expect([1, 2]).toContain(s.index);
    expect(s.thread.depth).toBeLessThan(s.apicalDiameter / 2);
    // Flutes over the apical third, where the apex is slimmer than the body; never through the core: rule S15.
    expect(s.flutes.count).toBe(s.taperLength > 0 ? 3 : 0);
    if (s.flutes.count > 0) {
      expect(isMultiple(s.flutes.length, 0.5)).toBe(true);
      expect(Math.abs(s.flutes.length - s.implantedLength / 3)).toBeLessThanOrEqual(0.25);
      expect(s.flutes.depth).toBeLessThan(s.apicalDiameter / 2 - s.thread.depth);
    }
    // Highest torque: common practice, no source.
    expect(s.maxTorque).toBe(35);
  });

  it('offers every form that the readings tell apart', () => {
    expect(IMPLANT_LIBRARY.some((s) => s.scallop > 0)).toBe(true);
    expect(IMPLANT_LIBRARY.some((s) => s.abutment)).toBe(true);
    expect(IMPLANT_LIBRARY.some((s) => s.taperLength === 0)).toBe(true);
    expect(IMPLANT_LIBRARY.filter((s) => s.transmucosalLength === 0).length).toBeGreaterThanOrEqual(9);
  });
});
