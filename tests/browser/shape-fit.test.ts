import { IMPLANT_LIBRARY } from '../../src/core/implant/library.ts';
import { loweredCrest } from '../../src/core/plan/loweredCrest.ts';
import { parsePlanFile } from '../../src/io/planFile.ts';
import { en } from '../../src/words/en.ts';
import { presentLoweredCrest } from '../../src/words/presentLoweredCrest.ts';
import { presentShape } from '../../src/words/presentShape.ts';
import { axeFindings, withAxe } from '../support/axe.ts';
import { expect, settled, test } from '../support/browser.ts';
import { digits, openPanels, savedPlan } from '../support/place.ts';

test('shapes come with what holds them back; a press puts one on the table as one step', async ({ page }) => {
  await withAxe(page);
  await openPanels(page);
  const before = parsePlanFile(await savedPlan(page));
  if (!before.ok) throw new Error('the saved plan cannot be read');
  await page.getByRole('button', { name: en['fit.open'], exact: true }).focus();
  await page.keyboard.press('Enter');
  const [, shape] = IMPLANT_LIBRARY;
  const row = page.locator(`[data-fit="${shape.name}"]`);
  await row.waitFor();
  const lowered = loweredCrest(before.plan.site);
  expect(await page.locator('[data-lowered-crest]').textContent()).toBe(
    lowered ? presentLoweredCrest(lowered) : '',
  );
  expect(await axeFindings(page, '.fit-menu')).toEqual([]);
  // Looking moves nothing.
  expect(await page.getByRole('button', { name: /^Undo/ }).isDisabled()).toBe(true);

  const [, , , label, value] = await row.locator('th, td').allTextContents();
  const status = await row.getAttribute('data-status');
  await row.getByRole('button').focus();
  await page.keyboard.press('Enter');
  await settled(page);
  expect(await page.locator('.fit-menu').isVisible()).toBe(false);
  expect(await page.getByRole('button', { name: /^Undo/ }).textContent()).toBe(
    `Undo${en['edit.fit'].replace('{shape}', presentShape(shape))}`,
  );
  const [id] = Object.entries(en).find(([key, text]) => key.startsWith('reading.') && text === label) ?? [''];
  const reading = id.replace('reading.', '');
  expect(value?.startsWith((await digits(page))[reading] ?? '?')).toBe(true);
  expect(await page.locator(`[data-reading="${reading}"]`).getAttribute('data-status')).toBe(status);

  await page.getByRole('button', { name: /^Undo/ }).click();
  const after = parsePlanFile(await savedPlan(page));
  expect(after).toEqual(before);
});
