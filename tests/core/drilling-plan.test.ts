import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { type DrillingPlan, drillingPlan, seatingTime } from '../../src/core/drilling/drillingPlan.ts';
import { type DrillSite, drillSite, drillSiteOf } from '../../src/core/drilling/drillSite.ts';
import { passVolume } from '../../src/core/drilling/drillVolume.ts';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import type { Drill, Kit } from '../../src/core/drilling/kit.ts';
import { fittingNeck, lastDrill } from '../../src/core/drilling/lastDrill.ts';
import { IMPLANT_LIBRARY, libraryShape } from '../../src/core/implant/library.ts';
import { type ImplantShape, leadOf } from '../../src/core/implant/shape.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import { boneLevel } from '../support/boneLevel.ts';
import { SITES_DEMO, slabSite } from '../support/demoPlans.ts';
import { runs, within } from '../support/randomPlans.ts';

const shape = (name: string) => libraryShape(name) as ImplantShape;

function onSlab(implant: ImplantShape, c: number, boneClass: 1 | 2 | 3 | 4 = 3): DrillSite {
  const site = slabSite(8);
  const anatomy = anatomyOf({ ...site, ridge: { ...site.ridge, boneClass } });
  const pose = { platform: { m: 0, f: 0, c }, tilt: { faciopalatal: 0, mesiodistal: 0 }, roll: 0 };
  const at = new Placement(anatomy, implant, pose, 1);
  return drillSite(at, boneLevel(at) as number);
}

const choice = { kit: GENERIC_KIT, spare: 0.5, flap: true };
const outline = ({ steps }: DrillingPlan) => steps.map((s) => [s.reason, s.diameter]);

describe('the order of drilling', () => {
  // The order itself is model 5; 6–8 mm and 800–1200 rpm: common practice, no source.
  const plan = drillingPlan(onSlab(shape('tapered-flared-40x11'), 1), choice);

  it('goes from the dry test to the seat, and stops at each change of diameter', () => {
    expect(outline(plan)).toEqual([
      ['dry-test', 2],
      ['direction', 2],
      ['full-depth', 2],
      ['centring', 2.4],
      ['centring', 2.8],
      ['centring', 3.2],
      ['centring', 3.6],
      ['neck', 5],
      ['seat', 4],
    ]);
    expect(plan.faults).toEqual([]);
  });

  it('drills every diameter to the same depth, with plenty of irrigation at a usual speed', () => {
    // By hand: L_i 11, H_t 2, S 1, ρ 0.5.
    const drilled = plan.steps.filter((s) => s.reason === 'full-depth' || s.reason === 'centring');
    for (const step of drilled) {
      expect(step.depth).toBeCloseTo(12.5, 9);
      expect(step.mark?.value).toBeCloseTo(12.5, 9);
      expect(step.irrigation).toBe('plenty');
      expect(step.speed?.low).toBeGreaterThanOrEqual(800);
      expect(step.speed?.high).toBeLessThanOrEqual(1200);
    }
    const direction = plan.steps[1];
    expect(direction.depth).toBe(6);
    expect(plan.steps.find((s) => s.reason === 'neck')?.depth).toBeCloseTo(1, 9);
    expect(plan.steps.at(-1)?.depth).toBeCloseTo(12, 9);
  });

  it('stops for the direction at a mark that stands 6 to 8 mm deep through the gum', () => {
    // Gum 3: the mark at 10 stands 7 deep, the one at 8 only 5.
    const closed = drillingPlan(onSlab(shape('tapered-straight-35x9'), -0.1), { ...choice, flap: false });
    expect(closed.steps[1].depth).toBeCloseTo(7, 9);
    expect(closed.steps[1].mark).toMatchObject({ read: 'gum' });
    expect(closed.steps[1].mark?.value).toBeCloseTo(10, 9);
  });

  it('leaves the stop out where the whole hole is no deeper', () => {
    const short = drillingPlan(onSlab({ ...shape('tapered-straight-35x9'), implantedLength: 5 }, 0), choice);
    expect(outline(short).slice(0, 3)).toEqual([
      ['dry-test', 2],
      ['full-depth', 2],
      ['centring', 2.4],
    ]);
  });

  it('leaves the neck cutter out where the neck stands in the gum', () => {
    const high = drillingPlan(onSlab(shape('tapered-flared-40x11'), 2), choice);
    expect(high.steps.map((s) => s.reason)).not.toContain('neck');
  });

  it('makes a plan of every demo without a fault of the kit', () => {
    for (const { plan: demo, id } of SITES_DEMO) {
      const { placement } = evaluate(demo);
      const site = drillSiteOf(placement) as DrillSite;
      expect(site.entry, id).toBeCloseTo(boneLevel(placement) as number, 6);
      const { faults, steps } = drillingPlan(site, choice);
      expect(faults, id).toEqual([]);
      expect(steps.at(-1)?.reason, id).toBe('seat');
    }
  });
});

describe('the last drill', () => {
  // Rule of this project, by hand: implanted diameter less one thread depth (0.3); dense up to 0.2 under it; soft one narrower.
  it.each([
    ['tapered-flared-30x11', 2, 2.4, 'plain'],
    ['tapered-flared-30x11', 1, 2.8, 'dense'],
    ['tapered-flared-30x11', 4, 2, 'soft'],
    ['tapered-straight-35x11', 3, 3.2, 'plain'],
    ['tapered-straight-35x11', 1, 3.2, 'plain'],
    ['tapered-straight-40x11', 3, 3.6, 'plain'],
    ['tapered-straight-45x11', 4, 3.6, 'soft'],
  ] as const)('%s in bone of class %s: %s mm', (name, boneClass, diameter, rule) => {
    const found = lastDrill(GENERIC_KIT, shape(name), boneClass);
    expect(GENERIC_KIT.drills[found?.index ?? -1].diameter).toBe(diameter);
    expect(found?.rule).toBe(rule);
  });

  it('is never wider in softer bone, as the torque in foam wants it (Camargo 2017, read: reference values 4.4)', () => {
    for (const implant of IMPLANT_LIBRARY) {
      const classes = [1, 2, 3, 4] as const;
      const widths = classes.map((c) => lastDrill(GENERIC_KIT, implant, c)?.index ?? Number.NaN);
      expect(widths).toEqual([...widths].sort((a, b) => b - a));
    }
  });

  it('says how far its wall stands off a tapered apex', () => {
    // By hand: (2.4 − 2.0) / 2.
    expect(lastDrill(GENERIC_KIT, shape('tapered-flared-30x11'), 2)?.apicalGap).toBeCloseTo(0.2, 9);
    expect(lastDrill(GENERIC_KIT, shape('parallel-straight-40x11'), 2)?.apicalGap).toBe(0);
  });
});

describe('a kit that cannot', () => {
  const flared = shape('tapered-flared-30x11');
  const site = onSlab(flared, 0.5);
  const faultsWith = (kit: Partial<Kit>) =>
    drillingPlan(site, { ...choice, kit: { ...GENERIC_KIT, ...kit } }).faults;

  it('has no drill narrow enough', () => {
    // By hand: 3.0 − 0.3 = 2.7.
    const faults = faultsWith({ drills: GENERIC_KIT.drills.slice(3) });
    expect(faults).toMatchObject([{ code: 'no-drill-narrow', value: 3.2 }]);
    expect(faults[0].needed).toBeCloseTo(2.7, 9);
  });

  it('has a drill too short for its depth', () => {
    // By hand: 12.5 + 0.693 for the 2.4 mm drill.
    const [first, second] = GENERIC_KIT.drills;
    const faults = faultsWith({ drills: [first, { ...second, length: 13, marks: [4] }] });
    expect(faults).toMatchObject([{ code: 'drill-too-short', tool: { kind: 'drill', index: 1 }, value: 13 }]);
    expect(faults[0].needed).toBeCloseTo(13.193, 3);
  });

  it('has marks that end above the depth', () => {
    const [first] = GENERIC_KIT.drills;
    const faults = faultsWith({ drills: [{ ...first, marks: [4, 6, 8] }] });
    expect(faults).toMatchObject([{ code: 'marks-too-short', value: 8 }]);
    expect(faults[0].needed).toBeCloseTo(12.5, 9);
  });

  it('has no cutter for the neck', () => {
    expect(faultsWith({ necks: [] })).toMatchObject([{ code: 'no-cutter-fits' }]);
    const wide = { ...GENERIC_KIT, necks: [{ ...GENERIC_KIT.necks[0], shoulderDiameter: 3.9 }] };
    expect(fittingNeck(wide, flared)).toBeNull();
    expect(fittingNeck(GENERIC_KIT, flared)).toBe(0);
  });

  it('is told apart from a pose that needs no hole', () => {
    const floating = drillingPlan(onSlab({ ...flared, implantedLength: 4 }, 8), choice);
    expect(floating.steps).toEqual([]);
    expect(floating.faults).toMatchObject([{ code: 'nothing-to-drill' }]);
  });
});

describe('how much bone a pass takes at most', () => {
  const drill = (diameter: number, point: number) => ({ ...GENERIC_KIT.drills[0], diameter, point });

  it('is the annulus of the handbook', () => {
    // Reference values 6.3: π(R² − r²)L with R 2.0, r 1.75, L 10 is 29.45 mm³; 180°: no points.
    const wide = { drill: drill(4, 180), depth: 10 };
    expect(passVolume(wide, { drill: drill(3.5, 180), depth: 10 })).toBeCloseTo(29.45, 2);
    // The same less deep than the bore before it: only what lies round it.
    const before = { drill: drill(3.5, 180), depth: 14 };
    expect(passVolume(wide, before)).toBeCloseTo(29.45, 2);
  });

  it('agrees with thin discs added up, whichever bore is wider or deeper', () => {
    const bore = fc
      .tuple(within(1.5, 4.5), within(60, 170), within(1, 15))
      .map(([diameter, point, depth]) => ({ drill: drill(diameter, point), depth }));
    const radius = ({ drill: d, depth }: { drill: Drill; depth: number }, x: number): number => {
      const y = d.diameter / 2 / Math.tan((d.point * Math.PI) / 360);
      return x > depth + y ? 0 : Math.min(d.diameter / 2, (d.diameter / 2) * ((depth + y - x) / y));
    };
    fc.assert(
      fc.property(bore, bore, (a, b) => {
        let sum = 0;
        const step = 0.002;
        for (let x = step / 2; x < 20; x += step)
          sum += Math.PI * step * Math.max(0, radius(a, x) ** 2 - radius(b, x) ** 2);
        expect(Math.abs(passVolume(a, b) - sum)).toBeLessThan(0.05);
      }),
      runs(40),
    );
  });

  it('adds up over the plan to the last bore and the neck', () => {
    // By hand, L_i 11, H_t 1.5, S 0.5, ρ 0.5: bore 2.4 wide and 12.5 deep with its cone; neck 3 → 3.333 over 1 mm less the bore.
    const plan = drillingPlan(onSlab(shape('tapered-flared-30x11'), 0.5), choice);
    const taken = plan.steps.reduce((sum, s) => sum + s.volume, 0);
    const bore = Math.PI * 1.44 * (12.5 + 1.2 / Math.tan(Math.PI / 3) / 3);
    const mouth = 10 / 6;
    const neck = (Math.PI * (1.5 ** 2 + 1.5 * mouth + mouth ** 2)) / 3 - Math.PI * 1.44;
    expect(taken).toBeCloseTo(bore + neck, 6);
  });
});

describe('turning the implant in', () => {
  // Reference values 6.3: depth per turn = lead = starts × pitch; lead, half a turn, a sixth of a turn, turns per 10 mm.
  it.each([
    [0.6, 0.3, 0.1, 16.67],
    [0.8, 0.4, 0.133, 12.5],
    [1, 0.5, 0.167, 10],
    [1.2, 0.6, 0.2, 8.33],
  ])('lead %s: half a turn %s, a sixth %s, turns for 10 mm %s', (lead, half, sixth, turns) => {
    const single = { ...shape('tapered-straight-35x11'), thread: { depth: 0.3, pitch: lead, starts: 1 } };
    expect(leadOf(single) / 2).toBeCloseTo(half, 3);
    expect(leadOf(single) / 6).toBeCloseTo(sixth, 3);
    // Time at one turn a minute is the number of turns in minutes.
    expect(seatingTime(10, leadOf(single), 1) / 60).toBeCloseTo(turns, 2);
    const double = { ...single, thread: { ...single.thread, pitch: lead / 2, starts: 2 } };
    expect(leadOf(double)).toBeCloseTo(leadOf(single), 12);
  });

  it('takes 24 s for 10 mm at a lead of 1.0 and 25 rpm (reference values 6.3)', () => {
    expect(seatingTime(10, 1, 25)).toBeCloseTo(24, 9);
  });

  it('is planned between 50 and 15 rpm (convention, from memory)', () => {
    // By hand: 11 mm at a lead of 0.8: 13.75 turns.
    const { seating } = drillingPlan(onSlab(shape('tapered-straight-35x11'), 0), choice);
    expect(seating.least).toBeCloseTo(16.5, 9);
    expect(seating.most).toBeCloseTo(55, 9);
  });

  it('allows 35 N·cm by default (common practice, no source)', () => {
    expect(new Set(IMPLANT_LIBRARY.map((s) => s.maxTorque))).toEqual(new Set([35]));
  });
});
