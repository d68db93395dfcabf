import type { Page } from 'playwright-core';
import { expect, openBench, test } from '../support/browser.ts';

// Source of the keys and roles: the W3C's ARIA Authoring Practices, spinbutton pattern.
const field = (page: Page) => page.getByRole('spinbutton', { name: 'facial' });
const values = (page: Page) => page.locator('#values').textContent();

test('arrows step by 0.1, with Shift by 0.01, Page keys by 0.5', async ({ page }) => {
  await openBench(page, 'field');
  await field(page).focus();
  for (const key of [
    'ArrowUp',
    'ArrowUp',
    'Shift+ArrowDown',
    'PageUp',
    'PageDown',
    'PageDown',
    'ArrowDown',
  ]) {
    await page.keyboard.press(key);
  }
  expect(await values(page)).toBe('0 0.1 0.2 0.19 0.69 0.19 -0.31 -0.41');
  expect(await field(page).inputValue()).toBe('\u22120.41');
  expect(await field(page).getAttribute('aria-valuetext')).toBe('\u22120.41\u00A0mm');
  expect(await field(page).getAttribute('aria-valuenow')).toBe('-0.41');
});

test('both buttons do it with single clicks, and stop at the range', async ({ page }) => {
  await openBench(page, 'field');
  await page.getByRole('button', { name: 'facial: more' }).click();
  await page.getByRole('button', { name: 'facial: less' }).click();
  await page.getByRole('button', { name: 'facial: less' }).click({ modifiers: ['Shift'] });
  expect(await values(page)).toBe('0 0.1 0 -0.01');
  await field(page).fill('5.95');
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  expect(await values(page)).toBe('0 0.1 0 -0.01 5.95 6');
});

test('a comma or a point, Enter or leaving the field: all commit', async ({ page }) => {
  await openBench(page, 'field');
  await field(page).fill('1,25');
  await page.keyboard.press('Enter');
  await field(page).fill('\u22122.5 mm');
  await field(page).blur();
  expect(await values(page)).toBe('0 1.25 -2.5');
});

test('Escape brings the old value back', async ({ page }) => {
  await openBench(page, 'field');
  await field(page).fill('3');
  await page.keyboard.press('Escape');
  expect(await field(page).inputValue()).toBe('0.0');
  await field(page).blur();
  expect(await values(page)).toBe('0');
});

test.for([
  ['1e3', '“1e3” is not a number. The value stays 0.0\u00A0mm.'],
  ['', '“” is not a number. The value stays 0.0\u00A0mm.'],
  ['7', '+7.0\u00A0mm is outside \u22126.0\u00A0mm to +6.0\u00A0mm. The value stays 0.0\u00A0mm.'],
])('bad text keeps the old value and says so: “%s”', async ([text, message], { page }) => {
  await openBench(page, 'field');
  await field(page).fill(text);
  await page.keyboard.press('Enter');
  expect(await values(page)).toBe('0');
  expect(await field(page).inputValue()).toBe('0.0');
  const described = await field(page).getAttribute('aria-describedby');
  expect(await page.locator(`[id="${described}"]`).textContent()).toBe(message);
  expect(await field(page).getAttribute('aria-invalid')).toBe('true');
  await page.keyboard.press('ArrowUp');
  expect(await field(page).getAttribute('aria-invalid')).toBe('false');
});

test('a held arrow key is one gesture', async ({ page }) => {
  await openBench(page, 'field');
  await field(page).focus();
  for (let i = 0; i < 5; i++) await page.keyboard.down('ArrowUp');
  await page.keyboard.up('ArrowUp');
  expect(await values(page)).toBe('0 0.1 0.2 0.3 0.4 0.5');
  expect(await page.locator('#holds').textContent()).toBe('begin end');
});

test.for([
  [false, 24],
  [true, 44],
] as const)('buttons are large enough to hit (touch: %s)', async ([hasTouch, least], { browser }) => {
  const context = await browser.newContext({ hasTouch, isMobile: hasTouch });
  const page = await context.newPage();
  await openBench(page, 'field');
  // Source: WCAG 2.2, 2.5.8 (24 px) and 2.5.5 (44 px).
  for (const button of await page.getByRole('button').all()) {
    const box = await button.boundingBox();
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(least);
  }
  await context.close();
});
