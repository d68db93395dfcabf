import type { Locator, Page } from 'playwright-core';
import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { countFrames, drawnCalls, frames } from '../support/frames.ts';
import { decode, type Pixels, type Rgb, shareChanged, shareOf } from '../support/pixels.ts';
import { digits, field, numberOf, openPlace, wallEdge } from '../support/place.ts';

/** Colours of the project's look: the paper the model stands on, bone in plaster, porcelain. */
const PAPER: Rgb = [0xf6, 0xf2, 0xe9];

const canvas = (page: Page) => page.locator('.stage canvas');
const camera = (page: Page) => page.locator('[data-camera]').getAttribute('data-camera');
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });

/** The stage as it is seen, the page scrolled to its top and no pointer over it. */
async function picture(page: Page): Promise<Pixels> {
  await page.evaluate(() => window.scrollTo(0, 0));
  await page.mouse.move(0, 0);
  await settled(page);
  // Its line may grow when it is found, and what stands below moves with it.
  await page.locator('[data-advice="found"]').waitFor();
  const browser = page.context().browser();
  if (!browser) throw new Error('the page has no browser');
  return decode(browser, await canvas(page).screenshot());
}

const middle = async (grip: Locator) => {
  const box = await grip.boundingBox();
  if (!box) throw new Error('the handle is not on the page');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

/** Everything that must move together: pose, table, wall profile, section. */
const state = async (page: Page) => ({
  facial: await field(page, en['rail.shiftFName']).inputValue(),
  digits: await digits(page),
  profile: await wallEdge(page, 'facial'),
  section: await page.locator('[data-section] [data-outline="bone"]').getAttribute('d'),
});

/** Takes the facial shift handle by its grip and carries it outward, `by` px along its own bar. */
async function carryShift(page: Page, by: number): Promise<void> {
  const knob = await middle(page.locator('[data-handle="shift"]'));
  const grip = await middle(page.locator('[data-handle="shift-f"]'));
  const length = Math.hypot(grip.x - knob.x, grip.y - knob.y);
  const way = { x: (grip.x - knob.x) / length, y: (grip.y - knob.y) / length };
  await page.mouse.move(grip.x, grip.y);
  await page.mouse.down();
  await page.mouse.move(grip.x + by * way.x, grip.y + by * way.y, { steps: 5 });
  await settled(page);
}

test('the model is drawn, and what the layers say is what is drawn', async ({ page }) => {
  await openPlace(page);
  const whole = await picture(page);
  // A blank canvas would be all paper; the model fills a good part of the stage and not all of it.
  expect(shareOf(whole, PAPER, 6)).toBeGreaterThan(0.2);
  expect(shareOf(whole, PAPER, 6)).toBeLessThan(0.85);
  await page.getByRole('button', { name: en['layer.gum'], exact: true }).click();
  await settled(page);
  const bare = await picture(page);
  expect(shareChanged(whole, bare, 12)).toBeGreaterThan(0.01);
  await page.getByRole('button', { name: en['layer.gum'], exact: true }).click();
  await settled(page);
  // One scene by one browser comes out alike; the camera's first rounding may move the edge of an ink line by a hundredth of a pixel,
  // which was seen to change 34 of 195,000 pixels by more than 4 of 255, none by more than 32.
  expect(shareChanged(whole, await picture(page), 4)).toBeLessThan(0.0005);
});

test('a dragged handle moves pose, table, profile, section and picture together; the camera stands still', async ({
  page,
}) => {
  await openPlace(page);
  const before = { ...(await state(page)), camera: await camera(page), picture: await picture(page) };

  await carryShift(page, 9);
  const during = await state(page);
  expect(during.facial).not.toBe(before.facial);
  expect(during.digits).not.toEqual(before.digits);
  expect(during.profile).not.toBe(before.profile);
  expect(during.section).not.toBe(before.section);
  expect(await camera(page)).toBe(before.camera);
  expect(numberOf(during.digits['facial-wall-3mm'])).toBeLessThan(numberOf(before.digits['facial-wall-3mm']));

  await page.mouse.up();
  await settled(page);
  expect(await state(page)).toEqual(during);
  expect(await camera(page)).toBe(before.camera);
  expect(shareChanged(before.picture, await picture(page), 24)).toBeGreaterThan(0.002);

  // One gesture, one step, named by its size.
  expect(await undo(page).textContent()).toMatch(/^Undoshift .*facially$/);
  await undo(page).click();
  await settled(page);
  expect(await state(page)).toEqual({
    facial: before.facial,
    digits: before.digits,
    profile: before.profile,
    section: before.section,
  });
  expect(await undo(page).isDisabled()).toBe(true);
});

test('Escape in the middle of a drag puts everything back', async ({ page }) => {
  await openPlace(page);
  const before = await state(page);
  await carryShift(page, 24);
  expect(await state(page)).not.toEqual(before);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await settled(page);
  expect(await state(page)).toEqual(before);
  expect(await undo(page).isDisabled()).toBe(true);
});

test('nothing is drawn while nothing changes', async ({ page }) => {
  await countFrames(page);
  await openPlace(page);
  // A frame that was asked for while the last one was drawn may still follow it.
  await frames(page, 20);
  const before = await drawnCalls(page);
  expect(before).toBeGreaterThan(0);
  await frames(page, 120);
  expect(await drawnCalls(page)).toBe(before);
});

test('a view turns the camera and nothing else', async ({ page }) => {
  await openPlace(page);
  const before = { ...(await state(page)), camera: await camera(page) };
  await page.locator('.panel-stage').getByRole('button', { name: 'facial', exact: true }).click();
  await expect.poll(() => camera(page)).not.toBe(before.camera);
  await settled(page);
  expect({ ...(await state(page)), camera: before.camera }).toEqual(before);
});

test('a reading in focus is lit on the stage, and a line on the stage is lit in the table', async ({
  page,
}) => {
  await openPlace(page);
  const row = page.locator('[data-reading="facial-wall-thinnest"]');
  const line = page.locator('.stage [data-line="facial-wall-thinnest"]').first();
  const dark = await line.innerHTML();
  await row.getByRole('button').focus();
  await settled(page);
  await expect.poll(() => line.innerHTML()).not.toBe(dark);
  await row.getByRole('button').blur();
  await settled(page);
  await page.locator('.stage [data-line="facial-wall-thinnest"] .tag').first().hover();
  await expect.poll(() => row.getAttribute('class')).toContain('reading-lit');
});

test('how the model is drawn can be chosen, and is remembered', async ({ page }) => {
  await openPlace(page);
  const setting = () => page.locator('.stage').getAttribute('data-setting');
  expect(await setting()).toBe('light');
  await page.getByLabel(en['title.drawing']).selectOption('full');
  await page.locator('.stage[data-setting="full"]').waitFor();
  expect(await page.evaluate(() => localStorage.getItem('ridgewright.session.1'))).toContain(
    '"drawing":"full"',
  );
});
