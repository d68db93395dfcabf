import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anatomyOf } from '../../src/core/anatomy/anatomy.ts';
import { type DrillingPlan, drillingPlan } from '../../src/core/drilling/drillingPlan.ts';
import { type DrillSite, drillSiteOf } from '../../src/core/drilling/drillSite.ts';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { outlookOf } from '../../src/core/drilling/outlook.ts';
import { passBody } from '../../src/core/drilling/passBody.ts';
import { HEAT, type PassFaultCode } from '../../src/core/drilling/passFaults.ts';
import type { PassMeasureInput } from '../../src/core/drilling/passReadings.ts';
import { passViews } from '../../src/core/drilling/passView.ts';
import { plannedHole } from '../../src/core/drilling/plannedHole.ts';
import type { Pass } from '../../src/core/drilling/rehearsal.ts';
import { type RehearsalSummary, rehearsalSummary } from '../../src/core/drilling/rehearsalSummary.ts';
import { lastPassVolume } from '../../src/core/drilling/volume.ts';
import { libraryShape } from '../../src/core/implant/library.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import { solidsOf } from '../../src/core/plan/evaluate.ts';
import { SITES_DEMO, slabSite } from '../support/demoPlans.ts';
import { runs, within } from '../support/randomPlans.ts';

interface Made {
  readonly m?: number;
  readonly f?: number;
  readonly fp?: number;
  readonly depth?: number;
  readonly press?: Pass['press'];
  readonly speed?: number;
  readonly irrigated?: boolean;
}

/** A pass with a drill of the generic kit, on the plan and as deep where nothing else is said. */
const drilled = (index: number, made: Made = {}): Pass => ({
  tool: { kind: 'drill', index },
  pose: {
    mouth: { m: made.m ?? 0, f: made.f ?? 0 },
    tilt: { faciopalatal: made.fp ?? 0, mesiodistal: 0 },
  },
  depth: made.depth ?? 12.5,
  press: made.press ?? null,
  speed: made.speed ?? 900,
  irrigated: made.irrigated ?? true,
});

const necked = (depth: number): Pass => ({ ...drilled(0), tool: { kind: 'neck', index: 3 }, depth });

interface Bench {
  readonly site: DrillSite;
  readonly plan: DrillingPlan;
  readonly input: PassMeasureInput;
  readonly look: (...passes: Pass[]) => RehearsalSummary;
}

function summaryOf(
  site: DrillSite,
  plan: DrillingPlan,
  input: PassMeasureInput,
  passes: readonly Pass[],
): RehearsalSummary {
  const views = passViews(input, GENERIC_KIT, passes);
  const hole = plannedHole(site, GENERIC_KIT, plan);
  const bodies = views.map((view) => view.body);
  const outlook = hole && bodies.length > 0 ? outlookOf(bodies, hole) : null;
  return rehearsalSummary({ site, kit: GENERIC_KIT, plan, views, hole, outlook });
}

/** A flared 4.0 × 11 upright in a slab 8 wide and 18 high: S 1, so apex 12, full depth 12.5, neck's base 1, last drill 3.6. */
function bench(lean = 0): Bench {
  const slab = slabSite(8);
  const anatomy = anatomyOf({ ...slab, ridge: { ...slab.ridge, inclination: lean, height: 18 } });
  const pose = { platform: { m: 0, f: 0, c: 1 }, tilt: { faciopalatal: 0, mesiodistal: 0 }, roll: 0 };
  const shape = libraryShape('tapered-flared-40x11') as ImplantShape;
  const at = new Placement(anatomy, shape, pose, 1);
  const site = drillSiteOf(at) as DrillSite;
  const plan = drillingPlan(site, { kit: GENERIC_KIT, spare: 0.5, flap: true });
  const input: PassMeasureInput = { anatomy, fixing: 'screw-gum', crestMargin: 1, limits: {} };
  return {
    site,
    plan,
    input,
    look: (...passes) => summaryOf(site, plan, input, passes),
  };
}

const upright = bench();
const ALL = [0, 1, 2, 3, 4];
const whole = [...ALL.map((i) => drilled(i)), necked(1)];
const codes = (summary: RehearsalSummary) => summary.faults.map((f) => f.code);
const faultOf = (summary: RehearsalSummary, code: PassFaultCode) =>
  summary.faults.find((f) => f.code === code);

describe('a rehearsal beside the plan', () => {
  it('finds nothing where it went as planned', () => {
    const summary = upright.look(...whole);
    expect(codes(summary)).toEqual([]);
    expect(summary.verdict).toBe('as-planned');
    expect(summary.outlook?.answer).toBe('round');
    for (const row of summary.rows) {
      expect(row.depthOff).toBeCloseTo(0, 9);
      expect(row.crest.lateral).toBeCloseTo(0, 9);
      expect(row.apex.lateral).toBeCloseTo(0, 9);
      expect(row.angle).toBeCloseTo(0, 6);
    }
    expect(summary.rows.map((r) => r.takenUpBy)).toEqual([1, 2, 3, 4, null, null]);
  });

  it('has not begun without a pass', () => {
    expect(upright.look()).toMatchObject({ rows: [], outlook: null, verdict: 'not-begun' });
  });

  it('keeps the signs of a shift and a tilt', () => {
    // By hand: 0.6 facially and 0.4 distally at the crest, the bottom 12.5 tan 5° = 1.094 further facially.
    const [row] = upright.look(drilled(0, { f: 0.6, m: -0.4, fp: -5, depth: 6 })).rows;
    expect(row.crest.faciopalatal).toBeCloseTo(0.6, 2);
    expect(row.crest.mesiodistal).toBeCloseTo(-0.4, 6);
    expect(row.apex.faciopalatal).toBeCloseTo(1.694, 2);
    expect(row.angle).toBeCloseTo(5, 6);
    expect(row.depthOff).toBeCloseTo(-6.5, 9);
    expect(row.carriedOn).toBe(true);
  });
});

describe('what a rehearsal can show to have gone wrong', () => {
  it('drilled short: the apex stands on the floor of the hole', () => {
    const summary = upright.look(...ALL.map((i) => drilled(i, { depth: i === 4 ? 11.4 : 12.5 })));
    expect(faultOf(summary, 'drilled-short')).toMatchObject({ pass: 4 });
    expect(faultOf(summary, 'drilled-short')?.value).toBeCloseTo(0.6, 9);
    // Short of the spare depth only, it seats; and before the last drill nothing is short yet.
    expect(codes(upright.look(...ALL.map((i) => drilled(i, { depth: i === 4 ? 12 : 12.5 }))))).toEqual([]);
    expect(codes(upright.look(drilled(0, { depth: 6 })))).toEqual([]);
  });

  it('past the floor, or nearer to it than the margin', () => {
    // Tip of the 2.0 mm drill 0.577 beyond: 18.3 is 0.877 past 18; 16 leaves 1.423 of the 2 mm.
    const through = upright.look(drilled(0, { depth: 18.3 }));
    expect(faultOf(through, 'past-floor')?.value).toBeCloseTo(0.877, 2);
    expect(faultOf(through, 'drilled-deep')?.value).toBeCloseTo(5.8, 9);
    expect(through.verdict).toBe('stop');
    const near = upright.look(drilled(0, { depth: 16 }));
    expect(faultOf(near, 'near-floor')).toMatchObject({ limit: 2 });
    expect(faultOf(near, 'near-floor')?.value).toBeCloseTo(1.423, 2);
  });

  it('into the canal', () => {
    const { plan } = SITES_DEMO[3];
    const anatomy = solidsOf(plan.site);
    const at = new Placement(anatomy, plan.implant, plan.pose, 1);
    const site = drillSiteOf(at) as DrillSite;
    const order = drillingPlan(site, { kit: GENERIC_KIT, spare: 0.5, flap: true });
    const input: PassMeasureInput = { anatomy, fixing: plan.fixing, crestMargin: 1, limits: {} };
    const [m, f] = anatomy.canal.mouth;
    const into = summaryOf(site, order, input, [drilled(0, { m, f, depth: 8 })]);
    expect(codes(into)).toContain('in-canal');
    expect(into.verdict).toBe('stop');
  });

  it('an oval hole, from two passes or from a press, and what takes it up again', () => {
    const beside = upright.look(drilled(0), drilled(0, { f: 0.3 }));
    expect(faultOf(beside, 'oval')).toMatchObject({ pass: 1, mendedBy: null });
    expect(faultOf(beside, 'oval')?.value).toBeCloseTo(0.3, 6);
    // The 2.0 mm holes stand within 2.8: 0.3 + 1.0 ≤ 1.4.
    const wider = upright.look(drilled(0), drilled(0, { f: 0.3 }), drilled(1), drilled(2));
    expect(faultOf(wider, 'oval')).toMatchObject({ pass: 1, mendedBy: 3 });
    const press = { toward: 90, mouth: 0.5, bottom: 0 };
    const pressed = upright.look(drilled(0), drilled(0, { press }));
    expect(faultOf(pressed, 'oval')).toMatchObject({ pass: 1, value: 0.5 });
    // The same axis a second time, deeper, is no oval; nor is less than a tenth.
    expect(codes(upright.look(drilled(0, { depth: 6 }), drilled(0)))).toEqual([]);
    expect(codes(upright.look(drilled(0), drilled(0, { f: 0.09 })))).toEqual([]);
  });

  it('the direction of the ridge instead of the teeth', () => {
    const leaning = bench(20);
    const followed = leaning.look(drilled(0, { fp: 18, depth: 6 }));
    expect(faultOf(followed, 'followed-ridge')).toMatchObject({ pass: 0, limit: 5 });
    expect(faultOf(followed, 'followed-ridge')?.value).toBeCloseTo(18, 6);
    // 4° off the ridge's lean it is some other direction; and on the plan's own it is right.
    expect(codes(leaning.look(drilled(0, { fp: 16, depth: 6 })))).not.toContain('followed-ridge');
    expect(codes(leaning.look(drilled(0, { depth: 6 })))).not.toContain('followed-ridge');
    // Where the plan itself leans as the ridge does, following it is no fault.
    expect(codes(bench(3).look(drilled(0, { fp: 3, depth: 6 })))).not.toContain('followed-ridge');
  });

  it('a bottom that drifted facially, a mouth that wandered palatally', () => {
    const drifted = upright.look(drilled(0, { fp: -5 }));
    expect(faultOf(drifted, 'drifted-facially')?.value).toBeCloseTo(1.094, 2);
    expect(codes(upright.look(drilled(0, { fp: -2 })))).not.toContain('drifted-facially');
    expect(codes(upright.look(drilled(0, { fp: 5 })))).not.toContain('drifted-facially');
    const wandered = upright.look(drilled(0, { f: -0.7 }));
    expect(faultOf(wandered, 'wandered-palatally')?.value).toBeCloseTo(0.7, 2);
    expect(codes(upright.look(drilled(0, { f: 0.7 })))).not.toContain('wandered-palatally');
  });

  it('a drill left out', () => {
    const skipped = upright.look(drilled(0), drilled(2));
    expect(faultOf(skipped, 'skipped-drill')).toMatchObject({ pass: 1, value: 2.8, limit: 2.4 });
    expect(faultOf(upright.look(drilled(1)), 'skipped-drill')).toMatchObject({ value: 2.4, limit: 2 });
    expect(skipped.verdict).toBe('mind');
  });

  it('a drill too fast or dry: a caution with the published threshold, no temperature', () => {
    const hot = upright.look(drilled(0, { speed: 1500, irrigated: false }));
    expect(hot.faults).toMatchObject([
      { code: 'too-fast', value: 1500, limit: 1200, unit: 'rpm' },
      { code: 'dry', unit: 'none' },
    ]);
    expect(hot.verdict).toBe('mind');
    // Eriksson AR, Albrektsson T. J Prosthet Dent 1983;50:101–7 (second-hand, reference values 4.3): 47 °C for 1 min.
    expect(HEAT).toMatchObject({ celsius: 47, minutes: 1 });
    expect(codes(upright.look(drilled(0, { speed: 0, irrigated: false })))).toEqual([]);
  });

  it('a neck cut too little or too deep', () => {
    const drills = ALL.map((i) => drilled(i));
    expect(faultOf(upright.look(...drills, necked(0.6)), 'neck-short')?.value).toBeCloseTo(0.4, 9);
    expect(faultOf(upright.look(...drills, necked(1.8)), 'neck-deep')?.value).toBeCloseTo(0.8, 9);
  });
});

describe('how it ends', () => {
  it('is open where a deep pilot leans too far for the last drill', () => {
    // Model 5: a 2.0 mm hole is taken up by 3.6 up to 3.28° at 14 mm; 12° at 12.5 mm is far beyond, and the implant's apex is slimmer still.
    expect(upright.look(drilled(0, { fp: 12 })).verdict).toBe('open');
    expect(upright.look(drilled(0, { fp: 12, depth: 3 })).verdict).not.toBe('open');
  });

  it('is to be mended where a fault stands that the plan still covers', () => {
    const summary = upright.look(drilled(0), drilled(0, { f: 0.3 }));
    expect(summary.outlook?.answer).toBe('round');
    expect(summary.verdict).toBe('mend');
  });
});

describe('the bone a pass takes at most', () => {
  it('is never less than what it takes, measured ray by ray', () => {
    const made = fc.tuple(within(-0.8, 0.8), within(-6, 6), within(3, 13), fc.integer({ min: 0, max: 4 }));
    fc.assert(
      fc.property(fc.array(made, { minLength: 1, maxLength: 3 }), (list) => {
        const passes = list.map(([f, fp, depth, index]) => drilled(index, { f, fp, depth }));
        const { anatomy } = upright.input;
        const bodies = passes.flatMap((p) => passBody(anatomy.ridge, GENERIC_KIT, p) ?? []);
        const exact = lastPassVolume(anatomy, bodies);
        // Ray by ray it is good to 0.3 %.
        expect(upright.look(...passes).rows.at(-1)?.volume).toBeGreaterThan(0.997 * exact - 0.01);
      }),
      runs(25),
    );
  });

  it('is close to it for a neck cut over its bore', () => {
    const { anatomy } = upright.input;
    const bodies = whole.flatMap((p) => passBody(anatomy.ridge, GENERIC_KIT, p) ?? []);
    const exact = lastPassVolume(anatomy, bodies);
    const bound = upright.look(...whole).rows.at(-1)?.volume ?? 0;
    expect(bound).toBeGreaterThan(exact * 0.997);
    expect(bound).toBeLessThan(exact * 1.1 + 0.2);
  });
});
