import { printPlanFile } from '../../src/io/planFile.ts';
import { en } from '../../src/words/en.ts';
import { expect, test } from '../support/browser.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { openPanels } from '../support/place.ts';
import { rehearsed } from '../support/rehearsed.ts';

test('on A4 nothing is cut off: every reading, both drawings, no stage, no buttons', async ({ page }) => {
  // Source: ISO 216, A4 is 210 mm wide; 10 mm margins leave 190 mm, at 96 px an inch 718 px.
  await page.setViewportSize({ width: 718, height: 1050 });
  await openPanels(page);
  await page.emulateMedia({ media: 'print' });
  const state = await page.evaluate(() => {
    const shown = (selector: string) =>
      [...document.querySelectorAll(selector)].filter((one) => one.checkVisibility()).length;
    const sheet = document.querySelector('.sheet')?.getBoundingClientRect();
    const clipped = [
      ...document.querySelectorAll('.panel, .sentence, .title-cell, .reading > *, .reading button'),
    ]
      .filter((one) => one.checkVisibility())
      .filter(({ scrollWidth, clientWidth, scrollHeight, clientHeight }) => {
        return scrollWidth > clientWidth + 1 || scrollHeight > clientHeight + 1;
      })
      .map((one) => one.textContent);
    const outside = [...document.querySelectorAll('.sheet *')]
      .filter((one) => one.checkVisibility() && !one.closest('svg, .unseen'))
      .filter((one) => one.getBoundingClientRect().right > (sheet?.right ?? 0) + 1)
      .map((one) => one.textContent);
    return {
      rows: shown('[data-reading]'),
      all: document.querySelectorAll('[data-reading]').length,
      drawings: shown('.drawing'),
      stage: shown('.panel-stage'),
      buttons: shown('.field > button, .history button, .plans button'),
      clipped,
      outside,
    };
  });
  expect(state).toEqual({
    rows: state.all,
    all: state.all,
    drawings: 2,
    stage: 0,
    buttons: 0,
    clipped: [],
    outside: [],
  });
  expect(state.all).toBeGreaterThan(40);
});

test('a rehearsal is printed pass by pass, nothing of it cut off', async ({ page }) => {
  await page.setViewportSize({ width: 718, height: 1050 });
  await openPanels(page);
  const plan = rehearsed(SITES_DEMO[0].plan);
  await page.locator('input[type="file"]').setInputFiles({
    name: 'made.json',
    mimeType: 'application/json',
    buffer: Buffer.from(printPlanFile(plan)),
  });
  const printed = page.getByRole('region', { name: en['pass.printed'] });
  await page.locator('.printed').waitFor({ state: 'attached' });
  expect(await printed.count()).toBe(0);
  await page.emulateMedia({ media: 'print' });
  expect(await printed.count()).toBe(1);
  expect(await page.locator('[data-printed-pass]').count()).toBe(plan.rehearsal?.passes.length);
  expect(await printed.textContent()).toContain(en['verdict.as-planned']);
  expect(await printed.textContent()).toContain(en['drilling.caution.force']);
  const cut = await printed.evaluate((sheet) => {
    const { right } = sheet.getBoundingClientRect();
    return [...sheet.querySelectorAll('*')]
      .filter((one) => !one.closest('svg'))
      .filter(
        (one) =>
          (one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0) ||
          one.getBoundingClientRect().right > right + 1,
      )
      .map((one) => one.textContent);
  });
  expect(cut).toEqual([]);
});
