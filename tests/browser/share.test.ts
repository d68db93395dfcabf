/** A plan by link, by code and by drop, in a real browser. The code is read off the screen by jsQR. */
import jsQR from 'jsqr';
import type { Page } from 'playwright-core';
import { inject } from 'vitest';
import { wordless } from '../../src/core/plan/wordless.ts';
import { planHash } from '../../src/io/link/planLink.ts';
import { printPlanFile } from '../../src/io/planFile.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { dropFile, keptAs, openPanelsAt, planOn, reloaded } from '../support/keep.ts';
import { decode } from '../support/pixels.ts';
import { field, type } from '../support/place.ts';

const [{ plan: FIRST }, { plan: OTHER }] = DEMO_PLANS;
const LINKED = `#${planHash(OTHER)}`;
const alerts = (page: Page) => page.getByRole('alert');

async function openShare(page: Page): Promise<string> {
  await page.getByRole('button', { name: en['plans.open'] }).click();
  await page.getByRole('button', { name: en['link.open'] }).click();
  return page.getByLabel(en['link.address'], { exact: true }).inputValue();
}

test('a link opens its plan as one step, says so, and is spent: what is done next outlives a reload', async ({
  page,
}) => {
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await openPanelsAt(page, LINKED);
  await page.getByText(en['link.opened']).waitFor();
  await settled(page);
  expect(await planOn(page)).toEqual(wordless(OTHER));
  expect(page.url()).toBe(inject('page'));
  // Nothing of the plan leaves the machine: what stands after # is in no request.
  expect(asked.filter((url) => url.includes('plan1') || new URL(url).search !== '')).toEqual([]);
  await page.getByRole('button', { name: `${en['history.undo']} ${en['link.edit']}` }).click();
  await settled(page);
  expect(await planOn(page)).toEqual(FIRST);
  await page.getByRole('button', { name: /^Redo/ }).click();
  await type(page, en['rail.tiltFpName'], '12');
  await keptAs(page, 'kept');
  const done = await planOn(page);
  await reloaded(page);
  expect(await planOn(page)).toEqual(done);
});

test('a bad link says what is wrong with it, and nothing is lost', async ({ page }) => {
  await openPanelsAt(page);
  await type(page, en['rail.tiltFpName'], '12');
  const before = await planOn(page);
  const bad = {
    [LINKED.slice(0, -2)]: en['link.broken'],
    [LINKED.replace('plan1', 'plan9')]: en['link.newer'],
    [`#plan1=${'A'.repeat(9000)}`]: en['link.long'],
  };
  for (const [hash, why] of Object.entries(bad)) {
    await page.evaluate((wanted) => {
      window.location.hash = wanted;
    }, hash);
    await alerts(page).filter({ hasText: why }).waitFor();
    expect(await alerts(page).textContent()).toContain(en['link.refused'].split('{fault}')[1]);
    expect(page.url()).toBe(inject('page'));
    await page.getByRole('button', { name: en['plans.dismiss'] }).click();
  }
  expect(await planOn(page)).toEqual(before);
});

test('the page’s own link and its code on the screen say one thing, and open the plan elsewhere', async ({
  page,
  browser,
}) => {
  await openPanelsAt(page);
  await type(page, en['rail.tiltFpName'], '12');
  const plan = await planOn(page);
  const link = await openShare(page);
  const code = page.locator('.share-code > svg');
  for (const press of [null, en['link.large']]) {
    if (press) await page.getByRole('button', { name: press }).click();
    const { bytes, width, height } = await decode(browser, await code.screenshot());
    expect(jsQR(new Uint8ClampedArray(bytes), width, height)?.data).toBe(link);
  }
  const elsewhere = await browser.newContext({ serviceWorkers: 'block' });
  const there = await elsewhere.newPage();
  await openPanelsAt(there, new URL(link).hash);
  await there.getByText(en['link.opened']).waitFor();
  await settled(there);
  expect(await planOn(there)).toEqual(wordless(plan));
  await elsewhere.close();
});

test('a plan file let go anywhere on the page is opened as one step; a bad one changes nothing', async ({
  page,
}) => {
  await openPanelsAt(page);
  await dropFile(page, 'other.json', printPlanFile(OTHER));
  await page.getByRole('button', { name: `${en['history.undo']} open “${OTHER.title}”` }).waitFor();
  expect(await page.locator('.drop-hint').count()).toBe(0);
  expect(await planOn(page)).toEqual(OTHER);
  await dropFile(page, 'newer.json', JSON.stringify({ ...OTHER, version: 99 }));
  await alerts(page).filter({ hasText: 'newer.json' }).waitFor();
  expect(await alerts(page).textContent()).toContain('A newer program wrote it.');
  expect(await planOn(page)).toEqual(OTHER);
  expect(await field(page, en['rail.tiltFpName']).isVisible()).toBe(true);
});
