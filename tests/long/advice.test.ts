import { expect, test } from 'vitest';
import { checkAdvice } from '../support/adviceCheck.ts';

test('over 500 poses with one broken limit, each edit mends it and breaks nothing, or none is offered', () => {
  const { mended, none } = checkAdvice(500);
  console.info(`advice: ${mended} mended, ${none} with nothing in reach`);
  expect(mended).toBeGreaterThan(none);
});
