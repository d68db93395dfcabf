import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import type { Plan } from '../../src/core/plan/plan.ts';
import { printPlanFile } from '../../src/io/planFile.ts';
import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { commandLine, digits, field, numberOf, openPanels, openPlace, savedPlan } from '../support/place.ts';

// Source of the rules: axe-core 4 (WCAG 2.2 A and AA, and its best practices).
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const demo = (part: string): Plan => {
  const found = SITES_DEMO.find(({ id }) => id.includes(part));
  if (!found) throw new Error(`no demo plan ${part}`);
  return found.plan;
};

async function toCrown(page: Page): Promise<void> {
  await page.getByRole('button', { name: en['place.crown'], exact: true }).click();
  await page.getByRole('radio').first().waitFor();
  await settled(page);
}

async function open(page: Page, plan: Plan): Promise<void> {
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'plan.json',
      mimeType: 'application/json',
      buffer: Buffer.from(printPlanFile(plan)),
    });
  await page.locator('.title-block').getByText(plan.title).waitFor();
  await settled(page);
}

/** Number and words of a tag of the faciopalatal section. */
const tagOf = (page: Page, id: string) =>
  page.locator(`[data-crown-section="faciopalatal"] [data-line="${id}"] .tag-number`).textContent();

// One demo plan for each side of the edge.
test('facial, edge and palatal exits stand on the page with the digits of the table', async ({ page }) => {
  await openPanels(page);
  await toCrown(page);
  for (const [part, place] of [
    ['fresh-socket', 'facial'],
    ['slab', 'edge'],
    ['thin-gum', 'palatal'],
  ] as const) {
    await open(page, demo(part));
    const shown = await digits(page);
    expect(shown['access-exit']).toBe(en[`place.${place}`]);
    expect(await tagOf(page, 'access-exit-to-edge')).toBe(
      `${shown['access-exit-to-edge']}${en[`place.${place}`]}`,
    );
    const turned = page.locator('[data-crown-section="faciopalatal"] [data-line="access-exit-correction"]');
    expect(await turned.count()).toBe(place === 'palatal' ? 0 : 1);
    for (const id of ['emergence-facial', 'shoulder-to-gum-margin'] as const)
      expect((await tagOf(page, id))?.replace('°', '')).toBe(shown[id]);
  }
});

test('a saved plan is told by the command line in the digits of the page', async ({ page }) => {
  await openPanels(page);
  await toCrown(page);
  await open(page, demo('fresh-socket'));
  const shown = await digits(page);
  const printed = await commandLine(await savedPlan(page));
  expect(printed.length).toBeGreaterThan(60);
  for (const { id, shown: text } of printed) if (text !== undefined) expect(text).toBe(shown[id]);
});

test('another material changes what is ground off, and the sentence beside it', async ({ page }) => {
  await openPanels(page);
  await toCrown(page);
  await open(page, demo('one-piece'));
  const depth = async () => numberOf((await digits(page))['abutment-reduction-depth']);
  const volume = async () => numberOf((await digits(page))['abutment-reduction-volume']);
  const lithium = { depth: await depth(), volume: await volume() };
  const choose = async (material: 'zirconia' | 'metal-ceramic') => {
    await page.getByLabel(en['crownField.material']).selectOption(material);
    await settled(page);
    const said = await page.locator('[data-grinding]').textContent();
    expect(said).toContain((await digits(page))['abutment-reduction-depth']);
  };
  await choose('zirconia');
  expect(await depth()).toBeLessThan(lithium.depth);
  expect(await volume()).toBeLessThan(lithium.volume);
  await choose('metal-ceramic');
  expect(await volume()).toBeGreaterThan(lithium.volume);
  expect(await page.locator('[data-outline="abutment"]').count()).toBe(2);
});

test('by keys alone: three answers of one pose, a tilt and back, a reading picked out in the section', async ({
  context,
  page,
}) => {
  await context.addInitScript({ content: AXE });
  await openPanels(page);
  await toCrown(page);
  const summary = () => page.locator('[data-summary]').getAttribute('data-summary');
  const answers = await page
    .locator('[data-answer]')
    .evaluateAll((rows) => rows.map((row) => row.getAttribute('data-answer')));
  expect(answers).toEqual(['near', 'within', 'beyond']);
  await page.getByRole('radio').first().focus();
  for (const [i, id] of ['shoulder-to-gum-margin', 'shoulder-to-cej', 'shoulder-to-gum-margin'].entries()) {
    if (i > 0) await page.keyboard.press('ArrowDown');
    await settled(page);
    expect(await summary()).toBe(answers[i]);
    const state = await page.locator(`[data-reading="${id}"]`).getAttribute('data-status');
    expect(['within', 'near', 'beyond']).toContain(state);
    expect(await page.locator('[data-outline="channel"]').count()).toBe(i === 0 ? 0 : 1);
  }
  const before = numberOf((await digits(page))['access-exit-to-edge']);
  await field(page, en['rail.tiltFpName']).focus();
  for (let i = 0; i < 12; i++) await page.keyboard.press('ArrowUp');
  await settled(page);
  const after = await digits(page);
  // Leaning facially carries the exit facially: by H·tan of 12° at least over the way from the pivot to the edge, some 9 mm.
  expect(before - numberOf(after['access-exit-to-edge'])).toBeGreaterThan(1);
  expect(after['access-exit']).toBe(en['place.facial']);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Escape');
  const row = page.locator('[data-reading="access-exit-correction"] button');
  await row.press('Enter');
  expect(await row.getAttribute('aria-expanded')).toBe('true');
  expect(await page.locator('[data-line="access-exit-correction"] .dimension-lit').count()).toBe(1);
  const found = await page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run: () => Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }> };
    };
    const { violations } = await axe.run();
    return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
  });
  expect(found).toEqual([]);
});

test('on the stage the exit is whole where it faces the eye and broken where the crown stands before it', async ({
  page,
}) => {
  await openPlace(page);
  await toCrown(page);
  await open(page, demo('thin-gum'));
  const hidden = async (view: 'facial' | 'palatal') => {
    await page
      .locator('.views')
      .first()
      .getByRole('button', { name: en[`stage.view.${view}`], exact: true })
      .click();
    await settled(page);
    return page.locator('[data-mark="exit"]').getAttribute('data-hidden');
  };
  expect(await hidden('facial')).toBe('true');
  expect(await hidden('palatal')).toBe('false');
  await page.getByRole('button', { name: en['crown.look.none'] }).click();
  await settled(page);
  expect(await page.locator('[data-outline="crown"]').count()).toBe(0);
});

test('on paper both sections of the crown stand whole', async ({ page }) => {
  // Source: ISO 216, A4 is 210 mm wide; 10 mm margins leave 190 mm, at 96 px an inch 718 px.
  await page.setViewportSize({ width: 718, height: 1050 });
  await openPanels(page);
  await toCrown(page);
  await open(page, demo('one-piece'));
  await page.emulateMedia({ media: 'print' });
  const state = await page.evaluate(() => {
    const sheet = document.querySelector('.sheet')?.getBoundingClientRect();
    const drawings = [...document.querySelectorAll('.crown-section')].filter((one) => one.checkVisibility());
    const clipped = [...document.querySelectorAll('.crown-rail *')]
      .filter((one) => one.checkVisibility() && one.clientWidth > 0 && !one.closest('.unseen'))
      .filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth + 1)
      .map((one) => `${one.className} ${one.textContent}`);
    const within = drawings.every((one) => one.getBoundingClientRect().right <= (sheet?.right ?? 0) + 1);
    return { drawings: drawings.length, within, clipped };
  });
  expect(state).toEqual({ drawings: 2, within: true, clipped: [] });
});

// At 1440 and at 1024 all places, files and history are on one line; at 768 the places have a line of their own.
test('the header keeps its eight places on one line, and gives them their own where it is narrow', async ({
  page,
}) => {
  const lines = async (width: number) => {
    await page.setViewportSize({ width, height: 800 });
    return page.locator('.header').evaluate((header) => {
      const middles = (selector: string) =>
        [...header.querySelectorAll(selector)]
          .map((one) => one.getBoundingClientRect())
          .filter((one) => one.width > 1)
          .map((one) => Math.round((one.top + one.bottom) / 20));
      const { right } = header.getBoundingClientRect();
      const out = [...header.querySelectorAll('button')].filter(
        (one) => one.getBoundingClientRect().right > right,
      );
      return {
        places: new Set(middles('.places > button')).size,
        all: new Set(middles('button')).size,
        out: out.length,
      };
    });
  };
  await openPanels(page);
  for (const width of [1440, 1024]) expect(await lines(width)).toEqual({ places: 1, all: 1, out: 0 });
  expect(await lines(768)).toEqual({ places: 1, all: 2, out: 0 });
});
