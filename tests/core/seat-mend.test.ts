/**
 * Which tool takes away what stops an implant. Sources: the generic kit's own table (drills 2.0, 2.4, 2.8, 3.2, 3.6 … mm; the 3.0 to 3.5 mm cutter, 1.5 mm high, is
 * its first) against the shapes of the library, by hand.
 */
import { describe, expect, it } from 'vitest';
import { GENERIC_KIT } from '../../src/core/drilling/genericKit.ts';
import { drillingOf } from '../../src/core/plan/drilling.ts';
import { handOf, rehearsalOf } from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { seatNow, startSeating, turnIn } from '../../src/core/plan/seat.ts';
import { backOutAndTake, mendingTool } from '../../src/core/plan/seatMend.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { drilledAsPlanned } from '../support/drilled.ts';

const named = (name: string): Plan => {
  const found = DEMO_PLANS.find(({ plan }) => plan.implant.name === name);
  if (!found) throw new Error(`no demo has ${name}`);
  return found.plan;
};
const drill = (index: number) => ({ kind: 'drill', index });

describe('the tool that mends a stop', () => {
  const flared = named('tapered-flared-30x11');
  const straight = named('tapered-straight-35x11');

  it('cuts a flared neck with the cutter that fits it, made or not', () => {
    for (const neck of [true, false])
      expect(mendingTool(drilledAsPlanned(flared, neck), 'neck-uncut')).toEqual({ kind: 'neck', index: 0 });
  });

  it('has no cutter for a straight neck', () => {
    expect(mendingTool(drilledAsPlanned(straight), 'neck-uncut')).toBeNull();
  });

  it('deepens the hole with the last drill of the plan', () => {
    const last = drillingOf(straight)?.plan.last?.index ?? -1;
    expect(GENERIC_KIT.drills[last].diameter).toBe(3.2);
    expect(mendingTool(drilledAsPlanned(straight), 'hole-short')).toEqual(drill(last));
  });

  it('widens by the next drill, but never to the implant’s own width', () => {
    // 3.5 mm implanted: after 3.2 comes 3.6, too wide. 3.0 mm: after 2.4 comes 2.8.
    expect(mendingTool(drilledAsPlanned(straight), 'hard-bone')).toBeNull();
    expect(mendingTool(drilledAsPlanned(flared), 'hard-bone')).toEqual(drill(2));
  });

  it('is taken in the hand after backing out', () => {
    const turned = turnIn(startSeating(drilledAsPlanned(flared), 0), 'fingers', 720);
    const mended = backOutAndTake(turned, { kind: 'neck', index: 0 });
    expect(handOf(mended).tool).toEqual({ kind: 'neck', index: 0 });
    expect(rehearsalOf(mended).passes).toEqual(rehearsalOf(turned).passes);
    expect(seatNow(mended)?.state.phase).toBe('backed-out');
  });
});
