import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { field, openPlace } from '../support/place.ts';

const held = async (page: Parameters<typeof settled>[0]): Promise<number> =>
  Number(await page.locator('.stage').getAttribute('data-geometries'));

/** What the graphics processor holds. */
const memory = (page: Parameters<typeof settled>[0]) =>
  page.locator('.stage').evaluate((stage) => {
    const { geometries, textures } = (stage as HTMLElement).dataset;
    return { geometries: Number(geometries), textures: Number(textures) };
  });

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

/** Numbers of the site that change its ridge, its gum, and where its teeth stand and how wide they are. */
const SITE_FIELDS = ['ridge.widths.1.facial', 'ridge.inclination', 'gum.crest', 'gap', 'mesial.crownWidth'];

test('500 edits of the site leave as many geometries and textures as there were', {
  timeout: 240_000,
}, async ({ page }) => {
  await openPlace(page);
  await page.getByRole('button', { name: en['place.site'], exact: true }).click();
  await page.locator('[data-site-field="gap"]').waitFor();
  for (const path of SITE_FIELDS) {
    const closed = page
      .locator('details:not([open])')
      .filter({ has: page.locator(`[data-site-field="${path}"]`) });
    if ((await closed.count()) > 0) await closed.locator('summary').click();
  }
  await settled(page);
  const before = await memory(page);
  for (const path of SITE_FIELDS) {
    const input = page.locator(`[data-site-field="${path}"] input`);
    const typed = await input.inputValue();
    // Twenty steps up, forty down, forty up: each a finished edit, with a frame after every tenth.
    await input.evaluate(async (element) => {
      for (let i = 0; i < 100; i++) {
        const key = i < 20 || i >= 60 ? 'ArrowUp' : 'ArrowDown';
        element.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
        element.dispatchEvent(new KeyboardEvent('keyup', { key, bubbles: true }));
        await Promise.resolve();
        if (i % 10 === 9) await new Promise(requestAnimationFrame);
      }
    });
    await settled(page);
    expect(await input.inputValue()).not.toBe(typed);
    expect(await memory(page)).toEqual(before);
  }
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
