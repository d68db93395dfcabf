import { expect, test } from 'vitest';
import { checkReductions } from '../support/reductionCheck.ts';

test('over 300 plans what is ground off an abutment agrees with manifold-3d, within 0.1 mm³ and 2 %', async () => {
  const { rows, said } = await checkReductions(100);
  console.info(said);
  expect(rows.length).toBeGreaterThan(270);
  expect(rows.filter(({ palatal }) => palatal).length).toBeGreaterThan(50);
});
