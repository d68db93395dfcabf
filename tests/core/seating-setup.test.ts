/**
 * From passes to a seating. Worked by hand in the comments: slab 20 mm wide, upright, crest at 0; the generic kit's own diameters are read off it, not assumed.
 */
import { describe, expect, it } from 'vitest';
import { anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { drillSiteOf } from '../../src/core/drilling/drillSite.ts';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { holeOf } from '../../src/core/drilling/hole.ts';
import type { Pass, SeatAct } from '../../src/core/drilling/rehearsal.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import { contactOf } from '../../src/core/seating/contact.ts';
import { planFinish } from '../../src/core/seating/finish.ts';
import { seating } from '../../src/core/seating/seat.ts';
import { placedInState, preparedOf, seatSetting, sparse } from '../../src/core/seating/setup.ts';
import { cylinder, slabPlan } from '../support/slabs.ts';

const ANATOMY = anatomyOf(slabPlan({ width: 20, ridge: { height: 30 } }).site);
const UPRIGHT = { faciopalatal: 0, mesiodistal: 0 };

const drill = (index: number, depth: number, changes: Partial<Pass> = {}): Pass => ({
  tool: { kind: 'drill', index },
  pose: { mouth: { m: 0, f: 0 }, tilt: UPRIGHT },
  depth,
  press: null,
  speed: 1000,
  irrigated: true,
  ...changes,
});
const under = (diameter: number): number =>
  GENERIC_KIT.drills.findLastIndex((d) => d.diameter < diameter - 1e-9);
/** All drills of the kit below a diameter, one after the other, to one depth. */
const sequence = (diameter: number, depth: number): Pass[] =>
  Array.from({ length: under(diameter) + 1 }, (_, i) => drill(i, depth));

// 4.0 over the upper half, 2.8 at the apex, 12 long; six-fold neck; shoulder at the crest.
const shape: ImplantShape = cylinder(2, 12, { apicalDiameter: 2.8, taperLength: 6, index: 6 });
const at = new Placement(ANATOMY, shape, { platform: { m: 0, f: 0, c: 0 }, tilt: UPRIGHT, roll: 0 }, 1);

function set(passes: readonly Pass[]) {
  const site = drillSiteOf(at);
  if (!site) throw new Error('no bone');
  const hole = holeOf(ANATOMY.ridge, GENERIC_KIT, passes);
  const choice = { kit: GENERIC_KIT, passes, wrench: null, tolerance: null, highest: null };
  return { hole, setting: seatSetting(site, sparse(hole), choice) };
}

describe('a hole without what was taken up', () => {
  it('leaves one pass of a straight sequence, and all that stand out', () => {
    const straight = holeOf(ANATOMY.ridge, GENERIC_KIT, sequence(4, 12.5));
    expect(straight.bodies.length).toBeGreaterThan(2);
    expect(sparse(straight).bodies).toHaveLength(1);
    const leaning = { mouth: { m: 0, f: 0 }, tilt: { faciopalatal: 12, mesiodistal: 0 } };
    const askew = holeOf(ANATOMY.ridge, GENERIC_KIT, [
      drill(0, 12.5, { pose: leaning }),
      ...sequence(4, 12.5).slice(1),
    ]);
    expect(sparse(askew).bodies).toHaveLength(2);
  });

  it('is the same to the implant', () => {
    const bent = [
      drill(0, 10, { press: { toward: 40, mouth: 0.4, bottom: 0 } }),
      ...sequence(4, 12.5).slice(1),
      drill(under(4), 8, { pose: { mouth: { m: 0.1, f: 0.2 }, tilt: UPRIGHT } }),
    ];
    const hole = holeOf(ANATOMY.ridge, GENERIC_KIT, bent);
    const full = contactOf(at, hole);
    const quick = contactOf(at, sparse(hole));
    expect(sparse(hole).bodies.length).toBeLessThan(hole.bodies.length);
    expect(quick.percent).toBeCloseTo(full.percent, 6);
    expect(quick.gapVolume).toBeCloseTo(full.gapVolume, 6);
  });
});

describe('what was made for the implant', () => {
  it('is the deepest drill that lets the core of its apex in, and the deepest cut for the neck', () => {
    // Core at the apex: 2.8 − 2 · 0.3 = 2.2 mm.
    const wide = GENERIC_KIT.drills.findIndex((d) => d.diameter >= 2.2);
    expect(GENERIC_KIT.drills[0].diameter).toBeLessThan(2.2);
    const neck: Pass = { ...drill(0, 1.2), tool: { kind: 'neck', index: 0 } };
    const made = preparedOf(GENERIC_KIT, [drill(0, 15), drill(wide, 12), drill(wide + 1, 11), neck], shape);
    expect(made.hole).toBe(12);
    expect(made.neck).toEqual({ cutter: GENERIC_KIT.necks[0], depth: 1.2 });
    expect(preparedOf(GENERIC_KIT, [], shape)).toEqual({ hole: 0, neck: null });
  });
});

describe('seating into a drilled hole', () => {
  const { setting, hole } = set(sequence(4, 12.5));
  const radius = GENERIC_KIT.drills[under(4)].diameter / 2;

  it('begins to bite where the cone is as wide as the last drill', () => {
    // r = 2 down to 6 mm, then 0.1 narrower every mm: as wide as the hole (2 − radius)/0.1 below that.
    const width = 6 + (2 - radius) / 0.1;
    expect(Math.abs(setting.bite - width)).toBeLessThan(0.1);
    // 12.5 deep, 12 needed.
    expect(setting.free.hole).toBeCloseTo(-0.5, 9);
    expect(setting.free.neck).toBe(Number.NEGATIVE_INFINITY);
  });

  it('goes in rung by rung to the planned level, and holds there', () => {
    const start: SeatAct = { kind: 'start', roll: 10, pose: { mouth: { m: 0, f: 0 }, tilt: UPRIGHT } };
    const first: SeatAct = { kind: 'turn', by: 'wrench', degrees: 720 };
    const states = seating(setting, [start, first]);
    const { degrees } = planFinish(setting, states[2]);
    const end = seating(setting, [start, first, { kind: 'turn', by: 'wrench', degrees: degrees ?? 0 }])[3];
    expect(end.phase).toBe('seated');
    // Six-fold, lead 0.8: rungs 0.133 apart.
    expect(Math.abs(end.above)).toBeLessThan(0.0667);
    const stands = placedInState(at, setting, end);
    expect(stands.platform[2]).toBeCloseTo(end.above, 9);
    const contact = contactOf(stands, sparse(hole));
    // In contact down to where the cone is as wide as the hole.
    expect(contact.percent).toBeGreaterThan(50);
    expect(setting.holds(end.above)).toBe(true);
  });

  it('spins in a hole drilled as wide as its body', () => {
    const wide = set([drill(under(4) + 1, 12.5)]);
    const next = GENERIC_KIT.drills[under(4) + 1].diameter;
    expect(next).toBeGreaterThanOrEqual(4);
    expect(wide.setting.holds(0)).toBe(false);
    expect(wide.setting.bite).toBeLessThan(0.1);
  });
});
