import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { drillingOf } from '../../src/core/plan/drilling.ts';
import { drillReport } from '../../src/core/plan/drillReport.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import { handOf, withHand } from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { drillTo } from '../../src/core/plan/rehearse.ts';
import { parsePlanFile, printPlanFile } from '../../src/io/planFile.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { en } from '../../src/words/en.ts';
import { presentReading } from '../../src/words/presentReading.ts';
import { say } from '../../src/words/sayAll.ts';
import { expect, settled, test } from '../support/browser.ts';
import { field, openPanels, savedPlan, type } from '../support/place.ts';

// Source of the rules: axe-core 4 (WCAG 2.2 A and AA, and its best practices).
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** A pilot that leans 3.4° facially, 6 mm deep. */
function strayed(plan: Plan): Plan {
  const hand = handOf(plan);
  const { tilt } = hand.pose;
  const pose = { ...hand.pose, tilt: { ...tilt, faciopalatal: tilt.faciopalatal + 3.4 } };
  return drillTo(withHand(plan, { ...hand, pose }), 6);
}

async function openRehearsal(page: Page): Promise<Plan> {
  await openPanels(page);
  const buffer = Buffer.from(printPlanFile(strayed(DEMO_PLANS[0].plan)));
  await page
    .locator('input[type="file"]')
    .setInputFiles({ name: 'plan.json', mimeType: 'application/json', buffer });
  await page.getByRole('button', { name: en['place.rehearse'], exact: true }).click();
  await page.locator('[data-report="fresh"]').waitFor();
  await settled(page);
  const read = parsePlanFile(await savedPlan(page));
  if (!read.ok) throw new Error('the saved plan cannot be read');
  return read.plan;
}

test('the hole’s numbers are the core’s, digit for digit', async ({ page }) => {
  const plan = await openRehearsal(page);
  const report = drillReport(plan);
  const lists = { plan: evaluate(plan).readings, pass: report.passes[0], worst: report.hole };
  const rows = await page.locator('[data-hole-reading]').all();
  expect(rows.length).toBeGreaterThan(15);
  for (const row of rows) {
    const id = await row.getAttribute('data-hole-reading');
    for (const [of, readings] of Object.entries(lists)) {
      const reading = readings.find((one) => one.id === id);
      const shown = await row.locator(`[data-of="${of}"]`).textContent();
      expect(shown, `${id}, ${of}`).toBe(reading ? presentReading(reading).number : en['limit.none']);
    }
  }
});

test('a mending that is pressed puts the hand where it says', async ({ page }) => {
  const plan = await openRehearsal(page);
  const tilt = drillingOf(plan)?.hole?.drill.pose.tilt.faciopalatal ?? Number.NaN;
  await page.locator('[data-mend="tilt-mouth"] button').click();
  await settled(page);
  const read = parsePlanFile(await savedPlan(page));
  if (!read.ok) throw new Error('the saved plan cannot be read');
  expect(handOf(read.plan).pose.tilt.faciopalatal).toBeCloseTo(tilt, 6);
  const label = await page.getByRole('button', { name: /^Undo/ }).textContent();
  expect(label).toContain(say('edit.mend', { mend: en['budget.mend.tilt-mouth'] }));
});

test('the strip follows spare depth and gum', async ({ page }) => {
  await openRehearsal(page);
  const shown = (key: string) => page.locator(`[data-strip="${key}"]`).textContent();
  const apex = await shown('apex');
  await type(page, en['strip.spareName'], '1.5');
  await settled(page);
  expect(await field(page, en['strip.spareName']).inputValue()).toBe('1.5');
  expect(await shown('seat')).toContain('1.5');
  expect(await shown('apex')).toBe(apex);
  await page.getByRole('button', { name: en['strip.flapLeft'] }).click();
  await settled(page);
  expect(await shown('stop')).toContain(en['strip.read.gum']);
});

test('axe finds nothing, and no label of the strip lies on another', async ({ page }) => {
  await openRehearsal(page);
  await page.evaluate(AXE);
  const found = await page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    const { violations } = await axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
  });
  expect(found).toEqual([]);
  const tops = await page
    .locator('[data-strip]')
    .evaluateAll((groups) =>
      groups.map((group) => Number(group.querySelector('text')?.getAttribute('y'))).sort((a, b) => a - b),
    );
  expect(tops.length).toBeGreaterThan(12);
  for (let i = 1; i < tops.length; i++) expect(tops[i] - tops[i - 1]).toBeGreaterThan(13);
});
