import type { Page } from 'playwright-core';
import { parsePlanFile } from '../../src/io/planFile.ts';
import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { digits, field, numberOf, openPanels, openPlace, savedPlan, type } from '../support/place.ts';

const press = async (page: Page, name: string) => {
  await page.getByRole('button', { name, exact: true }).click();
  await settled(page);
};

const planOf = async (page: Page) => {
  const read = parsePlanFile(await savedPlan(page));
  if (!read.ok) throw new Error('the saved plan cannot be read');
  return read.plan;
};

const undoName = (page: Page) => page.getByRole('button', { name: /^Undo/ }).textContent();

/** Waits until the advice belongs to the pose on the table. */
const advised = (page: Page) => page.locator('[data-advice="found"]').waitFor();

test('what is advised can be pressed, and does what it says', async ({ page }) => {
  await openPanels(page);
  await type(page, en['rail.shiftFName'], '0.3');
  await settled(page);
  await advised(page);
  const before = await digits(page);
  expect(await page.locator('[data-summary]').getAttribute('data-summary')).toBe('beyond');
  const first = page.locator('.advice').first();
  const words = (await first.textContent()) ?? '';
  const promised = /makes it (−?[\d.]+)/.exec(words)?.[1] ?? '';
  const line = (await page.locator('.sentence-drawn p').first().textContent()) ?? '';
  await first.click();
  await settled(page);
  expect(words.startsWith((await undoName(page))?.replace(/^Undo/, '') ?? '?')).toBe(true);
  const after = await digits(page);
  const mended = Object.keys(after).filter((id) => after[id] === promised && before[id] !== promised);
  expect(mended.length, `${line} ${words}`).toBeGreaterThan(0);
});

test('a pose is kept, compared with and changed over; the drawings show it', async ({ page }) => {
  await openPanels(page);
  const start = await planOf(page);
  await press(page, en['compare.keep']);
  expect(await page.locator('[data-compare="platform"] dd').textContent()).toBe('0.0\u00A0mm');
  const f = numberOf(await field(page, en['rail.shiftFName']).inputValue());
  await type(page, en['rail.shiftFName'], String(f + 0.6));
  await settled(page);
  // A pure shift moves platform and apex alike and turns nothing (rule F6).
  expect(await page.locator('[data-compare="platform"] dd').textContent()).toBe('0.6\u00A0mm');
  expect(await page.locator('[data-compare="apex"] dd').textContent()).toBe('0.6\u00A0mm');
  expect(await page.locator('[data-compare="angle"] dd').textContent()).toBe('0.0°');
  expect(await page.locator('[data-kept="facial"]').getAttribute('d')).not.toBe('');
  await press(page, en['compare.swap']);
  expect((await planOf(page)).pose).toEqual(start.pose);
  await press(page, en['compare.forget']);
  expect(await page.locator('main [data-kept]').count()).toBe(0);
});

test('a press brings the pose to the middle of the bone, to an axis, to the incisal line', async ({
  page,
}) => {
  await openPanels(page);
  await press(page, en['edit.snap.bone-faciopalatal']);
  expect(numberOf((await digits(page))['centring-crest'])).toBeCloseTo(0, 6);
  await press(page, en['edit.snap.crown-axis']);
  expect(numberOf((await digits(page))['axis-to-crown-total'])).toBeCloseTo(0, 6);
  await press(page, en['edit.snap.incisal-line']);
  expect(numberOf((await digits(page))['incisal-line-offset'])).toBeCloseTo(0, 6);
  expect(await undoName(page)).toBe(`Undo${en['edit.snap.incisal-line']}`);
});

test('the section runs either way through the axis, and across it at a depth', async ({ page }) => {
  await openPanels(page);
  const bone = () => page.locator('[data-section] [data-outline="bone"]').getAttribute('d');
  const facial = await bone();
  await press(page, en['section.mesiodistal']);
  const mesial = await bone();
  expect(mesial).not.toBe(facial);
  expect(await page.locator('[data-section] [data-line="root-mesial"]').count()).toBeLessThanOrEqual(1);
  await press(page, en['section.across']);
  const circle = page.locator('[data-outline="implant-across"] circle').first();
  const upper = Number(await circle.getAttribute('r'));
  await type(page, en['section.level'], '9');
  await settled(page);
  // The shape tapers toward its apex: smaller deeper down, by its own drawing.
  expect(Number(await circle.getAttribute('r'))).toBeLessThan(upper);
  await press(page, en['section.faciopalatal']);
  expect(await bone()).toBe(facial);
});

test('on the stage arrows shift or tilt, Page keys advance, and digits choose the view', async ({ page }) => {
  await openPlace(page);
  await page.getByRole('application', { name: en['stage.keys'] }).focus();
  const start = (await planOf(page)).pose;
  await page.getByRole('application', { name: en['stage.keys'] }).focus();
  await page.keyboard.press('ArrowRight');
  await settled(page);
  const shifted = (await planOf(page)).pose;
  // From mesial, facial is on the right.
  expect(shifted.platform.f - start.platform.f).toBeCloseTo(0.1, 9);
  expect(shifted.tilt).toEqual(start.tilt);
  await page.getByRole('application', { name: en['stage.keys'] }).focus();
  await page.keyboard.press('t');
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('s');
  await page.keyboard.press('PageDown');
  await settled(page);
  const tilted = (await planOf(page)).pose;
  expect(tilted.tilt.faciopalatal - start.tilt.faciopalatal).toBeCloseTo(0.1, 9);
  expect(tilted.platform.c).toBeLessThan(shifted.platform.c);
  const camera = await page.locator('.stage').getAttribute('data-camera');
  await page.getByRole('application', { name: en['stage.keys'] }).focus();
  await page.keyboard.press('3');
  await settled(page);
  expect(await page.locator('.stage').getAttribute('data-camera')).not.toBe(camera);
  expect(
    await page
      .getByRole('button', { name: en['stage.view.facial'], exact: true })
      .getAttribute('aria-pressed'),
  ).toBe('true');
});

test('a press on the model places the entry there, the axis kept', async ({ page }) => {
  await openPlace(page);
  const start = await planOf(page);
  await press(page, en['stage.place']);
  const box = await page.locator('.stage').boundingBox();
  const pivot = await page.locator('.pivot').getAttribute('d');
  const [, x, y] = /M([\d.]+) ([\d.]+)h12M/.exec(pivot ?? '') ?? [];
  await page.mouse.click((box?.x ?? 0) + Number(x) + 6 + 12, (box?.y ?? 0) + Number(y));
  await settled(page);
  const { pose } = await planOf(page);
  expect(pose.tilt).toEqual(start.pose.tilt);
  expect(pose.platform.c).toBe(start.pose.platform.c);
  expect(pose.platform.f).not.toBe(start.pose.platform.f);
  const [, now] = /M([\d.]+) ([\d.]+)h12M/.exec((await page.locator('.pivot').getAttribute('d')) ?? '') ?? [];
  // The pivot is the entry; it lies where the press was, to a pixel and a half.
  expect(Math.abs(Number(now) - (Number(x) + 12))).toBeLessThan(1.5);
});

test('a line of the section or the profile lights its reading; pressed, the reading is explained', async ({
  page,
}) => {
  await openPanels(page);
  for (const drawing of ['[data-wall-profile]', '[data-section]']) {
    const line = page.locator(`${drawing} [data-line="facial-wall-thinnest"]`);
    await line.locator('.tag').hover();
    await settled(page);
    expect(await page.locator('[data-section] .dimension-lit').count()).toBeGreaterThan(0);
    await line.locator('.tag').click();
    await settled(page);
    expect(await page.locator('#explain-facial-wall-thinnest').isVisible()).toBe(true);
  }
});
