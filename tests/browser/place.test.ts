import { DEMO_PLANS } from '../../src/io/plans.ts';
import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { keptAs } from '../support/keep.ts';
import {
  commandLine,
  digits,
  field,
  numberOf,
  openPanels,
  savedPlan,
  type,
  wallEdge,
} from '../support/place.ts';

const undo = { name: /^Undo/ };

test('opens on the first scenario', async ({ page }) => {
  await openPanels(page);
  expect(await page.locator('.title-block').textContent()).toContain(DEMO_PLANS[0].plan.title);
});

test('a typed number moves the pose, the table and the wall profile; undo brings all back', async ({
  page,
}) => {
  await openPanels(page);
  const before = { digits: await digits(page), facial: await wallEdge(page, 'facial') };
  await field(page, en['rail.shiftFName']).focus();
  await page.keyboard.press('PageUp');
  await settled(page);
  const after = await digits(page);
  // Half a millimetre facially thins the facial wall and thickens the palatal one: elementary geometry.
  expect(numberOf(after['facial-wall-3mm'])).toBeLessThan(numberOf(before.digits['facial-wall-3mm']));
  expect(numberOf(after['palatal-wall-3mm'])).toBeGreaterThan(numberOf(before.digits['palatal-wall-3mm']));
  expect(await wallEdge(page, 'facial')).not.toBe(before.facial);
  expect(await page.getByRole('button', undo).textContent()).toBe('Undoshift 0.5\u00A0mm facially');
  await page.getByRole('button', undo).click();
  await settled(page);
  expect(await digits(page)).toEqual(before.digits);
  expect(await wallEdge(page, 'facial')).toBe(before.facial);
});

test('every degree of freedom has its field, and keeps to its own part of the pose', async ({ page }) => {
  await openPanels(page);
  const names = [
    en['rail.shiftMName'],
    en['rail.shiftFName'],
    en['rail.tiltFpName'],
    en['rail.tiltMdName'],
    en['rail.shoulderName'],
    en['rail.markName'],
  ];
  const values = () => Promise.all(names.map((name) => field(page, name).inputValue()));
  const start = await values();
  for (const [i, name] of names.entries()) {
    await type(page, name, '2.5');
    const now = await values();
    expect(now[i]).toBe('+2.5');
    // About the entry a tilt leaves shift and turn alone; its shoulder level follows the axis (rule F6).
    const others = now.filter((_, j) => j !== i && names[j] !== en['rail.shoulderName']);
    expect(others).toEqual(start.filter((_, j) => j !== i && names[j] !== en['rail.shoulderName']));
    await page.getByRole('button', undo).click();
    expect(await values()).toEqual(start);
  }
});

test('a tilt about the apex moves the entry, not the apex', async ({ page }) => {
  await openPanels(page);
  await page.getByLabel(en['rail.pivot']).selectOption('apex');
  const shift = await field(page, en['rail.shiftFName']).inputValue();
  await field(page, en['rail.tiltFpName']).focus();
  await page.keyboard.press('PageDown');
  expect(await field(page, en['rail.shiftFName']).inputValue()).not.toBe(shift);
});

test('a held key is one step, named by its whole size; the spoken sentence waits for its end', async ({
  page,
}) => {
  await openPanels(page);
  const spoken = page.getByRole('status', { name: en['sentence.label'] });
  const before = await spoken.textContent();
  await field(page, en['rail.shiftFName']).focus();
  for (let i = 0; i < 6; i++) await page.keyboard.down('ArrowUp');
  const held = await spoken.textContent();
  const drawn = await page.locator('[data-summary] p').first().textContent();
  await page.keyboard.up('ArrowUp');
  // The first press is a step of its own; what is held after it is the gesture.
  expect(await page.getByRole('button', undo).textContent()).toBe('Undoshift 0.5\u00A0mm facially');
  expect(held).not.toBe(await spoken.textContent());
  expect(await spoken.textContent()).toBe(drawn);
  expect(before).not.toBe(drawn);
});

test('the numbers are those of the command line, digit for digit', async ({ page }) => {
  await openPanels(page);
  await type(page, en['rail.shiftFName'], '-0.37');
  await type(page, en['rail.tiltMdName'], '1.3');
  await settled(page);
  const shown = await digits(page);
  const printed = (await commandLine(await savedPlan(page))).filter(({ shown }) => shown !== undefined);
  expect(printed.length).toBeGreaterThan(40);
  expect(shown).toEqual(Object.fromEntries(printed.map(({ id, shown }) => [id, shown])));
  const words = new Map(printed.map(({ id, status }) => [id, status]));
  for (const row of await page.locator('[data-reading]').all()) {
    const mark = await row.getAttribute('data-status');
    const status = words.get((await row.getAttribute('data-reading')) ?? '');
    expect(mark).toBe(status === null || status === 'not-applicable' ? 'none' : status);
  }
});

test('plans are opened from the list, as one step that undo takes back', async ({ page }) => {
  await openPanels(page);
  const before = await digits(page);
  await page.getByRole('button', { name: en['plans.open'], exact: true }).click();
  await page.locator(`[data-plan="${DEMO_PLANS[1].id}"]`).click();
  await settled(page);
  expect(await page.locator('.title-block').textContent()).toContain(DEMO_PLANS[1].plan.title);
  await keptAs(page, 'kept');
  expect(await page.locator('[data-void]').count()).toBeGreaterThan(0);
  await page.getByRole('button', undo).click();
  await settled(page);
  expect(await digits(page)).toEqual(before);
});

test('another shape and another fixing are steps too', async ({ page }) => {
  await openPanels(page);
  const before = await digits(page);
  await page.getByLabel(en['rail.shape'], { exact: true }).selectOption('tapered-straight-45x13');
  await page.getByLabel(en['rail.fixing']).selectOption('screw-bone');
  expect(await digits(page)).not.toEqual(before);
  expect(
    await page.locator('[data-reading="shoulder-to-gum-margin"] .reading-limit').textContent(),
  ).toContain('3.0 to 4.0');
  await page.getByRole('button', undo).click();
  await page.getByRole('button', undo).click();
  expect(await digits(page)).toEqual(before);
});

test('a plan that was saved comes back from its file', async ({ page }) => {
  await openPanels(page);
  await type(page, en['rail.shiftMName'], '0.45');
  const [shown, text] = [await digits(page), await savedPlan(page)];
  await type(page, en['rail.shiftMName'], '-2');
  await page.locator('input[type="file"]').setInputFiles({
    name: 'mine.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
  await expect.poll(() => digits(page)).toEqual(shown);
  expect(await page.getByRole('alert').count()).toBe(0);
});

test.for([
  ['not JSON', '{', 'is not JSON'],
  ['of a later version', '{"format":"ridgewright-plan","version":99}', 'file version 99'],
  ['of another kind', '{"format":"else"}', 'not a plan'],
  ['too large', `"${'x'.repeat(300_000)}"`, 'too large'],
])('a file that is %s is refused in plain words, and nothing is lost', async ([, text, words], { page }) => {
  await openPanels(page);
  await type(page, en['rail.shiftMName'], '0.45');
  const before = await digits(page);
  await page.locator('input[type="file"]').setInputFiles({
    name: 'bad.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
  const alert = page.getByRole('alert');
  await alert.waitFor();
  const said = await alert.textContent();
  expect(said).toContain('bad.json');
  expect(said).toContain(words);
  expect(await digits(page)).toEqual(before);
  expect(await page.getByRole('button', undo).textContent()).toContain('shift');
  await alert.getByRole('button', { name: en['plans.dismiss'] }).click();
  expect(await alert.count()).toBe(0);
});

test('a reading under the pointer lights its line; pressed, it says what it is and whose limit it has', async ({
  page,
}) => {
  await openPanels(page);
  const row = page.locator('[data-reading="facial-wall-thinnest"]');
  const line = page.locator('[data-section] [data-line="facial-wall-thinnest"] > .dimension');
  expect(await line.getAttribute('class')).toBe('dimension');
  await row.hover();
  expect(await line.getAttribute('class')).toContain('dimension-lit');
  await page.mouse.move(0, 0);
  expect(await line.getAttribute('class')).toBe('dimension');
  await row.getByRole('button').click();
  await page.mouse.move(0, 0);
  expect(await line.getAttribute('class')).toContain('dimension-lit');
  const text = await page.locator('#explain-facial-wall-thinnest').textContent();
  expect(text).toContain(en['about.facial-wall-thinnest']);
  expect(text).toContain(en['readings.source']);
  await row.getByRole('button').click();
  expect(await page.locator('.explanation').count()).toBe(0);
});

test('the table is walked by arrow keys, and one Tab goes past it', async ({ page }) => {
  await openPanels(page);
  const rows = page.locator('[data-reading] button');
  await rows.first().focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  const third = await page.locator('[data-reading]').nth(2).getAttribute('data-reading');
  const focused = () =>
    page.evaluate(() => document.activeElement?.closest('[data-reading]')?.getAttribute('data-reading'));
  expect(await focused()).toBe(third);
  await page.keyboard.press('Enter');
  expect(await rows.nth(2).getAttribute('aria-expanded')).toBe('true');
  await page.keyboard.press('End');
  expect(await focused()).toBe(await page.locator('[data-reading]').last().getAttribute('data-reading'));
  await page.keyboard.press('Tab');
  expect(await focused()).toBeUndefined();
});

test('without WebGL fields, section, profile and table still work', async ({ page }) => {
  await openPanels(page);
  expect(await page.getByText(en['stage.noGraphics']).isVisible()).toBe(true);
  const before = { digits: await digits(page), edge: await wallEdge(page, 'palatal') };
  const bone = () => page.locator('[data-section] [data-outline="bone"]').getAttribute('d');
  const outline = await bone();
  await page.getByRole('button', { name: `${en['rail.shiftFName']}: less` }).click();
  await settled(page);
  expect(await digits(page)).not.toEqual(before.digits);
  expect(await wallEdge(page, 'palatal')).not.toBe(before.edge);
  expect(await bone()).not.toBe(outline);
});

test('layers are words that stay pressed over a reload', async ({ page }) => {
  await openPanels(page);
  await page.getByRole('button', { name: en['layer.lines'], exact: true }).click();
  await page.getByRole('button', { name: en['layer.bone.translucent'], exact: true }).click();
  expect(await page.locator('[data-section] .dimension').count()).toBe(0);
  const kept = await page.evaluate(() => localStorage.getItem('ridgewright.session.1'));
  expect(JSON.parse(kept ?? '')).toMatchObject({ bone: 'translucent', layers: { lines: false } });
});
