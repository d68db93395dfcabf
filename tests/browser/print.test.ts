import { expect, test } from '../support/browser.ts';
import { openPanels } from '../support/place.ts';

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
