/** The planned crown's wear and tilt, and the choices of a plan. Worked by hand beside each check; manifold-3d says that a worn crown is closed. */
import { describe, expect, it } from 'vitest';
import { plannedTooth } from '../../src/core/anatomy/toothMeshes.ts';
import { broughtInto, broughtOut } from '../../src/core/geometry/carry.ts';
import { cutOff } from '../../src/core/geometry/cutOff.ts';
import { meshVolume } from '../../src/core/geometry/mesh.ts';
import type { Vec3 } from '../../src/core/geometry/vec.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import {
  CROWN_FIELDS,
  crownNumbers,
  resetCrownNumber,
  setCrownNumber,
} from '../../src/core/plan/crownFields.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { evaluate, readingOf, solidsOf } from '../../src/core/plan/evaluate.ts';
import { readPlan } from '../../src/core/plan/read.ts';
import { type CrownForm, DEFAULT_CROWN, UNCHANGED } from '../../src/core/restoration/crownChoices.ts';
import {
  crownFrame,
  crownOf,
  type PlannedCrown,
  plannedCrownOf,
} from '../../src/core/restoration/plannedCrown.ts';
import { restore } from '../../src/core/restoration/restoration.ts';
import { coneCrown } from '../support/coneCrown.ts';
import { slabPlan } from '../support/slabs.ts';
import { opinionOn } from '../support/solid.ts';

const near = (found: Vec3, wanted: Vec3): void => {
  for (const k of [0, 1, 2]) expect(found[k]).toBeCloseTo(wanted[k], 9);
};

const turned = (faciopalatal: number, mesiodistal = 0): CrownForm => ({
  wear: 0,
  tilt: { faciopalatal, mesiodistal },
});

describe('what is cut off a closed mesh', () => {
  it('a truncated cone cut level: π h (r1² + r1 r2 + r2²)/3 is left (table 6.4’s formula)', async () => {
    // r = 3 + 2 z/7; cut at 5: r2 = 3 + 10/7.
    const { mesh } = coneCrown({ foot: 0, height: 7, footRadius: 3, topRadius: 5 });
    const cut = cutOff(mesh, 5);
    const r2 = 3 + 10 / 7;
    expect(meshVolume(cut.mesh) / ((Math.PI * 5 * (9 + 3 * r2 + r2 * r2)) / 3)).toBeCloseTo(1, 3);
    expect((await opinionOn(cut.mesh)).status).toBe('NoError');
    expect(cut.rims).toHaveLength(1);
    for (const [x, y] of cut.rims[0]) expect(Math.hypot(x, y)).toBeCloseTo(r2, 3);
  });

  it('cut where a ring of its corners lies', async () => {
    const { mesh } = coneCrown({ foot: 0, height: 8, footRadius: 3, topRadius: 3 });
    const cut = cutOff(mesh, 6);
    expect(meshVolume(cut.mesh) / (54 * Math.PI)).toBeCloseTo(1, 3);
    expect((await opinionOn(cut.mesh)).status).toBe('NoError');
  });
});

describe('wear', () => {
  it.each([11, 12, 13, 24] as const)(
    '%d: a closed crown, lower by the wear and smaller by what stood above',
    async (tooth) => {
      const anatomy = solidsOf(defaultSite(tooth));
      const whole = plannedCrownOf(anatomy);
      for (const wear of [0.3, 2]) {
        const crown = plannedCrownOf(anatomy, { ...UNCHANGED, wear });
        const heights = crown.mesh.positions.filter((_, i) => i % 3 === 2);
        const top = defaultSite(tooth).crown.crownLength - wear;
        expect(Math.max(...heights)).toBeCloseTo(top, 9);
        expect((await opinionOn(crown.mesh)).status).toBe('NoError');
        expect(meshVolume(crown.mesh)).toBeLessThan(meshVolume(whole.mesh));
        // The edge lies on the crown, and where it is worn, in the facet.
        for (const [x, y, z] of crown.edge) {
          expect(z).toBeLessThanOrEqual(top + 1e-9);
          expect(Math.abs(crown.wall.signed(x, y, z))).toBeLessThan(0.1);
        }
      }
    },
  );

  it('a millimetre off the edge of an upright crown is a millimetre of crown height', () => {
    const height = (wear: number) =>
      readingOf(
        evaluate(slabPlan({ c: -1, plan: { crown: { ...DEFAULT_CROWN, wear } } })).readings,
        'crown-height',
      ).value ?? 0;
    expect(height(0) - height(1)).toBeCloseTo(1, 9);
    // Slab: cervical line at 2, crown of the lateral 9 long, shoulder at −1.
    expect(height(0)).toBeCloseTo(12, 9);
  });

  it('is the crown that is kept where there is none', () => {
    const anatomy = solidsOf(defaultSite(11));
    expect(plannedCrownOf(anatomy, { ...UNCHANGED, wear: 0 })).toBe(plannedCrownOf(anatomy));
  });
});

describe('tilt', () => {
  it('turns about the facial middle of the CEJ: by hand on an upright tooth', () => {
    // Slab at 12: cervix 5 deep, CEJ at 2: the pivot is (0, 2.5, 2). A point 9 over it turns by 10°: facially 9 sin 10°, apically 9 (1 − cos 10°).
    const anatomy = solidsOf(slabPlan().site);
    const crown = plannedCrownOf(anatomy, turned(10));
    const pivot = broughtOut(crown.frame, [0, 2.5, 0]);
    near(pivot, [0, 2.5, 2]);
    const t = (10 * Math.PI) / 180;
    near(broughtOut(crown.frame, [0, 2.5, 9]), [0, 2.5 + 9 * Math.sin(t), 2 + 9 * Math.cos(t)]);
  });

  it('adds to the reference tooth’s projected angles, and the readings against the crown’s axis follow', () => {
    const site = defaultSite(11);
    const plan = slabPlan({ site: { ...site }, fp: 20, md: 3 });
    const of = (faciopalatal: number, mesiodistal: number) => {
      const { readings, restoration } = evaluate({
        ...plan,
        crown: { ...DEFAULT_CROWN, tilt: { faciopalatal, mesiodistal } },
      });
      return {
        fp: readingOf(readings, 'axis-to-crown-faciopalatal').value,
        md: readingOf(readings, 'axis-to-crown-mesiodistal').value,
        a: restoration.crown.frame.ez,
      };
    };
    const [before, after] = [of(0, 0), of(6, -4)];
    expect(after.fp).toBeCloseTo((before.fp ?? 0) - 6, 9);
    expect(after.md).toBeCloseTo((before.md ?? 0) + 4, 9);
    const { faciopalatal, mesiodistal } = site.crown.tilt;
    const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
    expect(after.a[1] / after.a[2]).toBeCloseTo(tan(faciopalatal + 6), 9);
    expect(after.a[0] / after.a[2]).toBeCloseTo(tan(mesiodistal - 4), 9);
  });

  it('keeps the facial middle of the CEJ of a leaning tooth where it was', () => {
    const anatomy = solidsOf(defaultSite(21));
    const half = plannedTooth(anatomy).numbers.cervixDepth / 2;
    const was = broughtOut(plannedCrownOf(anatomy).frame, [0, half, 0]);
    const crown = plannedCrownOf(anatomy, turned(-8, 5));
    near(broughtInto(crown.frame, was), [0, half, 0]);
  });

  it('a crown turned facially brings the exit of the same axis palatally', () => {
    const exit = (faciopalatal: number) =>
      readingOf(
        evaluate(slabPlan({ plan: { crown: { ...DEFAULT_CROWN, tilt: { faciopalatal, mesiodistal: 0 } } } }))
          .readings,
        'access-exit-to-edge',
      ).value ?? Number.NaN;
    expect(exit(8)).toBeGreaterThan(exit(0));
    expect(exit(-8)).toBeLessThan(exit(0));
  });
});

describe('the choices of a plan', () => {
  it('have a name, a range and a default each; one outside is refused by name', () => {
    const plan = slabPlan();
    for (const { path, value, usual, low, high } of crownNumbers(plan)) {
      expect(value, path).toBe(usual);
      expect(usual >= low && usual <= high && low < high, path).toBe(true);
      expect(setCrownNumber(plan, path, high + 0.01)).toMatchObject({
        ok: false,
        fault: { code: 'out-of-range', field: `crown.${path}`, high },
      });
      const set = setCrownNumber(plan, path, high);
      if (!set.ok) throw new Error(path);
      expect(readPlan(set.plan)).toMatchObject({ ok: true });
      expect(resetCrownNumber(set.plan, path)).toEqual({ ok: true, plan });
    }
    expect(setCrownNumber(plan, 'material', 1)).toMatchObject({
      ok: false,
      fault: { code: 'unknown-field' },
    });
  });

  it('are all there: every number of the default has its field', () => {
    const numbers = (node: object, path = ''): string[] =>
      Object.entries(node).flatMap(([key, value]) =>
        typeof value === 'number'
          ? [`${path}${key}`]
          : typeof value === 'object'
            ? numbers(value as object, `${path}${key}.`)
            : [],
      );
    expect(numbers(DEFAULT_CROWN).sort()).toEqual(CROWN_FIELDS.map(({ path }) => path).sort());
  });
});

describe('a truncated cone as the crown, worn and turned', () => {
  // Slab at 12: the crown's CEJ lies at 2 and is 5 deep, so that a cone with a foot of radius 2.5 turns about its own facial rim.
  const anatomy = solidsOf(slabPlan().site);
  const [H, R] = [7, 2.5];
  const cone = coneCrown({ foot: 2, height: H, footRadius: R, topRadius: 5 });
  const exit = (crown: PlannedCrown, fp = 0): number => {
    const plan = slabPlan({ fp });
    const placement = new Placement(anatomy, plan.implant, plan.pose, plan.crestMargin);
    const { access } = restore({ placement, crown, fixing: 'screw-bone', limits: {} });
    return access?.toEdge ?? Number.NaN;
  };

  it.each([0.5, 1, 2])('%d mm off the edge: the exit shifts by (H − wear) tan τ', (wear) => {
    const { mesh } = cutOff(cone.mesh, H - wear);
    const edge = cone.edge.map(([x, y]): Vec3 => [x, y, H - wear]);
    const worn = crownOf(mesh, cone.frame, edge, cone.cejCurve);
    const t = Math.tan((15 * Math.PI) / 180);
    // The platform lies in the crest's plane, the foot 2 over it.
    expect(exit(worn, 15)).toBeCloseTo(-(2 + H - wear) * t, 3);
    expect(exit(cone, 15)).toBeCloseTo(-(2 + H) * t, 3);
  });

  it.each([3, 8, 15])(
    'turned facially by %d°: an upright axis comes out H tan δ + R (1/cos δ − 1) palatally',
    (by) => {
      // In the crown's coordinates the axis runs through its top at y = R (1 − 1/cos δ) − H tan δ.
      const d = (by * Math.PI) / 180;
      const frame = crownFrame(anatomy, turned(by));
      const crown = crownOf(cone.mesh, frame, cone.edge, cone.cejCurve);
      expect(exit(crown)).toBeCloseTo(H * Math.tan(d) + R * (1 / Math.cos(d) - 1), 3);
    },
  );
});
