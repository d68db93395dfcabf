import { describe, expect, it } from 'vitest';
import { anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { crownMesh } from '../../src/core/anatomy/crown.ts';
import type { ToothClass } from '../../src/core/anatomy/landmarks.ts';
import { SITES } from '../../src/core/anatomy/site.ts';
import { TOOTH_TABLE } from '../../src/core/anatomy/toothTable.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { crossings, type Point, vertices } from '../support/meshProbe.ts';

// What tells mesial from distal, and one class from the next. Source of every trait: the chapters on the upper teeth in Nelson SJ, Ash MM,
// Wheeler's Dental Anatomy, Physiology and Occlusion, from memory; the thresholds are ours.

const made = (cls: ToothClass) => {
  const crown = crownMesh(cls, TOOTH_TABLE[cls]);
  return { n: TOOTH_TABLE[cls], crown, points: vertices(crown) };
};
const CROWNS = {
  central: made('central'),
  lateral: made('lateral'),
  canine: made('canine'),
  premolar1: made('premolar1'),
  premolar2: made('premolar2'),
};
type Side = 1 | -1;

const best = (points: readonly Point[], measure: (p: Point) => number): Point =>
  points.reduce((top, p) => (measure(p) > measure(top) ? p : top));

/** Radius of the circle in the corner of the crown's facial outline: it leaves r (√2 − 1) of the box's diagonal free. */
function cornerRadius(cls: 'central' | 'lateral', side: Side): number {
  const { n, points } = CROWNS[cls];
  const reached = best(points, (p) => side * p[0] + p[2]);
  const free = (n.crownWidth / 2 + n.crownLength - side * reached[0] - reached[2]) / Math.SQRT2;
  return free / (Math.SQRT2 - 1);
}

/** Furthest the crown reaches to one side at a height, mm. */
function outline(cls: ToothClass, side: Side, z: number): number {
  const reached = [-0.4, 0, 0.4, 0.8, 1.2, 1.6, 2, 2.4].flatMap((y) =>
    crossings(CROWNS[cls].crown, 0, [y, z]),
  );
  return Math.max(...reached.map((x) => side * x));
}

describe('the incisors', () => {
  it.each(['central', 'lateral'] as const)(
    '%s has a sharper mesial corner and a rounder distal one',
    (cls) => {
      const [mesial, distal] = [cornerRadius(cls, 1), cornerRadius(cls, -1)];
      expect(mesial).toBeGreaterThan(0.5);
      expect(distal).toBeGreaterThan(1.4 * mesial);
      expect(distal).toBeLessThan(TOOTH_TABLE[cls].crownWidth / 2);
    },
  );

  it('are rounder at both corners in the lateral, for its width', () => {
    for (const side of [1, -1] as const)
      expect(cornerRadius('lateral', side) / 6.5).toBeGreaterThan(
        (1.15 * cornerRadius('central', side)) / 8.5,
      );
  });

  it.each([
    ['central', 0.3, 1],
    ['lateral', 0.1, 0.6],
    ['canine', -0.2, 0.3],
  ] as const)('%s has its cingulum distal of the middle, the central most', (cls, least, most) => {
    const { points } = CROWNS[cls];
    const [x] = best(points, (p) => -p[1]);
    expect(-x).toBeGreaterThan(least);
    expect(-x).toBeLessThan(most);
  });
});

describe('the canine', () => {
  /** From the tip down one slope to where the outline stands steeper than 55°: its length, mm. */
  const slope = (side: Side): number => {
    const { n, points } = CROWNS.canine;
    const tip = best(points, (p) => p[2]);
    const step = 0.1;
    let at = side * tip[0];
    for (let z = n.crownLength - 0.3; z > 0; z -= step) {
      const next = outline('canine', side, z);
      if (z < n.crownLength - 0.6 && (next - at) * Math.tan((55 * Math.PI) / 180) < step)
        return Math.hypot(at - side * tip[0], n.crownLength - z);
      at = next;
    }
    return Number.NaN;
  };

  it('has a longer distal slope than mesial one', () => {
    expect(slope(-1)).toBeGreaterThan(1.12 * slope(1));
    expect(slope(1)).toBeGreaterThan(2);
  });
});

/** Height of the chewing surface over a point, mm. */
const above = (cls: 'premolar1' | 'premolar2', x: number, y: number): number =>
  Math.max(...crossings(CROWNS[cls].crown, 2, [x, y]));

describe('the premolars', () => {
  const facialTip = (cls: 'premolar1' | 'premolar2') => best(CROWNS[cls].points, (p) => p[2]);
  const palatalTip = (cls: 'premolar1' | 'premolar2') =>
    best(
      CROWNS[cls].points.filter((p) => p[1] < -0.5),
      (p) => p[2],
    );

  it('have the facial tip distal of the middle in the first, mesial in the second, and the palatal tip mesial in both', () => {
    expect(facialTip('premolar1')[0]).toBeLessThan(-0.1);
    expect(facialTip('premolar2')[0]).toBeGreaterThan(0.05);
    for (const cls of ['premolar1', 'premolar2'] as const) {
      expect(palatalTip(cls)[0]).toBeGreaterThan(0.15);
      expect(palatalTip(cls)[0]).toBeLessThan(1);
    }
  });

  it('have the facial cusp sharper in the first', () => {
    const wide = (cls: 'premolar1' | 'premolar2'): number => outline(cls, 1, 7.7) + outline(cls, -1, 7.7);
    expect(wide('premolar1')).toBeLessThan(wide('premolar2') - 0.3);
  });

  it('have a groove across the marginal ridge on the mesial side of the first only', () => {
    const ridge = (cls: 'premolar1' | 'premolar2', side: Side, y: number): number =>
      Math.max(...Array.from({ length: 15 }, (_, i) => above(cls, side * (1.9 + 0.1 * i) + 0.003, y)));
    const dip = (cls: 'premolar1' | 'premolar2', side: Side): number =>
      (ridge(cls, side, -1.35) + ridge(cls, side, 0.35)) / 2 - ridge(cls, side, -0.5);
    expect(dip('premolar1', 1)).toBeGreaterThan(0.25);
    for (const value of [dip('premolar1', -1), dip('premolar2', 1), dip('premolar2', -1)])
      expect(value).toBeLessThan(0.15);
  });

  it('are hollow below the mesial contact in the first only', () => {
    const hollow = (cls: 'premolar1' | 'premolar2', side: Side): number => {
      const reach = (y: number): number =>
        Math.max(...crossings(CROWNS[cls].crown, 0, [y, 3]).map((x) => side * x));
      return (reach(-1.4) + reach(1.4)) / 2 - reach(0.01);
    };
    expect(hollow('premolar1', 1)).toBeGreaterThan(0.05);
    for (const value of [hollow('premolar1', -1), hollow('premolar2', 1), hollow('premolar2', -1)])
      expect(value).toBeLessThan(0);
  });

  it('have the longer central groove in the first, between its mesial and distal pit', () => {
    const pit = (cls: 'premolar1' | 'premolar2', side: Side): number => {
      const line = Array.from({ length: 26 }, (_, i) => 0.1 * i + 0.003);
      return line.reduce((low, x) => (above(cls, side * x, -0.15) < above(cls, side * low, -0.15) ? x : low));
    };
    const groove = (cls: 'premolar1' | 'premolar2'): number => pit(cls, 1) + pit(cls, -1);
    expect(groove('premolar1')).toBeGreaterThan(groove('premolar2') + 0.6);
    expect(groove('premolar2')).toBeGreaterThan(0.6);
  });
});

describe('teeth in their places', () => {
  it.each(SITES)('beside site %d lean their apex a little to distal of the neck, or not at all', (site) => {
    // Source: whole-tooth mesiodistal angles of Tong 2012 (toothTable.ts), up to 11°: the root runs straight on in the tooth's axis.
    const { mesial, distal } = anatomyOf(defaultSite(site)).teeth;
    for (const { root, ex, code } of [mesial, distal]) {
      const level = Math.hypot(ex[0], ex[1]);
      const lean = [0, 1].reduce((sum, k) => sum - ((root.apex[k] - root.centre[k]) * ex[k]) / level, 0);
      if (code % 10 === 5) expect(Math.abs(lean)).toBeLessThan(1e-9);
      else expect(lean).toBeGreaterThan(0.5);
      expect(lean).toBeLessThan(3.5);
    }
  });
});
