import { describe, expect, it } from 'vitest';
import { shift } from '../../src/core/plan/edits.ts';
import { drillPoseOf } from '../../src/core/plan/inHand.ts';
import { handSpread } from '../../src/core/spread/hand.ts';
import { benchCheck, callipersAt } from '../../src/core/teaching/bench.ts';
import { breaksOf } from '../../src/core/teaching/breaks.ts';
import { costOf } from '../../src/core/teaching/cost.ts';
import { guessSummaries } from '../../src/core/teaching/guesses.ts';
import { mendingOf } from '../../src/core/teaching/mending.ts';
import { TRAJECTORIES } from '../../src/core/teaching/trajectories.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { presentBench, presentGuesses, presentHand } from '../../src/words/presentBench.ts';
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

describe('bench, hand and guesses in words', () => {
  const places = (['facial', 'palatal'] as const).flatMap((kind) =>
    [2, 5, 8].map((depth) => ({ kind, depth })),
  );
  const line = drillPoseOf(shift(slab, 0, 0.5).pose);
  const exact = callipersAt(slab, 2.8, places, line) ?? [];

  it('say each measure with how sure it is, and what was taken as planned', () => {
    const callipers = places.map((place, i) => ({ ...place, value: exact[i] }));
    const check = benchCheck(slab, { diameter: 2.8, callipers, depth: null, sd: 0.1 });
    if (typeof check === 'string') throw new Error(check);
    const { rows, notes } = presentBench(check, places);
    expect(rows.find(({ id }) => id === 'platform-faciopalatal')?.text).toBe(
      'Platform, facially (+) or palatally: +0.5\u00A0mm ± 0.1\u00A0mm',
    );
    expect(notes).toHaveLength(2);
    const { deviation } = check;
    const hand = presentHand(handSpread([{ way: 'bench', deviation }], 'bench'), 'bench');
    expect(hand.count).toContain('too few');
    expect(hand.rows).toHaveLength(9);
  });

  it('name the reading that fits worst', () => {
    const callipers = places.map((place, i) => ({ ...place, value: exact[i] + (i === 1 ? 1 : 0) }));
    const check = benchCheck(slab, { diameter: 2.8, callipers, depth: null, sd: 0.1 });
    if (typeof check === 'string') throw new Error(check);
    expect(presentBench(check, places).notes[0]).toContain(
      'Hole to the facial surface, 5.0\u00A0mm below the edge',
    );
  });

  it('say the errors of guesses as size, mean and spread', () => {
    const guesses = [1, 3, -1].map((off) => ({ kind: 'lean' as const, guessed: 5 + off, found: 5 }));
    const [row] = presentGuesses(guessSummaries(guesses), () => 'deg');
    // By hand: mean 1, SD 2, mean size 5/3.
    expect(row.text).toBe('Lean off the planned axis: off by 1.7° on the whole, +1.0° ± 2.0° (3 guesses)');
  });
});
