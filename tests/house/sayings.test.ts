import { describe, expect, it } from 'vitest';
import { READING_IDS } from '../../src/core/measure/reading.ts';
import { shift } from '../../src/core/plan/edits.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import { DEMO_PLANS, MEAN_PLANS } from '../../src/io/plans.ts';
import { en } from '../../src/words/en.ts';
import { presentSummary } from '../../src/words/presentSummary.ts';
import { sayAdvance, sayShift, sayTilt, sayTurn } from '../../src/words/sayEdit.ts';

describe('names of undo steps', () => {
  it('say what, how far and which way', () => {
    expect(sayShift(0, -0.2)).toBe('shift 0.2\u00A0mm palatally');
    expect(sayShift(0.37, 0)).toBe('shift 0.37\u00A0mm mesially');
    expect(sayShift(-0.1, 0.25)).toBe('shift 0.1\u00A0mm distally, 0.25\u00A0mm facially');
    expect(sayTilt(0, 1)).toBe('tilt 1.0° facially');
    expect(sayTilt(-2.5, 0)).toBe('tilt 2.5° distally');
    expect(sayAdvance(0.5)).toBe('advance 0.5\u00A0mm');
    expect(sayAdvance(-0.5)).toBe('draw back 0.5\u00A0mm');
    expect(sayTurn(-10)).toBe('turn 10.0° distally');
  });

  it('say no size where nothing moved', () => {
    expect(sayShift(0.001, 0)).toBe('shift');
    expect(sayAdvance(0)).toBe('advance');
    expect(sayTurn(0)).toBe('turn');
  });
});

describe('the sentence', () => {
  const plans = [...DEMO_PLANS, ...MEAN_PLANS].map(({ plan }) => plan);

  it('counts what the table shows, and names the worst of it', () => {
    for (const plan of plans) {
      for (const by of [0, 0.6, -1, 3]) {
        const evaluation = evaluate(shift(plan, 0, by));
        const beyond = evaluation.readings.filter(({ status }) => status === 'beyond');
        const near = evaluation.readings.filter(({ status }) => status === 'near');
        const { mark, lead, rest } = presentSummary(evaluation);
        expect(mark).toBe(beyond.length > 0 ? 'beyond' : near.length > 0 ? 'near' : 'within');
        const words = lead
          .toLowerCase()
          .replace('.', '')
          .split(/ (?:is|are) (?:beyond|near),? ?/);
        const count = (word: string) =>
          Number(
            Object.entries(en)
              .find(([key, value]) => key.startsWith('count.') && value === word)?.[0]
              .slice(6) ?? word,
          );
        expect(words.slice(0, 2).map(count)).toEqual([beyond.length, near.length]);
        const worst = mark === 'beyond' ? beyond : near;
        if (worst.length > 0) {
          expect(worst.some(({ id }) => rest.startsWith(en[`reading.${id}`]))).toBe(true);
        } else expect(rest).toBe(en['sentence.clear']);
      }
    }
  });

  it('fits one line of the sheet: at most 125 characters', () => {
    // Source: the project's look; 125 characters of the sentence's type are the sheet's width at 1440 px.
    const lengths = plans.map((plan) => {
      const { lead, rest } = presentSummary(evaluate(plan));
      return `${lead} ${rest}`.length;
    });
    expect(Math.max(...lengths)).toBeLessThanOrEqual(125);
  });
});

describe('the explanations', () => {
  it('say something of their own for every reading', () => {
    const texts = READING_IDS.map((id) => en[`about.${id}`]);
    expect(texts.every((text) => text.length > 30)).toBe(true);
    expect(new Set(texts).size).toBe(READING_IDS.length);
  });
});
