/**
 * Implant against hole (rules T1 to T4). Worked by hand in the comment beside each case, and the room round the implant against manifold-3d. Unless a case
 * says otherwise: slab 40 mm wide, straight arch, vertical, crest at 0, floor 30 below; the implant upright, its shoulder 2 mm below the crest.
 */
import { describe, expect, it } from 'vitest';
import { anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import type { Void } from '../../src/core/drilling/bodies.ts';
import { axisFrame, axisOf, type Pose } from '../../src/core/geometry/pose.ts';
import { rad, type Vec3 } from '../../src/core/geometry/vec.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import { type Contact, contactOf } from '../../src/core/seating/contact.ts';
import { CELL } from '../../src/core/seating/contactGrid.ts';
import { playBetween, playOf } from '../../src/core/seating/play.ts';
import { seeded } from '../oracle/numbers.ts';
import { cylinderHole } from '../support/holes.ts';
import { cylinder, type SlabNumbers, slabPlan } from '../support/slabs.ts';
import { solidModeller } from '../support/solid.ts';

const UP: Vec3 = [0, 0, 1];

function placed(shape: ImplantShape, c = -2, numbers: SlabNumbers = {}): Placement {
  const plan = slabPlan({ width: 40, ridge: { height: 30 }, ...numbers });
  const pose: Pose = { platform: { m: 0, f: 0, c }, tilt: { faciopalatal: 0, mesiodistal: 0 }, roll: 0 };
  return new Placement(anatomyOf(plan.site), shape, pose, 1);
}

/** A hole coaxial with an upright implant at `m = f = 0`, from well above the crest to `depth` below it. */
const coaxial = (radius: number, depth = 25): Void => cylinderHole([0, 0, 0], UP, radius, 5, depth);

const tapered = (coronal: number, apical: number, length: number, taper = length): ImplantShape =>
  cylinder(coronal, length, { apicalDiameter: 2 * apical, taperLength: taper });

/** Seeded numbers between two bounds. */
function between(seed: number): (low: number, high: number) => number {
  const random = seeded(seed);
  return (low, high) => low + (high - low) * random();
}

const spread = (values: Float64Array): [number, number] => [Math.min(...values), Math.max(...values)];

describe('a cylinder in a coaxial hole', () => {
  it('has the gap r_hole − r everywhere, no contact, and the ring for its room', () => {
    const contact = contactOf(placed(cylinder(2, 10)), coaxial(2.25));
    const [least, most] = spread(contact.grid.values);
    expect(least).toBeCloseTo(0.25, 9);
    expect(most).toBeCloseTo(0.25, 9);
    expect(contact.percent).toBe(0);
    expect(contact.percentWithin).toBe(0);
    expect(contact.meanPress).toBe(0);
    // π (2.25² − 2²) 10 = 33.379
    expect(contact.gapVolume).toBeCloseTo(33.379, 2);
  });

  it('has the press r − r_hole everywhere and all of its thread in contact', () => {
    // Undersized: 2.0 against 1.75 (reference-values 6.3).
    const contact = contactOf(placed(cylinder(2, 10)), coaxial(1.75));
    const [least, most] = spread(contact.grid.values);
    expect(least).toBeCloseTo(-0.25, 9);
    expect(most).toBeCloseTo(-0.25, 9);
    expect(contact.percent).toBeCloseTo(100, 9);
    expect(contact.meanPress).toBeCloseTo(0.25, 9);
    expect(contact.widest).toBeNull();
    // 2 π r L (reference-values 6.4: cylinder side, 4.0 × 10)
    expect(contact.threaded).toBeCloseTo(125.66, 2);
    for (const share of contact.levels.share) expect(share).toBeCloseTo(1, 12);
  });

  it('only touches a hole of its own width: a gap of 0, and nothing holds', () => {
    const contact = contactOf(placed(cylinder(2, 10)), coaxial(2));
    expect(contact.percent).toBe(0);
    expect(contact.widest?.gap).toBeCloseTo(0, 9);
  });

  it('stands in undrilled bone below the floor of a short hole, and out of bone above the crest', () => {
    // Shoulder 2 mm above the crest, apex 8 mm below it, the hole 5 mm deep: of 10 mm of thread 2 are bare, 5 in the hole, 3 undrilled.
    const contact = contactOf(placed(cylinder(2, 10), 2), coaxial(2.25, 5));
    expect(contact.percent).toBeCloseTo(30, 0);
    const rows = Array.from(contact.grid.stations, (x, i) => [x, contact.grid.kinds[i * 48]] as const);
    expect(new Set(rows.filter(([x]) => x < 1.9).map(([, k]) => k))).toEqual(new Set([CELL.none]));
    expect(new Set(rows.filter(([x]) => x > 2.1 && x < 6.9).map(([, k]) => k))).toEqual(new Set([CELL.gap]));
    expect(new Set(rows.filter(([x]) => x > 7.1).map(([, k]) => k))).toEqual(new Set([CELL.solid]));
    expect(Math.abs(contact.percent - 30)).toBeLessThan(0.2);
  });

  it('opens where the hole has come through the wall', () => {
    // A slab of 4.2 mm: the wall at 2.1 lies within the hole's 2.25. Facially (azimuth 0) the gap ends in no bone, mesially (90°) in bone.
    const contact = contactOf(placed(cylinder(2, 10), -2, { width: 4.2 }), coaxial(2.25));
    const { kinds, columns, rows } = contact.grid;
    const middle = Math.floor(rows / 2) * columns;
    expect(kinds[middle]).toBe(CELL.open);
    expect(kinds[middle + columns / 4]).toBe(CELL.gap);
    // |cos φ| > 2.1/2.25: four times acos(0.9333) = 21.04° of the circle, 23.4 %, to within a column.
    expect(Math.abs(contact.openPercent - 23.4)).toBeLessThan(4.2);
  });
});

describe('a frustum in a cylinder', () => {
  // r = 2.1 at the shoulder to 1.4 at 12 mm (reference-values 6.4); hole 1.75: even at 6 mm. Press 0.35 at the shoulder, gap 0.35 at the apex.
  const contact = contactOf(placed(tapered(2.1, 1.4, 12)), coaxial(1.75));

  it('presses above and gapes below the level where they are as wide', () => {
    const { rows, stations } = contact.grid;
    for (let i = 0; i < rows; i++)
      expect(contact.grid.values[i * 48]).toBeCloseTo(1.75 - (2.1 - (0.7 / 12) * stations[i]), 9);
    expect(contact.levels.press[0]).toBeCloseTo(0.35, 9);
    expect(contact.widest).toMatchObject({ station: 12 });
    expect(contact.widest?.gap).toBeCloseTo(0.35, 9);
    // Level: platform 2 mm below the crest, so t = 2 + 12.
    expect(contact.widest?.level).toBeCloseTo(14, 9);
  });

  it('is in contact over the upper half’s side: (2.1 + 1.75)/(2.1 + 1.4)/2 of it', () => {
    expect(contact.percent).toBeCloseTo(55, 2);
  });
});

describe('a shifted and a tilted hole', () => {
  it('gapes on one side and presses on the other by the two-circle distance', () => {
    // Hole of 2.1 shifted 0.3 facially: along +f it ends at 2.4 (gap 0.4), along −f at 1.8 (press 0.2), along m at √(2.1² − 0.3²) = 2.0785.
    const contact = contactOf(placed(cylinder(2, 10)), cylinderHole([0, 0.3, 0], UP, 2.1, 5, 25));
    const { values, columns } = contact.grid;
    expect(values[0]).toBeCloseTo(0.4, 9);
    expect(values[columns / 2]).toBeCloseTo(-0.2, 9);
    expect(values[columns / 4]).toBeCloseTo(0.07846, 5);
    expect(contact.widest?.azimuth).toBe(0);
    // The circles meet where r² + e² − 2 r e cos φ' = R², φ' from the hole's side: cos = (4 + 0.09 − 4.41)/(2·2·0.3) = −0.26667: |φ| > 105.466°.
    expect(100 * contact.levels.share[5]).toBeCloseTo((100 * (180 - 105.466)) / 180, 0);
    expect(Math.abs(contact.percent - 41.408)).toBeLessThan(0.1);
  });

  it('tilted about a point of the axis: facial gap R/cos δ + s tan δ − r at s below it', () => {
    const tilt = 4;
    const pivot: Vec3 = [0, 0, -7];
    const a = axisFrame(axisOf({ faciopalatal: tilt, mesiodistal: 0 })).a;
    const contact = contactOf(placed(cylinder(2, 10)), cylinderHole(pivot, a, 2.4, 20, 20));
    const { values, columns, stations, rows } = contact.grid;
    for (let i = 0; i < rows; i++) {
      // The crown end leans facially, so apically of the pivot the hole lies palatally. Station x is 2 + x below the crest.
      const below = 2 + stations[i] - 7;
      const reach = 2.4 / Math.cos(rad(tilt));
      expect(values[i * columns]).toBeCloseTo(reach - below * Math.tan(rad(tilt)) - 2, 9);
      expect(values[i * columns + columns / 2]).toBeCloseTo(reach + below * Math.tan(rad(tilt)) - 2, 9);
    }
  });
});

describe('room round the implant', () => {
  it('is manifold-3d’s hole less envelope, on 60 seeded cases', { timeout: 120_000 }, async () => {
    const { Manifold } = await solidModeller();
    const segments = 192;
    // Polygons of as much area as the circles they stand for.
    const swell = Math.sqrt((2 * Math.PI) / segments / Math.sin((2 * Math.PI) / segments));
    let pressed = 0;
    for (let seed = 0; seed < 60; seed++) {
      const within = between(seed + 7000);
      const coronal = within(1.5, 2.5);
      const apical = coronal - within(0, 0.6);
      const length = within(8, 13);
      const shape = tapered(coronal, apical, length, within(0.5, 1) * length);
      const radius = coronal + within(-0.3, 0.6);
      const shift = within(0, 0.3);
      const toward = within(0, 2 * Math.PI);
      const { a } = axisFrame(axisOf({ faciopalatal: within(-3, 3), mesiodistal: within(-3, 3) }));
      const pivot: Vec3 = [shift * Math.sin(toward), shift * Math.cos(toward), -2 - length / 2];
      const contact = contactOf(placed(shape), cylinderHole(pivot, a, radius, 30, 30));
      if (contact.percent > 0) pressed++;

      // The implant's platform plane at z = 0, its apex at −length; (m, f, c) taken as (x, y, z).
      const tube = Manifold.cylinder(60, radius * swell, radius * swell, segments, true);
      const far = Math.hypot(a[0], a[1]);
      const lean = (Math.atan2(far, a[2]) * 180) / Math.PI;
      const hole = tube
        .rotate([0, lean, (Math.atan2(a[1], a[0]) * 180) / Math.PI])
        .translate([pivot[0], pivot[1], -length / 2]);
      const taper = shape.taperLength;
      const body = Manifold.cylinder(taper, apical * swell, coronal * swell, segments)
        .translate([0, 0, -length])
        .add(
          Manifold.cylinder(length - taper + 1, coronal * swell, coronal * swell, segments).translate([
            0,
            0,
            taper - length,
          ]),
        );
      const slab = Manifold.cube([20, 20, length], true).translate([0, 0, -length / 2]);
      const room = hole.intersect(slab).subtract(body).volume();
      expect(Math.abs(contact.gapVolume - room)).toBeLessThan(Math.max(0.01, 0.001 * room));
    }
    expect(pressed).toBeGreaterThan(20);
    expect(pressed).toBeLessThan(60);
  });
});

describe('the grid of 48 × 40', () => {
  it('tells contact to a fifth of a per cent, against a grid six times as fine', () => {
    let worst = 0;
    for (let seed = 0; seed < 8; seed++) {
      const within = between(seed + 90);
      const { a } = axisFrame(axisOf({ faciopalatal: within(-4, 4), mesiodistal: within(-4, 4) }));
      const hole = cylinderHole([within(-0.3, 0.3), 0.1, -6], a, within(1.7, 2.2), 20, 6);
      const at = placed(tapered(2, 1.4, 11, 8), within(-2, 2), { width: within(4, 8) });
      const fine = contactOf(at, hole, { rows: 240, columns: 288 });
      worst = Math.max(worst, Math.abs(contactOf(at, hole).percent - fine.percent));
    }
    expect(worst).toBeLessThan(0.2);
    expect(worst).toBeGreaterThan(0);
  });
});

describe('play', () => {
  const play = (shape: ImplantShape, hole: Void) => playOf(contactOf(placed(shape), hole));

  it('of a coaxial cylinder: r_hole − r sideways, atan(2 (r_hole − r)/length) in angle', () => {
    const { code, shift, tilt } = play(cylinder(2, 10), coaxial(2.25));
    expect(code).toBe('spins');
    expect(shift).toBeCloseTo(0.25, 9);
    // atan(0.5/10) = 2.8624°
    expect(tilt).toBeCloseTo(2.8624, 4);
  });

  it('of an implant off the middle is the same: it is the hole that counts', () => {
    const off = play(cylinder(2, 10), cylinderHole([0, 0.2, 0], UP, 2.25, 5, 25));
    expect(off.shift).toBeCloseTo(0.25, 9);
    expect(off.tilt).toBeCloseTo(2.8624, 4);
  });

  it('of a frustum that is held at its shoulder is an angle about it alone', () => {
    // r 2.1 to 1.4 over 12 mm in a hole of 1.75: held down to the middle, so nothing moves.
    expect(play(tapered(2.1, 1.4, 12), coaxial(1.75))).toMatchObject({ code: 'held', shift: 0, tilt: 0 });
    // Held at one level, free by 0.35 at 6 mm from it and by 0.2 at 3: atan(0.35/6) = 3.34°, atan(0.2/3) = 3.81°; between the free ones (0.55)/3.
    const about = playBetween([
      { station: 0, room: 0 },
      { station: 3, room: 0.2 },
      { station: 6, room: 0.35 },
    ]);
    expect(about.shift).toBe(0);
    expect(about.tilt).toBeCloseTo(3.3385, 3);
  });

  it('spins below 15 % of the thread in contact, and not above', () => {
    // r 2.1 to 1.4 over 12 mm; in contact above x where 2.1 − 0.05833 x = r_hole. Share of the side: x (4.2 − 0.05833 x)/(12 · 3.5).
    // r_hole 2.0: x = 1.714, 16.7 %. r_hole 2.02: x = 1.371, 13.5 %.
    expect(play(tapered(2.1, 1.4, 12), coaxial(2.0)).code).toBe('held');
    expect(play(tapered(2.1, 1.4, 12), coaxial(2.0)).thread).toBeCloseTo(16.7, 0);
    expect(play(tapered(2.1, 1.4, 12), coaxial(2.02)).code).toBe('spins');
  });

  it('counts thread above the crest neither as held nor as free', () => {
    // Half of a pressed cylinder stands above the crest: all of what is in bone holds.
    const contact = contactOf(placed(cylinder(2, 10), 5), coaxial(1.9));
    expect(contact.percent).toBeCloseTo(50, 0);
    expect(contact.percentWithin).toBeGreaterThan(95);
    expect(playOf(contact).code).toBe('held');
  });
});

describe('mirror sides', () => {
  it('gives the same contact at 12 and 22', () => {
    const of = (tooth: 12 | 22): Contact =>
      contactOf(
        placed(tapered(2, 1.4, 11), -1, { site: { tooth } }),
        cylinderHole([0.1, 0.2, 0], axisOf({ faciopalatal: 2, mesiodistal: 1 }), 1.9, 5, 14),
      );
    expect(of(22).grid.values).toEqual(of(12).grid.values);
  });
});
