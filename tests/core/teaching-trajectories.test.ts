import { describe, expect, test } from 'vitest';
import { libraryShape } from '../../src/core/implant/library.ts';
import { advise, applyEdit } from '../../src/core/plan/advice.ts';
import { evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { breaksOf } from '../../src/core/teaching/breaks.ts';
import { costOf } from '../../src/core/teaching/cost.ts';
import { mendingOf, wayBack } from '../../src/core/teaching/mending.ts';
import {
  goneWrong,
  notInPlan,
  TRAJECTORIES,
  type TrajectoryId,
} from '../../src/core/teaching/trajectories.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

const demo = (id: string): Plan => {
  const found = SITES_DEMO.find((d) => d.id.includes(id));
  if (!found) throw new Error(id);
  return found.plan;
};
const slab = demo('slab');
/** The quick ones first. */
const PLANS = ['slab', 'thin-gum', 'premolar', 'socket', 'lateral'].map(demo);

/** What of what it is brought up for a trajectory breaks in a plan. */
function broken(plan: Plan, id: TrajectoryId): string[] {
  const { breaks, rules } = TRAJECTORIES.find((t) => t.id === id) ?? { breaks: [], rules: [] };
  const cost = costOf(plan, id, 1);
  return [
    ...cost.worse.filter(({ after }) => after.status === 'beyond').map(({ after }) => after.id),
    ...cost.rules.map(({ code }) => code),
  ].filter((code) => ([...breaks, ...rules] as string[]).includes(code));
}

const breakOf = (plan: Plan, id: TrajectoryId, reading: string) =>
  breaksOf(plan, id).readings.find((r) => r.reading === reading);

describe('bad trajectories (rules L1 to L3)', () => {
  test.each(TRAJECTORIES.map(({ id }) => id))('%s breaks what it is brought up for on a demo plan', (id) => {
    expect(PLANS.some((plan) => broken(plan, id).length > 0)).toBe(true);
  });

  test('an amount of 0 is the plan; where there is nothing to move the plan stays and says why', () => {
    for (const plan of PLANS) {
      for (const { id } of TRAJECTORIES) {
        expect(goneWrong(plan, id, 0)).toBe(plan);
        if (notInPlan(plan, id)) {
          expect(goneWrong(plan, id, 1)).toBe(plan);
          expect(costOf(plan, id, 1).nothing).toBe(true);
        }
      }
    }
    expect(notInPlan(slab, 'along-ridge')).toBe('already-so');
    expect(notInPlan(slab, 'centred-in-socket')).toBe('healed-site');
    expect(notInPlan(demo('premolar'), 'into-canal')).toBe('canal-elsewhere');
    expect(notInPlan(demo('lateral'), 'neck-turned')).toBe('round-neck');
  });

  test('where a site bears it, it costs nothing', () => {
    // The narrow lateral is planned within 2° of its crown's axis, and that much no limit notices.
    expect(costOf(demo('lateral'), 'along-crown', 1).nothing).toBe(true);
    expect(costOf(slab, 'too-facial', 0.001).worse.map(({ after }) => after.status)).not.toContain('beyond');
  });

  test('a drilled trajectory has its passes: the axis runs facially by the drift, the last drill is pressed', () => {
    const drifted = goneWrong(slab, 'off-palatal-wall', 0.5);
    // 1 mm per 10 mm of depth: atan 0.1 = 5.711°.
    expect(drifted.pose.tilt.faciopalatal).toBeCloseTo(-5.711, 2);
    expect(drifted.rehearsal?.passes.length).toBeGreaterThan(3);
    const oval = goneWrong(slab, 'oval-hole', 1);
    expect(oval.rehearsal?.passes.filter(({ press }) => press !== null)).toHaveLength(1);
    expect(oval.pose).toEqual(slab.pose);
  });

  test('an error of bone alone leaves the crown without a warning', () => {
    const cost = costOf(slab, 'past-floor', 1);
    expect(cost.silent?.after.id).toBe('shoulder-to-gum-margin');
    expect(cost.signs.map(({ code }) => code)).toContain('floor-entered');
    expect(costOf(slab, 'too-deep', 1).silent).toBeNull();
  });
});

describe('where each limit breaks, against paper (rule L5)', () => {
  // The slab: 7.5 wide, a cylinder of 3.5 upright in its middle: walls 2.0, margin 3.1 over the shoulder, 6.9 to the floor. Bounds belong to the better band.
  test('a shift of 2 a: the wall 2 − 2a is under 2 from 1 %, under 1 from 51 %', () => {
    expect(breakOf(slab, 'too-facial', 'facial-wall-1mm')).toMatchObject({ near: 1, beyond: 51 });
  });

  test('3a too deep: 3.1 + 3a is over 4 from 31 %, over 5 from 64 %', () => {
    expect(breakOf(slab, 'too-deep', 'shoulder-to-gum-margin')).toMatchObject({ near: 31, beyond: 64 });
  });

  test('7.9a longer: 6.9 − 7.9a is under 2 from 63 %, under 0 from 88 %', () => {
    expect(breakOf(slab, 'past-floor', 'apex-to-floor')).toMatchObject({ near: 63, beyond: 88, crossed: 88 });
  });

  test('the last drill, 3.2, pressed by 1.5a: 2.15 − 1.5a is under 2 from 11 %, under 1 from 77 %', () => {
    expect(breakOf(slab, 'oval-hole', 'facial-wall-1mm')).toMatchObject({ near: 11, beyond: 77 });
  });

  test('1.5a wider: 2 − 0.75a is under 2 from 1 %, never under 1', () => {
    expect(breakOf(slab, 'too-wide', 'palatal-wall-1mm')).toBeUndefined();
    expect(breakOf(slab, 'too-wide', 'facial-wall-1mm')).toMatchObject({ near: 1, beyond: null });
  });

  test('what is said to break at a per cent breaks there, and one per cent less does not', () => {
    const plan = demo('thin-gum');
    for (const id of ['too-palatal', 'mesial-root', 'into-canal'] as const) {
      for (const { reading, beyond } of breaksOf(plan, id).readings) {
        if (beyond === null) continue;
        const at = (percent: number) =>
          readingOf(evaluate(goneWrong(plan, id, percent / 100)).readings, reading).status;
        expect([at(beyond - 1) === 'beyond', at(beyond)], `${id} ${reading}`).toEqual([false, 'beyond']);
      }
    }
  });
});

describe('mending (rule L6)', () => {
  test('a 2.0 pass tilted 7.75° and 5.78° is taken up by the 3.6 drill down to 6 and to 8 mm', () => {
    // Source: the model's table; by hand 6 sin 7.75° + 1 cos 7.75° = 1.80 and 8 sin 5.78° + 1 cos 5.78° = 1.80.
    const implant = libraryShape('parallel-straight-40x11') ?? slab.implant;
    for (const [tilt, depth] of [
      [7.75, 6],
      [5.78, 8],
    ]) {
      const { until } = mendingOf({ ...slab, implant }, 'apex-facial', tilt / 15);
      expect(until?.round).toBeCloseTo(depth, 1);
    }
  });

  test('too shallow can be mended to the end; too deep only down to the planned depth', () => {
    const shallow = mendingOf(slab, 'too-shallow', 1);
    expect(shallow.round).toBe(shallow.steps.length - 1);
    const deep = mendingOf(slab, 'too-deep', 1);
    // Apex 10.9 + 0.1 below the crest + 0.5 spare, 0.1 of it the shoulder's depth: 11.6; the first stop is 6.
    expect(deep.covered).toBe(0);
    expect(deep.until?.round).toBeCloseTo(11.6, 6);
  });

  test('too wide: every drill of the plan can be gone back from, the next wider by what the implant covers', () => {
    const { steps, round, covered } = mendingOf(slab, 'too-wide', 1);
    // 3.5 takes the 3.2 drill; the implant's own 3.5 and 0.2 of void cover 3.6.
    expect(steps[round].diameter).toBeCloseTo(3.2, 9);
    expect(steps[covered].diameter).toBeCloseTo(3.6, 9);
  });

  test('a neck that is turned is not in the hole', () => {
    expect(mendingOf(slab, 'neck-turned', 1).steps).toEqual([]);
  });

  test('the way back is the plan', () => {
    for (const plan of PLANS) {
      for (const { id } of TRAJECTORIES) {
        const wrong = goneWrong(plan, id, 0.7);
        const back = wayBack(plan, wrong).reduce(applyEdit, wrong);
        for (const axis of ['m', 'f', 'c'] as const)
          expect(back.pose.platform[axis], id).toBeCloseTo(plan.pose.platform[axis], 9);
        expect(back.pose.tilt.faciopalatal).toBeCloseTo(plan.pose.tilt.faciopalatal, 9);
        expect(back.pose.tilt.mesiodistal).toBeCloseTo(plan.pose.tilt.mesiodistal, 9);
      }
    }
  });
});

describe('advice brings it back', () => {
  const ofPose = TRAJECTORIES.filter(({ moves }) =>
    moves.every(({ kind }) => ['edit', 'lean-as', 'at-canal', 'centre-in-socket', 'drift'].includes(kind)),
  );
  test.each(ofPose.map(({ id }) => id))('%s', (id) => {
    const plan = PLANS.find((p) => broken(p, id).length > 0 && breaksOf(p, id).beyond !== null);
    if (!plan) throw new Error(`nothing breaks: ${id}`);
    const wrong = goneWrong(plan, id, (breaksOf(plan, id).beyond ?? 0) / 100);
    const { worst, advice } = advise(wrong);
    expect(advice.length).toBeGreaterThan(0);
    const count = (p: Plan) =>
      evaluate(p).readings.filter((r) => r.status === 'beyond' && !r.id.startsWith('contact-')).length;
    for (const { edit, mends } of advice) {
      const mended = applyEdit(wrong, edit);
      expect(mends).toBe(worst);
      expect(readingOf(evaluate(mended).readings, mends).status).not.toBe('beyond');
      expect(count(mended)).toBeLessThan(count(wrong));
    }
  });
});
