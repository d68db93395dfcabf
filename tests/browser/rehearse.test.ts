import type { Page } from 'playwright-core';
import { drillingOf } from '../../src/core/plan/drilling.ts';
import { drillReport } from '../../src/core/plan/drillReport.ts';
import { rehearsalOf } from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { parsePlanFile } from '../../src/io/planFile.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { en } from '../../src/words/en.ts';
import { presentRehearsal } from '../../src/words/presentRehearsal.ts';
import { say } from '../../src/words/sayAll.ts';
import { sayDepth } from '../../src/words/sayTool.ts';
import { expect, settled, test } from '../support/browser.ts';
import { type Hand, handSeen, keyboard, pointer, watchHand } from '../support/hands.ts';
import { decode } from '../support/pixels.ts';
import { openPanels, openPlace, savedPlan } from '../support/place.ts';

// Healed premolar site: the last drill is 3.6 mm wide, so a pilot of 2.0 that strays by 4° can be taken up at 7 mm (model 5: 6.6° there).
const CASE = DEMO_PLANS[2].plan;
const drilling = drillingOf(CASE);
if (!drilling) throw new Error('nothing to drill');
const FULL = drilling.chain.fullDepth;

async function saved(page: Page, hand: Hand): Promise<Plan> {
  const read = parsePlanFile(await savedPlan(page, () => hand.press(page, en['plans.save'])));
  if (!read.ok) throw new Error('the saved plan cannot be read');
  return read.plan;
}

/** Waits until the worker has worked the passes out and all of it is drawn. */
async function workedOut(page: Page): Promise<void> {
  await page.locator('[data-rehearsal="worked-out"]').waitFor();
  await settled(page);
}

const step = (tool: string, depth: number): RegExp => {
  const text = say('hand.step', { tool, depth: sayDepth(depth) });
  return new RegExp(text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s/g, '\\s'));
};
const drill = (diameter: number): string => say('hand.drill', { diameter: sayDepth(diameter) });
const toStop = (depth: number): string => say('hand.toStop', { depth: sayDepth(depth) });

/** What the page says of the rehearsal, and what the core says of the saved plan. */
async function told(page: Page, plan: Plan): Promise<void> {
  const { lead, rest, mend } = presentRehearsal(plan, drillReport(plan));
  const drawn = await page.locator('.sentence-drawn').textContent();
  for (const part of [lead, rest, mend].filter((text) => text !== '')) expect(drawn).toContain(part);
}

/** The pilot to its first stop, an error, its correction, the rest of the order. */
async function rehearse(page: Page, hand: Hand): Promise<void> {
  await hand.press(page, en['plans.open']);
  await page.getByRole('button', { name: CASE.title }).waitFor();
  await hand.press(page, CASE.title);
  await hand.press(page, en['place.rehearse']);
  await settled(page);
  await told(page, CASE);

  await hand.press(page, step(drill(2), 6));
  await hand.press(page, toStop(6));
  await workedOut(page);
  const first = await saved(page, hand);
  expect(rehearsalOf(first).passes.map(({ depth }) => depth)).toEqual([6]);
  await told(page, first);

  await hand.step(page, en['rail.tiltFpName'], -4);
  await hand.press(page, en['hand.deeper']);
  await workedOut(page);
  const strayed = await saved(page, hand);
  expect(rehearsalOf(strayed).passes).toHaveLength(2);
  await told(page, strayed);
  expect(presentRehearsal(strayed, drillReport(strayed)).lead).not.toBe(en['rehearse.onPlan']);

  await hand.press(page, en['hand.toAxis']);
  await hand.press(page, toStop(FULL));
  await workedOut(page);
  for (const one of drilling?.plan.steps.filter(({ reason }) => reason === 'centring') ?? []) {
    await hand.press(page, step(drill(one.diameter), one.depth));
    await hand.press(page, toStop(one.depth));
    await workedOut(page);
  }
  const done = await saved(page, hand);
  expect(rehearsalOf(done).passes).toHaveLength(7);
  await told(page, done);
  expect(drillReport(done).standing?.outlook.answer).toBe('round');

  // Every pass is kept: a step back shows one fewer, undo brings all of them back.
  await hand.press(page, en['hand.back']);
  await workedOut(page);
  const rows = page.locator('.passes [data-shown]');
  expect(
    await rows.evaluateAll((all) => all.filter((row) => row.getAttribute('data-shown') === 'false').length),
  ).toBe(1);
  await hand.press(page, new RegExp(`^${en['history.undo']}`));
  await settled(page);
  expect(rehearsalOf(await saved(page, hand))).toEqual(rehearsalOf(done));
}

for (const [name, hand] of [
  ['by single presses of a pointer', pointer],
  ['by keyboard alone', keyboard],
] as const) {
  test(`a whole case with one error and its correction, ${name}`, { timeout: 180_000 }, async ({ page }) => {
    await watchHand(page);
    await openPanels(page);
    await rehearse(page, hand);
    const seen = await handSeen(page);
    for (const event of hand.never) expect(seen[event] ?? 0, event).toBe(0);
  });
}

test('drilling goes on for as long as the button is pressed, and is one step', async ({ page }) => {
  await openPanels(page);
  await page.getByRole('button', { name: en['place.rehearse'], exact: true }).click();
  const run = page.getByRole('button', { name: en['hand.run'], exact: true });
  const depth = page.getByRole('spinbutton', { name: en['hand.depthName'], exact: true });
  await run.hover();
  await page.mouse.down();
  await page.waitForFunction(
    (name) => Number(document.querySelector(`[aria-label="${name}"]`)?.getAttribute('aria-valuenow')) > 1.5,
    en['hand.depthName'],
  );
  await page.mouse.up();
  await workedOut(page);
  const reached = Number(await depth.getAttribute('aria-valuenow'));
  const plan = await saved(page, pointer);
  expect(rehearsalOf(plan).passes).toHaveLength(1);
  expect(rehearsalOf(plan).passes[0].depth).toBeCloseTo(reached, 6);
  await page.getByRole('button', { name: new RegExp(`^${en['history.undo']}`) }).click();
  await settled(page);
  expect(rehearsalOf(await saved(page, pointer)).passes).toHaveLength(0);
});

test('numbers are covered until they are guessed', async ({ page }) => {
  await openPanels(page);
  await page.getByRole('button', { name: en['place.rehearse'], exact: true }).click();
  await page.getByRole('button', { name: toStop(6), exact: true }).click();
  await workedOut(page);
  const button = (name: string) => page.getByRole('button', { name, exact: true });
  await button(en['guess.begin']).click();
  await settled(page);
  expect(await page.locator('.drawing.section').count()).toBe(0);
  await button(en['guess.see']).click();
  await settled(page);
  expect(await page.locator('.drawing.section').count()).toBe(1);
  expect(await page.locator('[data-guess="facial"]').textContent()).toContain('1.5');
  // Kept as the user's own, once: to see again is no guess.
  const own = page.locator('[data-own-guesses]');
  expect(await own.getAttribute('data-own-guesses')).toBe('3');
  expect(await own.textContent()).toContain(en['guesses.lean']);
  await button(en['guess.see']).click();
  await settled(page);
  expect(await own.getAttribute('data-own-guesses')).toBe('3');
  await button(en['guesses.forget']).click();
  await settled(page);
  expect(await own.count()).toBe(0);
});

test('the model shows the hole: the bone of the last pass is another picture than the bone before it', async ({
  page,
  browser,
}) => {
  await openPlace(page);
  const button = (name: string) => page.getByRole('button', { name, exact: true });
  await button(en['place.rehearse']).click();
  await button(en['hand.lift']).click();
  await settled(page);
  const stage = page.locator('.stage-picture canvas');
  const picture = async () => decode(browser, await stage.screenshot());
  const before = await picture();
  await button(toStop(6)).click();
  await button(en['hand.lift']).click();
  await page.locator('[data-drilled="1"]').waitFor();
  await workedOut(page);
  const after = await picture();
  let changed = 0;
  for (let i = 0; i < before.bytes.length; i += 4) {
    const off = [0, 1, 2].map((k) => Math.abs(before.bytes[i + k] - after.bytes[i + k]));
    if (Math.max(...off) > 24) changed += 1;
  }
  // A 2.0 mm hole, 6 mm deep and cut open, is some hundreds of pixels and not the whole picture.
  expect(changed).toBeGreaterThan(100);
  expect(changed).toBeLessThan(before.bytes.length / 4 / 10);
});
