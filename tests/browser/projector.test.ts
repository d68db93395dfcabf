import type { Page } from 'playwright-core';
import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { openPanels, openPlace } from '../support/place.ts';

const word = (page: Page) => page.getByRole('button', { name: en['header.fullScreen'], exact: true });
const large = (page: Page) => page.evaluate(() => 'projector' in document.documentElement.dataset);
/** Waits until the full screen is left and the page has heard of it. */
const left = (page: Page) =>
  page.waitForFunction(
    () => document.fullscreenElement === null && !('projector' in document.documentElement.dataset),
  );
const full = (page: Page) => page.evaluate(() => document.fullscreenElement !== null);
const size = (page: Page, selector: string) =>
  page
    .locator(selector)
    .first()
    .evaluate((one) => Number.parseFloat(getComputedStyle(one).fontSize));

/** What must be read from the back row. Source: the project's own table of type, px. */
const SIZES = [
  ['.sentence-drawn p', 27],
  ['.reading > .reading-value', 21],
  ['.reading button', 21],
  ['.stage .tag-line .tag-number', 24],
] as const;

test('full screen enlarges the type and leaves scale and sheet to the desk; leaving it puts all back', async ({
  page,
}) => {
  await openPlace(page);
  const sizes = () => Promise.all(SIZES.map(([selector]) => size(page, selector)));
  const cells = () =>
    page.locator('.title-cell').evaluateAll((all) => all.map((one) => one.checkVisibility()));
  const desk = await sizes();
  for (const [i, [, large]] of SIZES.entries()) expect(desk[i]).toBeLessThan(large - 4);
  expect(await cells()).toEqual([true, true, true, true, true]);
  await word(page).click();
  await page.waitForFunction(() => document.fullscreenElement !== null);
  await settled(page);
  expect(await large(page)).toBe(true);
  expect(await word(page).getAttribute('aria-pressed')).toBe('true');
  expect(await sizes()).toEqual(SIZES.map(([, large]) => large));
  expect(await cells()).toEqual([true, true, false, true, false]);
  await page.evaluate(() => document.exitFullscreen());
  await left(page);
  await settled(page);
  expect(await large(page)).toBe(false);
  expect(await sizes()).toEqual(desk);
  expect(await cells()).toEqual([true, true, true, true, true]);
});

test('a second press leaves full screen', async ({ page }) => {
  await openPanels(page);
  await word(page).click();
  await page.waitForFunction(() => document.fullscreenElement !== null);
  await word(page).click();
  await left(page);
  expect(await large(page)).toBe(false);
});

test.for(['absent', 'refused'] as const)(
  'where full screen is %s the page is large in its window, and Escape ends it',
  async (how, { page }) => {
    await page.addInitScript((kind) => {
      const refuse = () => Promise.reject(new TypeError('refused'));
      Object.defineProperty(Element.prototype, 'requestFullscreen', {
        value: kind === 'absent' ? undefined : refuse,
      });
    }, how);
    await openPanels(page);
    await word(page).click();
    expect([await large(page), await full(page)]).toEqual([true, false]);
    // A menu that is open is put away first.
    await page.getByRole('button', { name: en['plans.open'], exact: true }).click();
    await page.keyboard.press('Escape');
    expect(await page.getByRole('dialog').count()).toBe(0);
    expect(await large(page)).toBe(true);
    await page.keyboard.press('Escape');
    expect(await large(page)).toBe(false);
  },
);

test.for([
  [1024, 768],
  [1440, 900],
  [1920, 1080],
] as const)(
  'at %i × %i nothing large is cut off or pushes the page wider or longer',
  async ([width, height], { page }) => {
    await page.setViewportSize({ width, height });
    await openPanels(page);
    await word(page).click();
    await settled(page);
    const over = await page.evaluate(() => {
      const { scrollWidth, scrollHeight, clientWidth, clientHeight } = document.documentElement;
      const wide = (one: Element) => one.scrollWidth > one.clientWidth + 1;
      const high = (one: Element) => one.scrollHeight > one.clientHeight + 1;
      const all = (selector: string) => [...document.querySelectorAll(selector)];
      const cut = [
        ...all('.field-label, .section-words').filter(wide),
        ...all('.sentence, .header, .title-cell').filter((one) => wide(one) || high(one)),
      ].map((one) => one.textContent);
      return { wider: scrollWidth - clientWidth, longer: scrollHeight - clientHeight, cut };
    });
    // A low window scrolls, as it does at the desk.
    expect(over).toEqual({ wider: 0, longer: height < 900 ? over.longer : 0, cut: [] });
  },
);
