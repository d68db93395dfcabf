import { describe, expect, it } from 'vitest';
import {
  DEFAULT_ROOT_TILT,
  DEFAULT_TILT,
  LOWER_INCISORS,
  originOf,
  TOOTH_TABLE,
  tiltOriginOf,
} from '../../src/core/anatomy/toothTable.ts';

/** Surface of half a three-axis ellipsoid without its flat face, by the midpoint rule over its two angles, mm². */
function halfEllipsoidArea(a: number, b: number, c: number): number {
  const n = 400;
  const d = Math.PI / 2 / n;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const u = (i + 0.5) * d;
    for (let j = 0; j < n; j++) {
      const v = (j + 0.5) * d;
      const x = Math.cos(u) * Math.cos(v) * b * c;
      const y = Math.cos(u) * Math.sin(v) * a * c;
      const z = Math.sin(u) * a * b;
      sum += Math.cos(u) * Math.hypot(x, y, z);
    }
  }
  return 4 * sum * d * d;
}

describe('the tooth table', () => {
  // Source: Nelson SJ, Ash MM, Wheeler's Dental Anatomy, Physiology and Occlusion, Table 1-1. Central and lateral read there but for
  // their labiolingual cervix; that and the other teeth from memory.
  it.each([
    ['central', [10.5, 13.0, 8.5, 7.0, 7.0, 6.0, 3.5, 2.5]],
    ['lateral', [9.0, 13.0, 6.5, 5.0, 6.0, 5.0, 3.0, 2.0]],
    ['canine', [10.0, 17.0, 7.5, 5.5, 8.0, 7.0, 2.5, 1.5]],
    ['premolar1', [8.5, 14.0, 7.0, 5.0, 9.0, 8.0, 1.0, 0.0]],
    ['premolar2', [8.5, 14.0, 7.0, 5.0, 9.0, 8.0, 1.0, 0.0]],
  ] as const)('holds the published row of the %s', (cls, row) => {
    const t = TOOTH_TABLE[cls];
    expect([t.crownLength, t.rootLength, t.crownWidth, t.cervixWidth]).toEqual(row.slice(0, 4));
    expect([t.crownDepth, t.cervixDepth, t.cejCurveMesial, t.cejCurveDistal]).toEqual(row.slice(4));
  });

  it('holds the lower incisors of the same table', () => {
    // Source: the same Table 1-1, from memory.
    expect(Object.values(LOWER_INCISORS.central)).toEqual([9.0, 12.5, 5.0, 3.5, 6.0, 5.3, 3.0, 2.0]);
    expect(Object.values(LOWER_INCISORS.lateral)).toEqual([9.5, 14.0, 5.5, 4.0, 6.5, 5.8, 3.0, 2.0]);
  });

  it('says of every number how it is known', () => {
    expect(originOf('central', 'crownWidth').known).toBe('read');
    expect(originOf('lateral', 'cervixDepth').known).toBe('memory');
    expect(originOf('canine', 'crownWidth').known).toBe('memory');
    expect(tiltOriginOf('central', 'faciopalatal').known).toBe('ours');
    expect(tiltOriginOf('canine', 'mesiodistal')).toEqual({ source: 'tong-2012', known: 'read' });
  });

  it('leans every tooth facially, the central most, and the whole tooth mesially', () => {
    // Source: Tong H et al., Am J Orthod Dentofacial Orthop 2012;141:604-17: faciolingual angle falls distally, mesiodistal about 6, a
    // little more, 11, then falling.
    const order = ['central', 'lateral', 'canine', 'premolar1'] as const;
    const facial = order.map((c) => DEFAULT_TILT[c].faciopalatal);
    expect(facial).toEqual([...facial].sort((a, b) => b - a));
    expect(DEFAULT_TILT.central.mesiodistal).toBe(6);
    expect(DEFAULT_TILT.lateral.mesiodistal).toBeGreaterThan(6);
    expect(DEFAULT_TILT.canine.mesiodistal).toBe(11);
    expect(DEFAULT_TILT.premolar1.mesiodistal).toBeLessThan(DEFAULT_TILT.central.mesiodistal);
    expect(Object.values(DEFAULT_ROOT_TILT)).toEqual([0, 0]);
  });

  it('agrees with a sphere on the area of half an ellipsoid', () => {
    // Source: handbook, area of a hemisphere 2πr².
    expect(halfEllipsoidArea(3, 3, 3)).toBeCloseTo(2 * Math.PI * 9, 3);
  });

  // Source: Jepsen A, Acta Odontol Scand 1963;21:35-46 (areas from memory): measured root surfaces of extracted teeth.
  it.each([
    ['central', 204],
    ['lateral', 179],
    ['canine', 273],
    ['premolar1', 234],
  ] as const)('gives the root of the %s an area within 10 %% of the published %d mm²', (cls, published) => {
    const t = TOOTH_TABLE[cls];
    const area = halfEllipsoidArea(t.cervixWidth / 2, t.cervixDepth / 2, t.rootLength);
    expect(Math.abs(area / published - 1)).toBeLessThan(0.1);
  });
});
