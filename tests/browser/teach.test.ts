import type { Page } from 'playwright-core';
import { breaksOf } from '../../src/core/teaching/breaks.ts';
import { costOf } from '../../src/core/teaching/cost.ts';
import { mendingOf } from '../../src/core/teaching/mending.ts';
import type { TrajectoryId } from '../../src/core/teaching/trajectories.ts';
import { parseLessonFile } from '../../src/io/lessonFile.ts';
import { LESSONS } from '../../src/io/lessons.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { en } from '../../src/words/en.ts';
import { presentReading } from '../../src/words/presentReading.ts';
import {
  presentBreaks,
  presentCost,
  presentMending,
  sayEnds,
  sayGoneWrong,
  sayTrajectory,
} from '../../src/words/presentTeach.ts';
import { axeFindings, withAxe } from '../support/axe.ts';
import { expect, settled, test } from '../support/browser.ts';
import { openPanels, openPlace, savedPlan } from '../support/place.ts';

/** The page opens with the first scenario. */
const [{ plan: PLAN }] = DEMO_PLANS;

const plain = (text: string | null): string => (text ?? '').replaceAll('\u00A0', ' ');
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const dial = (page: Page) => page.getByRole('slider', { name: en['breaks.amount'] });
const sentence = (page: Page) => page.locator('.gone-words');

/** Waits until all that is worked out in idle time is of what the page shows. */
const workedOut = async (page: Page) => {
  await settled(page);
  await page.locator('[data-cost="worked-out"]').waitFor();
};

async function openTeach(page: Page): Promise<void> {
  await press(page, en['place.teach']);
  await dial(page).waitFor();
  await settled(page);
}

async function choose(page: Page, id: TrajectoryId): Promise<void> {
  await page.getByRole('radio', { name: sayTrajectory(id), exact: true }).check();
  await workedOut(page);
}

/** Several trajectories are searched through, each a second or more of work: more time than most tests have, ms. */
const LONG = 120_000;

/** What the page tells of a trajectory at an amount is what the core says. */
async function told(page: Page, id: TrajectoryId, amount: number): Promise<void> {
  const cost = costOf(PLAN, id, amount);
  const breaks = breaksOf(PLAN, id);
  const text = plain(await sentence(page).textContent());
  expect(text).toContain(plain(sayGoneWrong(PLAN, cost)));
  expect(text).toContain(plain(sayEnds(cost)));
  const all = page.locator('.cost-all');
  if ((await all.count()) > 0 && (await all.getAttribute('aria-expanded')) === 'false') await all.click();
  const rows = page.locator('[data-cost-reading]');
  expect(
    await rows.evaluateAll((found) => found.map((row) => row.getAttribute('data-cost-reading'))),
  ).toEqual(presentCost(cost, breaks).map((row) => row.id));
  for (const { before, after } of cost.worse) {
    const row = page.locator(`[data-cost-reading="${after.id}"]`);
    expect(await row.getAttribute('data-mark')).toBe(after.status);
    expect(plain(await row.locator('.cost-before').textContent())).toBe(plain(presentReading(before).number));
    expect(plain(await row.locator('b').textContent())).toBe(plain(presentReading(after).quantity));
  }
  expect(plain(await page.locator('.break-lines').textContent())).toBe(
    plain(
      presentBreaks(breaks)
        .map((line) => line.text)
        .join(''),
    ),
  );
  expect(plain(await page.locator('[data-mended]').textContent())).toBe(
    plain(presentMending(PLAN, mendingOf(PLAN, id, amount)).text),
  );
}

test('a trajectory breaks on the page what the core says it breaks, with the same digits; what is none here says why', {
  timeout: LONG,
}, async ({ page }) => {
  await openPanels(page);
  await openTeach(page);
  const none = page.locator('[data-trajectory="centred-in-socket"]');
  expect(await none.locator('input').isDisabled()).toBe(true);
  expect(await none.textContent()).toContain(en['teach.why.healed-site']);
  await choose(page, 'facial-and-upright');
  await dial(page).focus();
  for (let i = 0; i < 10; i++) await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Shift+ArrowRight');
  await workedOut(page);
  expect(await dial(page).getAttribute('aria-valuenow')).toBe('51');
  await told(page, 'facial-and-upright', 0.51);
});

test('a class is led by keys alone, and the plan is as it was', { timeout: LONG }, async ({ page }) => {
  await openPanels(page);
  const before = await savedPlan(page);
  await openTeach(page);
  const first = page.locator('.trajectory input:checked');
  await page.keyboard.press('PageDown');
  await workedOut(page);
  expect(await sentence(page).textContent()).toContain('palatally');
  await page.keyboard.press('h');
  await page.getByRole('button', { name: en['teach.answer'] }).waitFor();
  expect(await page.locator('[data-cost-reading], [data-section], [data-band]').count()).toBe(0);
  expect(plain(await sentence(page).textContent())).toContain(en['teach.ask']);
  await page.keyboard.press('h');
  await workedOut(page);
  expect(await page.locator('[data-section]').count()).toBe(1);
  await page.keyboard.press('PageUp');
  await workedOut(page);
  await first.focus();
  await dial(page).focus();
  await page.keyboard.press('Home');
  await workedOut(page);
  expect(plain(await sentence(page).textContent())).toContain(en['gone.plan']);
  await page.keyboard.press('p');
  await page.mouse.move(700, 400);
  await page.locator('.presenter-ring').waitFor();
  await page.keyboard.press('p');
  await press(page, en['teach.play']);
  await workedOut(page);
  expect(await dial(page).getAttribute('aria-valuenow')).toBe('100');
  expect(await page.getByRole('button', { name: en['history.undo'] }).isDisabled()).toBe(true);
  await press(page, en['place.place']);
  await settled(page);
  expect(await savedPlan(page)).toEqual(before);
});

test('on a narrow screen all of it is there, axe finds nothing, and a drag of the dial is no change of the plan', {
  timeout: LONG,
}, async ({ page }) => {
  await withAxe(page);
  await openPlace(page);
  await openTeach(page);
  await choose(page, 'mesial-root');
  const box = await dial(page).locator('svg').boundingBox();
  if (!box) throw new Error('no dial');
  await page.mouse.move(box.x + 0.9 * box.width, box.y + 0.8 * box.height);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2, box.y + 4, { steps: 4 });
  await page.mouse.up();
  await workedOut(page);
  expect(await dial(page).getAttribute('aria-valuenow')).toBe('50');
  await told(page, 'mesial-root', 0.5);
  expect(await page.getByRole('button', { name: en['history.undo'] }).isDisabled()).toBe(true);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide).toBeLessThanOrEqual(1024);
  expect(await axeFindings(page)).toEqual([]);
});

test('a lesson goes by the Page keys alone: each step asks first, shows its own plan, and leaves the plan on the table alone', {
  timeout: LONG,
}, async ({ page }) => {
  await openPanels(page);
  const before = await savedPlan(page);
  await openTeach(page);
  await press(page, en['teach.room.lesson']);
  const [, , { id, lesson }] = LESSONS;
  await page.locator(`[data-lesson="${id}"]`).focus();
  await page.keyboard.press('Enter');
  const words = page.locator('.lesson-words');
  for (const [i, step] of lesson.steps.entries()) {
    await page.locator(`[data-lesson-step="${i}"]`).waitFor();
    expect(await words.textContent()).toBe(step.words);
    const plan = lesson.plans[step.plan];
    expect(await page.locator('.title-block').textContent()).toContain(plan.title);
    const answer = page.getByRole('button', { name: en['teach.answer'] });
    expect(await answer.count()).toBe(step.ask ? 1 : 0);
    if (step.ask) {
      await page.keyboard.press('PageDown');
      await page.locator('.cost').waitFor();
    }
    if (step.trajectory) {
      const { trajectory } = step;
      const cost = costOf(plan, trajectory.id, trajectory.percent / 100);
      const text = plain(`${sayGoneWrong(plan, cost)} ${sayEnds(cost)}`);
      await page.waitForFunction(
        (wanted) => document.querySelector('.gone-words')?.textContent?.replaceAll('\u00A0', ' ') === wanted,
        text,
      );
    }
    await page.keyboard.press('PageDown');
  }
  expect(await page.locator(`[data-lesson-step="${lesson.steps.length - 1}"]`).count()).toBe(1);
  await press(page, en['teach.room.trajectories']);
  await settled(page);
  expect(await page.locator('.title-block').textContent()).toContain(PLAN.title);
  expect(await page.getByRole('button', { name: en['history.undo'] }).isDisabled()).toBe(true);
  expect(await savedPlan(page)).toEqual(before);
});

test('a lesson is written from the views of the page, saved as a file and opened again', {
  timeout: LONG,
}, async ({ page }) => {
  await openPanels(page);
  await openTeach(page);
  await choose(page, 'too-deep');
  await dial(page).focus();
  await page.keyboard.press('ArrowLeft');
  await press(page, en['teach.room.lesson']);
  await press(page, en['lesson.begin']);
  await page.getByText(en['lesson.write']).click();
  await page.getByRole('textbox', { name: en['lesson.words'] }).fill('Too deep.');
  await dial(page).focus();
  await page.keyboard.press('Home');
  await press(page, en['lesson.add']);
  await page.locator('[data-lesson-step="1"]').waitFor();
  await page.getByRole('textbox', { name: en['lesson.words'] }).fill('The plan.');
  const text = await savedPlan(page, () => press(page, en['lesson.save']));
  const read = parseLessonFile(text);
  if (!read.ok) throw new Error('the saved lesson cannot be read');
  expect(read.value.steps.map(({ words, trajectory }) => [words, trajectory])).toEqual([
    ['Too deep.', { id: 'too-deep', percent: 95 }],
    ['The plan.', null],
  ]);
  expect(read.value.plans).toHaveLength(1);
  await press(page, en['lesson.close']);
  const file = { name: 'own.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  const input = page.locator(`input[aria-label="${en['lesson.open']}"]`);
  await input.setInputFiles({ ...file, buffer: Buffer.from(text.slice(9)) });
  await page.getByRole('alert').filter({ hasText: 'own.json' }).waitFor();
  await input.setInputFiles(file);
  await page.locator('[data-lesson-step="0"]').waitFor();
  expect(await page.locator('.lesson-words').textContent()).toBe('Too deep.');
});
