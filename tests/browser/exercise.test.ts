import type { Page } from 'playwright-core';
import { markAttempt } from '../../src/core/teaching/mark.ts';
import { parseAttemptFile } from '../../src/io/attemptFile.ts';
import { parseExerciseFile } from '../../src/io/exerciseFile.ts';
import { en } from '../../src/words/en.ts';
import { presentMark } from '../../src/words/presentMark.ts';
import { axeFindings, withAxe } from '../support/axe.ts';
import { expect, settled, test } from '../support/browser.ts';
import { handedOut, openPanels } from '../support/place.ts';

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

const taken = (page: Page, name: string) => handedOut(page, () => press(page, name));

const json = (name: string, text: string) => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(text),
});

test('an exercise is set, done from its file, handed in and marked; the own plan comes back', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1440, height: 900 });
  await withAxe(page);
  await openPanels(page);
  await press(page, en['place.teach']);
  await press(page, en['teach.room.exercise']);
  expect(await page.getByRole('button', { name: en['exercise.studentFile'] }).isDisabled()).toBe(true);
  await page.getByLabel(en['exercise.title']).fill('A narrow ridge');
  await page.getByLabel(en['exercise.words']).fill('Place it between the walls.');
  await page.getByRole('checkbox', { name: en['exercise.hide.target'] }).check();
  expect(await axeFindings(page)).toEqual([]);
  const teacher = await taken(page, en['exercise.teacherFile']);
  const student = await taken(page, en['exercise.studentFile']);
  const link = await page.getByLabel(en['exercise.link']).inputValue();

  const read = parseExerciseFile(teacher.text);
  if (!read.ok || !read.value.answer) throw new Error('the teacher’s file cannot be read');
  const exercise = { ...read.value, answer: read.value.answer };
  // The students' file has the same fingerprint and no answer (rule L8).
  const given = parseExerciseFile(student.text);
  if (!given.ok) throw new Error('the students’ file cannot be read');
  expect(given.value).toEqual({ ...exercise, answer: null });
  expect(link).toContain('#exercise');

  // The student opens it: readings and profile are covered, other places shut, and it starts from nothing.
  const summary = await page.locator('[data-reading="facial-wall-thinnest"]').count();
  expect(summary).toBe(0);
  await page.locator('.plans input[type="file"]').setInputFiles(json(student.name, student.text));
  await page.locator('.exercise-sentence').waitFor();
  await settled(page);
  expect(await page.getByText(en['exercise.covered']).count()).toBe(2);
  expect(await page.locator('[data-reading]').count()).toBe(0);
  expect(await page.getByRole('button', { name: en['place.sheet'], exact: true }).isDisabled()).toBe(true);
  expect(await axeFindings(page)).toEqual([]);
  const facial = page.getByRole('spinbutton', { name: en['rail.shiftFName'], exact: true });
  await facial.fill('0.4');
  await page.keyboard.press('Enter');
  await page.getByLabel(en['exercise.label']).fill('Blue 7');
  await settled(page);
  const attempt = await taken(page, en['exercise.handIn']);
  expect(attempt.name).toBe('attempt-Blue-7.json');

  // Leaving is one step, and brings the own plan back with its readings.
  await press(page, en['exercise.leave']);
  await settled(page);
  expect(await page.locator('[data-reading="facial-wall-thinnest"]').count()).toBe(1);

  // The teacher marks it: what the page shows is what the core says.
  const handed = parseAttemptFile(attempt.text, exercise);
  if (!handed.ok) throw new Error('the attempt cannot be read');
  expect(handed.value.label).toBe('Blue 7');
  const mark = markAttempt(exercise, handed.value);
  await press(page, en['place.teach']);
  await press(page, en['teach.room.class']);
  await page.locator('input[data-take="exercise"]').setInputFiles(json(teacher.name, teacher.text));
  await page.locator('input[data-take="attempts"]').setInputFiles(json(attempt.name, attempt.text));
  const row = page.locator(`tr[data-file="${attempt.name}"]`);
  await row.waitFor();
  const shown = presentMark(mark, exercise);
  for (const id of ['platform-lateral', 'platform-depth', 'apex-lateral', 'angle'] as const)
    expect(await row.locator(`[data-measure="${id}"]`).evaluate((cell) => cell.firstChild?.textContent)).toBe(
      shown.measures[id],
    );

  // And looks at it beside the plan.
  await row.getByRole('button').click();
  await settled(page);
  expect(await page.locator('[data-compare]').count()).toBeGreaterThan(3);
});

test('a link opens the exercise, and undo brings the own plan back', async ({ page }) => {
  await openPanels(page);
  await press(page, en['place.teach']);
  await press(page, en['teach.room.exercise']);
  await page.getByLabel(en['exercise.title']).fill('By link');
  const link = await page.getByLabel(en['exercise.link']).inputValue();
  await page.evaluate((hash) => {
    window.location.hash = hash;
  }, new URL(link).hash);
  await page.locator('.exercise-sentence').getByText('By link').waitFor();
  expect(new URL(page.url()).hash).toBe('');
  await page.keyboard.press('Control+z');
  await page.locator('[data-reading="facial-wall-thinnest"]').waitFor();
  expect(await page.locator('.exercise-sentence').count()).toBe(0);
});
