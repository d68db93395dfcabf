import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/core/plan/plan.ts';
import {
  isKept,
  keptAttempts,
  MOST_ATTEMPTS,
  withAttempt,
  withoutNewest,
} from '../../src/core/spread/hand.ts';
import { screenAttempt } from '../../src/core/teaching/ownAttempt.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { rehearsed } from '../support/rehearsed.ts';

const { plan: slab } = SITES_DEMO[4];
const upright: Plan = { ...slab, pose: { ...slab.pose, tilt: { faciopalatal: 0, mesiodistal: 0 } } };

/** The plan with a rehearsal that followed another one, `by` mm facially of it. */
function strayed(plan: Plan, by: number): Plan {
  const { platform } = plan.pose;
  const pose = { ...plan.pose, platform: { ...platform, f: platform.f + by } };
  return { ...plan, rehearsal: rehearsed({ ...plan, pose }).rehearsal };
}

const attempt = (plan: Plan) => {
  const found = screenAttempt(plan);
  if (typeof found === 'string') throw new Error(found);
  return found;
};

describe('a rehearsal as an attempt of the own hand (rule L11)', () => {
  test('a parallel hole 0.4 mm facially on the slab, by hand: 0.4 at both ends, no angle', () => {
    const { way, deviation } = attempt(strayed(upright, 0.4));
    expect(way).toBe('screen');
    for (const end of [deviation.coronal, deviation.apical]) {
      expect(end.faciopalatal).toBeCloseTo(0.4, 6);
      expect(end.mesiodistal).toBeCloseTo(0, 6);
      expect(end.depth).toBeCloseTo(0, 6);
    }
    expect(deviation.angle).toBeCloseTo(0, 6);
  });

  test('a hole in the planned axis to the last digit was put there; a thousandth of a millimetre off is a hand', () => {
    expect(screenAttempt(strayed(upright, 0))).toBe('put-there');
    expect(screenAttempt(strayed(slab, 0))).toBe('put-there');
    expect(attempt(strayed(upright, 1e-3)).deviation.apical.global).toBeCloseTo(1e-3, 6);
  });

  test('only the last drill counts: it may be put right by hand after the others', () => {
    const plan = strayed(upright, 0);
    const { rehearsal } = strayed(upright, 0.4);
    if (!rehearsal || !plan.rehearsal) throw new Error('nothing was rehearsed');
    const passes = [...plan.rehearsal.passes.slice(0, -1), ...rehearsal.passes.slice(-1)];
    expect(attempt({ ...plan, rehearsal: { ...rehearsal, passes } }).deviation.apical.global).toBeCloseTo(
      0.4,
      6,
    );
  });

  test('stepping back over the passes changes nothing', () => {
    const plan = strayed(upright, 0.4);
    const { rehearsal } = plan;
    if (!rehearsal) throw new Error('nothing was rehearsed');
    expect(screenAttempt({ ...plan, rehearsal: { ...rehearsal, shown: 1 } })).toEqual(screenAttempt(plan));
  });

  test('nothing drilled, a hole not finished, and a hand that a teacher dialled are no attempts', () => {
    expect(screenAttempt(upright)).toBe('no-hole');
    const plan = strayed(upright, 0.4);
    const { rehearsal } = plan;
    if (!rehearsal) throw new Error('nothing was rehearsed');
    const pilot = { ...rehearsal, passes: rehearsal.passes.slice(0, 1) };
    expect(rehearsal.passes.length).toBeGreaterThan(1);
    expect(screenAttempt({ ...plan, rehearsal: pilot })).toBe('not-last-drill');
    const dialled = { ...rehearsal, wander: { skid: 0.3, drift: 0 } };
    expect(screenAttempt({ ...plan, rehearsal: dialled })).toBe('dialled');
  });
});

describe('attempts on the machine', () => {
  const screen = attempt(strayed(upright, 0.4));
  const bench = { ...screen, way: 'bench' as const };

  test('come back as they were; what is none is left out', () => {
    const stored: unknown = JSON.parse(JSON.stringify([screen, bench]));
    expect(keptAttempts(stored)).toEqual(stored);
    const { deviation } = screen;
    const broken = [
      null,
      { way: 'guided', deviation },
      { way: 'bench' },
      { way: 'bench', deviation: { ...deviation, angle: null } },
      { way: 'bench', deviation: { ...deviation, apical: { ...deviation.apical, depth: 'x' } } },
    ];
    expect(keptAttempts([...broken, bench])).toHaveLength(1);
    expect(keptAttempts({})).toEqual([]);
  });

  test('the same attempt is known in its own way only; the newest of a way is taken back, the oldest is forgotten', () => {
    const other = attempt(strayed(upright, 0.1));
    expect(isKept([screen], screen)).toBe(true);
    expect(isKept([screen], bench)).toBe(false);
    expect(isKept([screen], other)).toBe(false);
    expect(withoutNewest([screen, other, bench], 'screen')).toEqual([screen, bench]);
    expect(withoutNewest([screen], 'bench')).toEqual([screen]);
    const many = Array.from({ length: MOST_ATTEMPTS }, () => screen);
    expect(withAttempt(many, bench)).toHaveLength(MOST_ATTEMPTS);
    expect(withAttempt(many, bench).at(-1)).toBe(bench);
  });
});
