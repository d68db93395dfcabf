import { classReport } from '../../src/core/teaching/classReport.ts';
import { markAttempt } from '../../src/core/teaching/mark.ts';
import { MEASURE_IDS } from '../../src/core/teaching/measures.ts';
import { presentMark, sayCount } from '../../src/words/presentMark.ts';
import { axeFindings, withAxe } from '../support/axe.ts';
import { expect, settled, test } from '../support/browser.ts';
import { attemptAt, attemptText, brokenFiles, filesOf, normal, seeded } from '../support/classFiles.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { openPanels } from '../support/place.ts';

const { plan } = SITES_DEMO[0];
const { teacher, student, exercise } = filesOf(plan);
const gauss = normal(seeded(7));
const attempts = Array.from({ length: 24 }, (_, i) => attemptAt(plan, gauss, `Seat ${i + 1}`));
const json = (name: string, text: string) => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(text),
});

/** A class's page shows each attempt as the core marks it; a broken file, or one of another exercise, is a line and stops nothing. */
test('marks a whole class, broken files among it, with the digits of the core', async ({ page }) => {
  await page.setViewportSize({ width: 1440, height: 900 });
  await withAxe(page);
  await openPanels(page);
  await page.getByRole('button', { name: 'Teach', exact: true }).click();
  await page.getByRole('button', { name: 'Class', exact: true }).click();
  await settled(page);

  // The students' file has no answer: it says so, and nothing is taken.
  const exerciseInput = page.locator('input[data-take="exercise"]');
  await exerciseInput.setInputFiles(json('students.json', student));
  await page
    .getByRole('alert')
    .getByText(/without the answer/)
    .waitFor();
  await exerciseInput.setInputFiles(json('teacher.json', teacher));
  await page.locator('input[data-take="attempts"]').waitFor({ state: 'attached' });

  const texts = attempts.map((attempt) => attemptText(exercise, attempt));
  const broken = brokenFiles(texts[0]).slice(0, 14);
  const two = (i: number) => `${i}`.padStart(2, '0');
  await page
    .locator('input[data-take="attempts"]')
    .setInputFiles([
      ...texts.map((text, i) => json(`attempt-${two(i)}.json`, text)),
      ...broken.map((text, i) => json(`broken-${two(i)}.json`, text)),
    ]);
  await page.locator('.class-page[data-waiting="0"] tr[data-file="broken-13.json"]').waitFor();
  await settled(page);

  const marks = attempts.map((attempt) => markAttempt(exercise, attempt));
  const rows = await page.locator('tr[data-file]').evaluateAll((list) =>
    list.map((row) => ({
      file: row.getAttribute('data-file'),
      label: row.querySelector('th')?.textContent,
      cells: Object.fromEntries(
        [...row.querySelectorAll('[data-measure]')].map((cell) => [
          cell.getAttribute('data-measure'),
          cell.firstChild?.textContent,
        ]),
      ),
      over: [...row.querySelectorAll('[data-over]')].map((cell) => cell.getAttribute('data-measure')),
    })),
  );
  expect(rows).toHaveLength(attempts.length + broken.length);
  marks.forEach((mark, i) => {
    const row = rows[i];
    const shown = presentMark(mark, exercise);
    expect(row.label).toBe(mark.label);
    expect(Object.keys(row.cells)).toHaveLength(5);
    for (const id of MEASURE_IDS)
      if (id in row.cells) expect(row.cells[id], `${row.file} ${id}`).toBe(shown.measures[id]);
    expect(row.over).toEqual(mark.over.filter((id) => id in row.cells));
  });
  // Every broken file has its row with a reason.
  const reasons = await page.locator('.class-fault td').allTextContents();
  expect(reasons).toHaveLength(broken.length);
  for (const reason of reasons) expect(reason.length).toBeGreaterThan(8);

  const report = classReport(marks);
  expect(await page.locator('.class-state').textContent()).toContain(sayCount(report, rows.length, exercise));
  expect(await page.locator('.spread-target').first().locator('.spread-dot').count()).toBe(marks.length);
  expect(await axeFindings(page)).toEqual([]);
});
