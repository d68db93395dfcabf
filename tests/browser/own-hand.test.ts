import { drillPoseOf } from '../../src/core/plan/inHand.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { handSpread } from '../../src/core/spread/hand.ts';
import { benchCheck, callipersAt } from '../../src/core/teaching/bench.ts';
import { BENCH_PLACES, CALLIPER_SD } from '../../src/core/teaching/benchPlaces.ts';
import { screenAttempt } from '../../src/core/teaching/ownAttempt.ts';
import { printPlanFile } from '../../src/io/planFile.ts';
import { en } from '../../src/words/en.ts';
import { presentBench, presentBenchPose, presentHand, sayCalliper } from '../../src/words/presentBench.ts';
import { axeFindings, withAxe } from '../support/axe.ts';
import { expect, settled, test } from '../support/browser.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { openPanels, type } from '../support/place.ts';
import { rehearsed } from '../support/rehearsed.ts';

const { plan: slab } = SITES_DEMO[4];
const DRILL = 2.8;

/** The plan with a rehearsal that followed another one: 0.4 mm facially of it, 3° steeper. */
function strayed(plan: Plan): Plan {
  const { platform, tilt } = plan.pose;
  const pose = {
    ...plan.pose,
    platform: { ...platform, f: platform.f + 0.4 },
    tilt: { ...tilt, faciopalatal: tilt.faciopalatal + 3 },
  };
  return { ...plan, rehearsal: rehearsed({ ...plan, pose }).rehearsal };
}

/** What a calliper that shows hundredths reads at a hole 0.3 mm facially of the plan that leans 2° more. */
function readings(plan: Plan): number[] {
  const { mouth, tilt } = drillPoseOf(plan.pose);
  const line = {
    mouth: { m: mouth.m, f: mouth.f + 0.3 },
    tilt: { ...tilt, faciopalatal: tilt.faciopalatal - 2 },
  };
  const read = callipersAt(plan, DRILL, BENCH_PLACES, line) ?? [];
  return read.map((value) => Math.round(value * 100) / 100);
}

test('the own hand: bench check and rehearsal with the digits of the core, kept apart and on the machine', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1440, height: 900 });
  await withAxe(page);
  await openPanels(page);
  const plan = strayed(slab);
  const buffer = Buffer.from(printPlanFile(plan));
  await page
    .locator('input[type="file"]')
    .setInputFiles({ name: 'plan.json', mimeType: 'application/json', buffer });
  await page.getByRole('button', { name: en['place.teach'], exact: true }).click();
  await page.getByRole('button', { name: en['teach.room.hand'], exact: true }).click();
  const find = page.getByRole('button', { name: en['ownHand.find'] });
  const calliper = (i: number) => page.getByLabel(sayCalliper(BENCH_PLACES[i]), { exact: true });

  // Nothing measured gives no pose.
  await find.click();
  await page.locator('[data-bench="too-few"]').waitFor();

  await type(page, en['ownHand.diameter'], `${DRILL}`);
  const values = readings(plan);
  for (const [i, value] of values.entries()) await calliper(i).fill(`${value}`);
  await find.click();
  await page.locator('[data-bench="found"]').waitFor();
  const callipers = BENCH_PLACES.map((place, i) => ({ ...place, value: values[i] }));
  const check = benchCheck(plan, { diameter: DRILL, callipers, depth: null, sd: CALLIPER_SD });
  if (typeof check === 'string') throw new Error(check);
  const found = () => page.locator('[data-found]').allTextContents();
  const expected = [
    ...presentBenchPose(check, drillPoseOf(plan.pose)),
    ...presentBench(check, callipers).rows,
  ].map(({ text }) => text);
  expect(await found()).toEqual(expected);

  // A pose holds for what was typed: another number puts it away.
  await calliper(0).fill('');
  await calliper(0).press('Enter');
  expect(await page.locator('[data-bench="found"]').count()).toBe(0);
  await calliper(0).fill('x');
  await calliper(0).press('Enter');
  await page.getByText('“x” is no length').waitFor();
  await calliper(0).fill(`${values[0]}`);
  await find.click();
  await page.getByRole('button', { name: en['ownHand.add'] }).click();
  await page.getByRole('button', { name: en['ownHand.addScreen'] }).click();
  await page.locator('[data-why="kept"]').waitFor();

  const screen = screenAttempt(plan);
  if (typeof screen === 'string') throw new Error(screen);
  const attempts = [screen, { way: 'bench' as const, deviation: check.deviation }];
  const rows = (way: 'screen' | 'bench') => page.locator(`[data-way="${way}"] tr[data-measure]`);
  const cells = (way: 'screen' | 'bench') =>
    rows(way).evaluateAll((list) =>
      list.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent)),
    );
  const core = (way: 'screen' | 'bench') =>
    presentHand(handSpread(attempts, way), way).rows.map(({ mean, sd }) => [mean, sd]);
  for (const way of ['screen', 'bench'] as const) expect(await cells(way)).toEqual(core(way));
  expect(await cells('screen')).not.toEqual(await cells('bench'));
  expect(await axeFindings(page)).toEqual([]);

  // They come back with the page, and are forgotten when that is asked.
  await page.reload();
  await settled(page);
  await rows('bench').first().waitFor();
  for (const way of ['screen', 'bench'] as const) expect(await cells(way)).toEqual(core(way));
  await page.getByRole('button', { name: en['ownHand.forget'] }).click();
  await expect.poll(() => rows('bench').count()).toBe(0);
  expect(await rows('screen').count()).toBe(0);
  expect(await page.evaluate(() => localStorage.getItem('ridgewright.own.1'))).toBe(
    '{"guesses":[],"attempts":[]}',
  );
});
