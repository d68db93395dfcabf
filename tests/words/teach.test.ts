import { describe, expect, it } from 'vitest';
import { breaksOf } from '../../src/core/teaching/breaks.ts';
import { costOf } from '../../src/core/teaching/cost.ts';
import { mendingOf } from '../../src/core/teaching/mending.ts';
import { TRAJECTORIES } from '../../src/core/teaching/trajectories.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import {
  presentBreaks,
  presentCost,
  presentMending,
  presentSigns,
  sayEnds,
  sayGoneWrong,
  sayRule,
  sayTrajectory,
  sayWayBack,
} from '../../src/words/presentTeach.ts';

const [lateral, socket, , , slab] = DEMO_PLANS.map(({ plan }) => plan);

describe('bad trajectories in words', () => {
  it('say what went wrong, how it ends, and whose limit it is', () => {
    const cost = costOf(slab, 'facial-and-upright', 1);
    expect(sayGoneWrong(slab, cost)).toBe('Entered 0.8\u00A0mm too far facially, and 7.0° too upright.');
    expect(sayEnds(cost)).toMatch(/^It comes through the facial wall [\d.]+\u00A0mm below the entry\.$/);
    const shifted = costOf(slab, 'too-facial', 0.6);
    const row = presentCost(shifted, breaksOf(slab, 'too-facial')).find(({ id }) => id === 'facial-wall-1mm');
    // 2.0 − 1.2 by hand.
    expect(row).toMatchObject({
      mark: 'beyond',
      fromTo: '2.0 → 0.8\u00A0mm',
      note: 'misses ≥ 2.0 by 1.2\u00A0mm, 1.0\u00A0mm below the entry',
      breaks: 'beyond from 51\u00A0%',
    });
    expect(row?.by).toContain('Spray');
  });

  it('say so where it costs nothing', () => {
    expect(sayEnds(costOf(lateral, 'along-crown', 1))).toBe(
      'On this site it costs nothing: no reading loses its status.',
    );
    expect(sayGoneWrong(lateral, costOf(lateral, 'neck-turned', 1))).toMatch(/^A round neck/);
    expect(presentBreaks(breaksOf(lateral, 'along-crown'))).toEqual([
      { mark: 'none', text: 'nothing breaks up to 100 %' },
    ]);
  });

  it('leave no slot unfilled and no number unsaid, for every trajectory on two plans', () => {
    for (const plan of [socket, slab]) {
      for (const { id } of TRAJECTORIES) {
        const cost = costOf(plan, id, 0.8);
        const said = [
          sayTrajectory(id),
          sayGoneWrong(plan, cost),
          sayEnds(cost),
          sayWayBack(plan, cost.plan),
          ...cost.rules.map(sayRule),
          ...presentSigns(cost).flatMap(({ text, by }) => [text, by]),
          ...presentCost(cost, null).flatMap((row) => Object.values(row)),
          presentMending(plan, mendingOf(plan, id, 0.8)).text,
        ];
        expect(
          said.filter((text) => /[{}]|undefined|NaN|(^|\s)–(\s|$)/.test(text)),
          id,
        ).toEqual([]);
      }
    }
  });
});
