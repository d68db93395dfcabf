import { describe, expect, test } from 'vitest';
import { type Anatomy, anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { SITES, type Site } from '../../src/core/anatomy/site.ts';
import { measureOf } from '../../src/core/anatomy/siteMeasures.ts';
import { siteSketch } from '../../src/core/anatomy/siteSketch.ts';
import { convexHull } from '../../src/core/geometry/convexHull.ts';
import { loopArea } from '../../src/core/geometry/slice.ts';
import { dot, norm, sub } from '../../src/core/geometry/vec.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { SITE_PRESETS } from '../../src/core/plan/presets.ts';
import { siteNumbers } from '../../src/core/plan/siteFields.ts';

const socket = (site: Site): Site =>
  SITE_PRESETS.find(({ id }) => id === 'root-position-1')?.apply(site) ?? site;

const sites: readonly (readonly [string, Site])[] = [
  ...SITES.map((tooth) => [`${tooth} healed`, defaultSite(tooth)] as const),
  ['21 fresh socket', socket(defaultSite(21))],
  ['12 on a straight arch', { ...defaultSite(12), arch: { width: 34, depth: 0 } }],
];

/** What is drawn, as long or as wide as the drawing has it: worked from the two points or directions alone. */
function sizeOf(anatomy: Anatomy, path: string): number | null {
  const measure = measureOf(anatomy, path);
  if (!measure) return null;
  if (measure.kind === 'length') return norm(sub(measure.to, measure.from));
  expect(norm(measure.from)).toBeCloseTo(1, 9);
  expect(norm(measure.to)).toBeCloseTo(1, 9);
  return (Math.acos(Math.min(1, dot(measure.from, measure.to))) * 180) / Math.PI;
}

// Elementary geometry: a dimension line is as long as the number written on it.
describe.each(sites)('site %s', (_, site) => {
  const anatomy = anatomyOf(site);
  test('every number has a measure, and it is as large as the number', () => {
    for (const { path, value } of siteNumbers(site)) {
      const size = sizeOf(anatomy, path);
      expect(size, path).not.toBeNull();
      expect(size ?? Number.NaN, path).toBeCloseTo(Math.abs(value), 5);
    }
  });
});

test('a width is measured on the mesh of the bone where it is drawn', () => {
  const site = defaultSite(12);
  const anatomy = anatomyOf(site);
  const { bone, plane } = siteSketch(anatomy, 'section');
  for (let i = 0; i < site.ridge.widths.length; i++) {
    const measure = measureOf(anatomy, `ridge.widths.${i}.facial`);
    if (measure?.kind !== 'length') throw new Error('no length');
    const [x, y] = [dot(sub(measure.to, plane.origin), plane.x), dot(sub(measure.to, plane.origin), plane.y)];
    const near = Math.min(...bone[0].map(([bx, by]) => Math.hypot(bx - x, by - y)));
    // The outline has a point at least every 0.4 mm; the drawn end stands on it.
    expect(near).toBeLessThan(0.25);
  }
});

test('the hull of points is theirs', () => {
  // A unit square with points inside and on its sides: worked by hand.
  const hull = convexHull([
    [0, 0],
    [0.5, 0],
    [1, 0],
    [0.4, 0.6],
    [1, 1],
    [0, 1],
    [0, 0.5],
  ]);
  expect(hull).toEqual([
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ]);
  expect(loopArea(hull)).toBe(1);
});
