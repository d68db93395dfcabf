/** Keeping the plan on the machine, in a real browser with its real database: reload, two tabs, no room, a tab killed in mid-gesture, a torn write. */
import type { Page } from 'playwright-core';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { en } from '../../src/words/en.ts';
import { expect, listen, openPage, settled, test } from '../support/browser.ts';
import { carry, gripOf, letGo } from '../support/drag.ts';
import {
  keptAs,
  openPanelsAt,
  planOn,
  reloaded,
  setFull,
  tearNewest,
  withLittleRoom,
} from '../support/keep.ts';
import { field, openPlace, type } from '../support/place.ts';

/** Two pages are opened, and a plan goes to and fro between them. */
const TWO_TABS = { timeout: 120_000 };

const SHIFT = en['rail.shiftFName'];
const undo = /^Undo/;
const word = (page: Page) => page.getByRole('banner').getByRole('status').first().textContent();

test('what was done is there after a reload, and undo begins anew', async ({ page }) => {
  await openPanelsAt(page);
  await keptAs(page, 'fresh');
  expect(await word(page)).toBe(en['kept.fresh']);
  await type(page, SHIFT, '0.3');
  await type(page, en['rail.tiltFpName'], '12');
  await keptAs(page, 'kept');
  expect(await word(page)).toBe(en['kept.kept']);
  const before = await planOn(page);
  await reloaded(page);
  expect(await planOn(page)).toEqual(before);
  expect(await page.getByRole('button', { name: undo }).isDisabled()).toBe(true);
  await keptAs(page, 'kept');
});

test('a plan that another took the place of can be laid on the table again, after a reload too', async ({
  page,
}) => {
  await openPanelsAt(page);
  await type(page, SHIFT, '0.3');
  await page.getByRole('button', { name: en['plans.open'] }).click();
  await page.getByRole('button', { name: DEMO_PLANS[1].plan.title }).click();
  await keptAs(page, 'kept');
  await reloaded(page);
  expect((await planOn(page)).title).toBe(DEMO_PLANS[1].plan.title);
  await page.getByRole('button', { name: en['plans.open'] }).click();
  const list = page.getByRole('list', { name: en['keep.recent'] });
  await list.getByRole('button').first().click();
  await settled(page);
  expect((await planOn(page)).title).toBe(DEMO_PLANS[0].plan.title);
  expect(await field(page, SHIFT).inputValue()).toBe('+0.3');
});

test(
  'a second tab only shows the plan; when the first has closed it may take over',
  TWO_TABS,
  async ({ page, context, complaints }) => {
    await openPanelsAt(page);
    await type(page, SHIFT, '0.3');
    await keptAs(page, 'kept');
    const second = await context.newPage();
    listen(second, complaints);
    await openPanelsAt(second);
    await keptAs(second, 'shown');
    expect(await second.getByRole('alert').textContent()).toContain(en['kept.shownNotice']);
    await type(second, SHIFT, '0.9');
    await settled(second);
    expect(await field(second, SHIFT).inputValue()).toBe('+0.3');

    await type(page, SHIFT, '0.5');
    await keptAs(page, 'kept');
    await page.close();
    await keptAs(second, 'free');
    await second.getByRole('button', { name: en['kept.takeOver'] }).click();
    await keptAs(second, 'kept');
    await settled(second);
    expect(await field(second, SHIFT).inputValue()).toBe('+0.5');
    await type(second, SHIFT, '0.9');
    await keptAs(second, 'kept');
    await reloaded(second);
    expect(await field(second, SHIFT).inputValue()).toBe('+0.9');
  },
);

test(
  'a second tab can be worked in while the first is open: what is finished there comes along, and that one only shows',
  TWO_TABS,
  async ({ page, context, complaints }) => {
    await openPanelsAt(page);
    await type(page, SHIFT, '0.3');
    await keptAs(page, 'kept');
    const second = await context.newPage();
    listen(second, complaints);
    await openPanelsAt(second);
    await keptAs(second, 'shown');
    // Not waited for: what is being kept when the other tab asks comes along.
    await type(page, SHIFT, '0.5');
    await second.getByRole('button', { name: en['kept.workHere'] }).click();
    await keptAs(second, 'kept');
    await settled(second);
    expect(await field(second, SHIFT).inputValue()).toBe('+0.5');
    await keptAs(page, 'shown');
    expect(await page.getByRole('alert').textContent()).toContain(en['kept.shownNotice']);
    await type(page, SHIFT, '0.9');
    await settled(page);
    expect(await field(page, SHIFT).inputValue()).toBe('+0.5');

    // And back again, with what was done in the second.
    await type(second, SHIFT, '0.7');
    await keptAs(second, 'kept');
    await page.getByRole('button', { name: en['kept.workHere'] }).click();
    await keptAs(page, 'kept');
    await keptAs(second, 'shown');
    await settled(page);
    expect(await field(page, SHIFT).inputValue()).toBe('+0.7');
    await type(page, SHIFT, '0.8');
    await keptAs(page, 'kept');
    await page.close();
    await keptAs(second, 'free');
  },
);

test(
  'a first tab that hears nothing has the plan taken from it',
  TWO_TABS,
  async ({ page, context, complaints }) => {
    // It is deaf to the other tab, as a stuck one is.
    await page.addInitScript(() => {
      Object.defineProperty(BroadcastChannel.prototype, 'onmessage', { set: () => undefined });
    });
    await openPanelsAt(page);
    await type(page, SHIFT, '0.3');
    await keptAs(page, 'kept');
    const second = await context.newPage();
    listen(second, complaints);
    await openPanelsAt(second);
    await second.getByRole('button', { name: en['kept.workHere'] }).click();
    await keptAs(second, 'kept');
    await keptAs(page, 'shown');
    await type(second, SHIFT, '0.6');
    await keptAs(second, 'kept');
    expect(await field(page, SHIFT).inputValue()).toBe('+0.3');
  },
);

test('where there is no room it says so and offers the file; with room again it goes on', async ({
  page,
}) => {
  await withLittleRoom(page);
  await openPanelsAt(page);
  await type(page, SHIFT, '0.3');
  await keptAs(page, 'kept');
  await setFull(page, true);
  await type(page, SHIFT, '0.4');
  await keptAs(page, 'full');
  expect(await word(page)).toBe(en['kept.full']);
  const alert = page.getByRole('alert');
  expect(await alert.textContent()).toContain(en['kept.fullNotice']);
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    alert.getByRole('button', { name: en['plans.save'] }).click(),
  ]);
  expect(file.suggestedFilename()).toMatch(/^ridgewright-\d\d\.json$/);
  // Saving tries to keep it once more.
  await keptAs(page, 'full');
  expect(await word(page)).toBe(en['kept.file']);
  await setFull(page, false);
  await type(page, SHIFT, '0.5');
  await keptAs(page, 'kept');
  expect(await alert.count()).toBe(0);
});

test('a tab killed in mid-gesture has lost no finished gesture', {
  timeout: 120_000,
}, async ({ page, context, complaints }) => {
  await openPlace(page);
  const grip = await gripOf(page);
  await carry(page, grip, 0, 2);
  await letGo(page, grip);
  await settled(page);
  await keptAs(page, 'kept');
  const finished = await field(page, SHIFT).inputValue();
  const next = await gripOf(page);
  await carry(page, next, 0, 2);
  await settled(page);
  expect(await field(page, SHIFT).inputValue()).not.toBe(finished);
  await page.close({ runBeforeUnload: false });

  const again = await context.newPage();
  listen(again, complaints);
  await openPanelsAt(again);
  expect(await field(again, SHIFT).inputValue()).toBe(finished);
});

test('a state that was not written to its end is passed over for the one before it', async ({ page }) => {
  await openPanelsAt(page);
  await type(page, SHIFT, '0.3');
  await keptAs(page, 'kept');
  await type(page, SHIFT, '0.4');
  await keptAs(page, 'kept');
  await tearNewest(page);
  await reloaded(page);
  expect(await field(page, SHIFT).inputValue()).toBe('+0.3');
  expect(await page.getByRole('alert').textContent()).toContain(en['kept.recovered']);
  await type(page, SHIFT, '0.6');
  await keptAs(page, 'kept');
  await reloaded(page);
  expect(await field(page, SHIFT).inputValue()).toBe('+0.6');
  expect(await page.getByRole('alert').count()).toBe(0);
});

test('where the browser has no database the page works and says that nothing is kept', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'indexedDB', { get: () => undefined });
  });
  await openPage(page);
  await type(page, SHIFT, '0.3');
  await keptAs(page, 'refused');
  expect(await page.getByRole('alert').textContent()).toContain(en['kept.refusedNotice']);
});
