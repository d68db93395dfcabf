import { totalLength } from '../../src/core/implant/shape.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { deviation } from '../../src/core/spread/deviation.ts';
import { type HandOutlook, searchOutlook } from '../../src/core/spread/handOutlook.ts';
import { firstChoice, handChoices } from '../../src/core/teaching/hands.ts';
import { parsePlanFile, printPlanFile } from '../../src/io/planFile.ts';
import { en } from '../../src/words/en.ts';
import {
  presentCrossed,
  presentForgiving,
  sayAny,
  sayAnyThere,
  sayHand,
} from '../../src/words/presentStray.ts';
import { axeFindings, withAxe } from '../support/axe.ts';
import { expect, settled, test } from '../support/browser.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { openPanels, savedPlan } from '../support/place.ts';

const { plan } = SITES_DEMO[3];

function outlookOf(of: Plan, id?: string): HandOutlook {
  const choices = handChoices([]);
  const { hand } = choices.find((one) => one.id === id) ?? firstChoice(choices);
  const search = searchOutlook(of, hand);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

test('a hand strays with the digits of the core; what forgives it most is taken as one step', {
  timeout: 240_000,
}, async ({ page }) => {
  await withAxe(page);
  await openPanels(page);
  const buffer = Buffer.from(printPlanFile(plan));
  await page
    .locator('input[type="file"]')
    .setInputFiles({ name: 'plan.json', mimeType: 'application/json', buffer });
  await page.getByRole('button', { name: en['stray.open'], exact: true }).click();
  const menu = page.getByRole('dialog', { name: en['stray.open'] });
  const done = menu.locator('[data-stray="done"]');
  await done.waitFor();

  const choices = handChoices([]);
  const whose = menu.getByRole('combobox', { name: en['stray.whose'] });
  expect(await whose.locator('option').allTextContents()).toEqual(choices.map(sayHand));
  const shown = async (outlook: HandOutlook) => {
    const rows = presentCrossed(outlook, 6).map(({ label, here, there }) => [label, here, there]);
    const cells = await menu
      .locator('[data-crossed]')
      .evaluateAll((list) => list.map((row) => [...row.children].map((cell) => cell.textContent)));
    expect(cells).toEqual(rows);
    const { cloud, there, forgiving } = outlook;
    if (!cloud || !there || !forgiving) throw new Error('the outlook is not whole');
    const { sentence, moves } = presentForgiving(plan, forgiving);
    expect(await menu.locator('[data-any]').textContent()).toBe(sayAny(cloud));
    expect(await menu.locator('[data-forgiving]').textContent()).toBe(sentence);
    expect(await menu.locator('.stray-moves > li').allTextContents()).toEqual(moves);
    expect(await menu.getByText(sayAnyThere(there), { exact: true }).count()).toBe(1);
    return forgiving;
  };
  await shown(outlookOf(plan));
  expect(await axeFindings(page)).toEqual([]);

  const other = choices[choices.length - 1];
  await whose.selectOption(other.id);
  await menu.locator('[data-stray="working"]').waitFor();
  await done.waitFor();
  const forgiving = await shown(outlookOf(plan, other.id));
  await menu.getByRole('button', { name: en['stray.take'] }).click();
  await settled(page);
  const after = parsePlanFile(await savedPlan(page));
  if (!after.ok) throw new Error('the saved plan cannot be read');
  // The same but for the last digits of tangents, which browsers and Node take differently.
  const apart = deviation(forgiving.pose, after.plan.pose, totalLength(plan.implant), 0);
  expect(Math.max(apart.coronal.global, apart.apical.global)).toBeLessThan(1e-6);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await settled(page);
  // One step, and looking had moved nothing.
  const undone = parsePlanFile(await savedPlan(page));
  expect(undone.ok && undone.plan.pose).toEqual(plan.pose);
});
