/** The order of drilling carried out in one press, against the same order stepped through tool by tool. */
import { describe, expect, it } from 'vitest';
import { drilledAsPlanned } from '../../src/core/plan/drillAsPlanned.ts';
import { drillingOf } from '../../src/core/plan/drilling.ts';
import { passesShown, rehearsalOf } from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { setWander } from '../../src/core/plan/rehearse.ts';
import { seatNow } from '../../src/core/plan/seat.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { rehearsed } from '../support/rehearsed.ts';

const done = (plan: Plan): Plan => {
  const drilled = drilledAsPlanned(plan);
  if (!drilled) throw new Error('nothing to drill');
  return drilled;
};

describe.each(DEMO_PLANS.map(({ plan }) => [plan.title, plan] as const))('%s', (_, plan) => {
  it('leaves the passes that a hand leaves which makes every step as planned, and a hole to seat in', () => {
    const drilled = done(plan);
    expect(passesShown(drilled)).toEqual(passesShown(rehearsed({ ...plan, rehearsal: null })));
    // By hand: every tool of the order has been as deep as its deepest step.
    for (const { tool, depth } of drillingOf(plan)?.plan.steps ?? []) {
      if (!tool) continue;
      const pass = passesShown(drilled).find(({ tool: t }) => t.kind === tool.kind && t.index === tool.index);
      expect(pass?.depth).toBeGreaterThanOrEqual(depth);
    }
    expect(seatNow(plan)).toBeNull();
    expect(seatNow(drilled)?.state.phase).toBe('before');
  });

  it('begins anew, and what a teacher has dialled in stays dialled in without touching it', () => {
    const wander = { skid: 0.5, drift: 0.5 };
    const again = done(setWander(done(plan), wander));
    expect(passesShown(again)).toEqual(passesShown(done(plan)));
    expect(rehearsalOf(again).wander).toEqual(wander);
  });
});

it('is not there where the axis meets no bone', () => {
  const [{ plan }] = DEMO_PLANS;
  const platform = { ...plan.pose.platform, f: 60 };
  expect(drilledAsPlanned({ ...plan, pose: { ...plan.pose, platform } })).toBeNull();
});
