import type { Page } from 'playwright-core';
import { expect, test } from '../support/browser.ts';
import { openPanels } from '../support/place.ts';

const box = async (page: Page, selector: string) => {
  const found = await page.locator(selector).boundingBox();
  if (!found) throw new Error(`${selector} is not on the page`);
  const { x, y, width, height } = found;
  return { x, y, width, height, right: x + width, bottom: y + height };
};

const overflow = (page: Page) =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth, scrollHeight, clientHeight } = document.documentElement;
    return { across: scrollWidth - clientWidth, down: scrollHeight - clientHeight };
  });

// Source of the sizes: the project's look, one drawing sheet of 1440 × 900.
test('at 1440 × 900 the sheet fits the window, at the sizes of the drawing', async ({ page }) => {
  await openPanels(page);
  expect(await overflow(page)).toEqual({ across: 0, down: 0 });
  expect((await box(page, '.header')).height).toBe(44);
  expect((await box(page, '.sentence')).height).toBe(54);
  expect((await box(page, '.panel-rail')).width).toBe(232);
  expect((await box(page, '.right')).width).toBe(531);
  expect((await box(page, '.panel-section')).width).toBe(295);
  expect((await box(page, '.pair')).height).toBe(470);
  expect((await box(page, '.title-block')).height).toBeCloseTo(66, 0);
});

test('from 1024 the fields go under the stage, and section and profile stay side by side', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1024, height: 768 });
  await openPanels(page);
  const [stage, rail] = [await box(page, '.panel-stage'), await box(page, '.panel-rail')];
  const [section, profile] = [await box(page, '.panel-section'), await box(page, '.panel-profile')];
  expect(rail.y).toBeGreaterThanOrEqual(stage.bottom - 1);
  expect(section.x).toBeGreaterThanOrEqual(stage.right - 1);
  expect(profile.y).toBe(section.y);
  expect((await overflow(page)).across).toBe(0);
});

test('from 720 everything stands in one column: stage, pair, fields, readings', async ({ page }) => {
  await page.setViewportSize({ width: 768, height: 1024 });
  await openPanels(page);
  const order = ['.panel-stage', '.pair', '.panel-rail', '.panel-readings'];
  const boxes = await Promise.all(order.map((selector) => box(page, selector)));
  for (let i = 1; i < boxes.length; i++) expect(boxes[i].y).toBeGreaterThanOrEqual(boxes[i - 1].bottom - 1);
  expect(boxes[0].height).toBeGreaterThanOrEqual(420);
  expect((await overflow(page)).across).toBe(0);
});

test('below 720 section and profile stand one above the other, and nothing sticks out', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openPanels(page);
  const [section, profile] = [await box(page, '.panel-section'), await box(page, '.panel-profile')];
  expect(profile.y).toBeGreaterThanOrEqual(section.bottom - 1);
  expect(profile.height).toBe(section.height);
  expect((await overflow(page)).across).toBe(0);
});
