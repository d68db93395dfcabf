import { describe, expect, test } from 'vitest';
import { advise } from '../../src/core/plan/advice.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import { checkAdvice } from '../support/adviceCheck.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';

describe('advice', () => {
  test('each edit mends the one broken limit and breaks nothing, or none is offered', () => {
    // 500 poses in the long run.
    const { mended, none } = checkAdvice(50);
    expect(mended).toBeGreaterThan(none);
  });

  test('where nothing is near or beyond there is nothing to mend', () => {
    for (const { plan } of SITES_DEMO) {
      const { findings } = evaluate(plan);
      if (findings.length === 0) expect(advise(plan)).toEqual({ worst: null, advice: [] });
    }
  });
});
