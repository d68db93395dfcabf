import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { field, openPlace } from '../support/place.ts';

const held = async (page: Parameters<typeof settled>[0]): Promise<number> =>
  Number(await page.locator('.stage').getAttribute('data-geometries'));

test('500 edits leave as many geometries with the graphics processor as there were', async ({ page }) => {
  await openPlace(page);
  const before = await held(page);
  expect(before).toBeGreaterThan(5);
  const input = field(page, en['rail.shiftFName']);
  await input.focus();
  await input.evaluate(async (element) => {
    for (let i = 0; i < 500; i++) {
      const key = i % 2 === 0 ? 'ArrowUp' : 'ArrowDown';
      element.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
      element.dispatchEvent(new KeyboardEvent('keyup', { key, bubbles: true }));
      if (i % 50 === 49) await new Promise(requestAnimationFrame);
    }
  });
  await settled(page);
  expect(await held(page)).toBe(before);
});

test('another shape takes the place of the last one', async ({ page }) => {
  await openPlace(page);
  const shape = page.locator('.panel-rail select').first();
  const values = await shape
    .locator('option')
    .evaluateAll((all) => all.map((o) => (o as HTMLOptionElement).value));
  const counts: number[] = [];
  for (const round of [0, 1, 2]) {
    for (const value of values.slice(0, 3)) {
      await shape.selectOption(value);
      await settled(page);
    }
    counts[round] = await held(page);
  }
  expect(counts).toEqual([counts[0], counts[0], counts[0]]);
});
