import type { Page } from 'playwright-core';
import { entryOf } from '../../src/core/geometry/pose.ts';
import { parsePlanFile } from '../../src/io/planFile.ts';
import { expect, settled, test } from '../support/browser.ts';
import { carry, DASHES, dash, gripOf, letGo, MOVES, moveTimes, scriptTime } from '../support/drag.ts';
import { countFrames, drawnCalls, frames } from '../support/frames.ts';
import { openPlace, savedPlan } from '../support/place.ts';

const SAMPLED = 20;

/** What the page shows, and as of which revision: the table's record, the stage's own field and its camera. */
const shown = (page: Page) =>
  page.evaluate(() => {
    const { revision, drawn } = document.documentElement.dataset;
    const stage = document.querySelector('.stage');
    const value = (id: string) => document.querySelector(`[data-reading="${id}"] [data-value]`)?.textContent;
    const tag = document.querySelector('.stage [data-line="facial-wall-thinnest"] .tag-number')?.textContent;
    return {
      revision,
      drawn,
      table: value('facial-wall-thinnest'),
      tag,
      camera: stage?.getAttribute('data-camera'),
      handle: stage?.getAttribute('data-handle-shift-f'),
    };
  });

const entryF = async (page: Page): Promise<number> => {
  const read = parsePlanFile(await savedPlan(page));
  if (!read.ok) throw new Error('the saved plan cannot be read');
  return entryOf(read.plan.pose)[1];
};

test('over 200 moves of the facial shift handle table and stage say one thing, the camera stands still, and it is one step', {
  timeout: 300_000,
}, async ({ page }) => {
  await countFrames(page);
  await openPlace(page);
  const start = { f: await entryF(page), shown: await shown(page) };
  const undo = page.getByRole('button', { name: /^Undo/ });
  expect(await undo.isDisabled()).toBe(true);

  const samples: Awaited<ReturnType<typeof shown>>[] = [];
  const path = await gripOf(page);
  const script = await scriptTime(page);
  const before = await script();
  for (let from = 0; from < MOVES; from += SAMPLED) {
    await carry(page, path, from, from + SAMPLED);
    await settled(page);
    samples.push(await shown(page));
  }
  const spent = (await script()) - before;
  expect(samples).toHaveLength(MOVES / SAMPLED);
  for (const at of samples) {
    expect(at.drawn).toBe(at.revision);
    expect(at.camera).toBe(start.shown.camera);
    // The tag on the stage and the row of the table are drawn from one record.
    expect(at.tag).toBe(at.table);
  }
  // It did move, and on, at every sample.
  const values = [start.shown, ...samples].map(({ revision, handle }) => `${revision} ${handle}`);
  expect(new Set(values).size).toBe(values.length);

  await letGo(page, path);
  await settled(page);
  expect((await shown(page)).camera).toBe(start.shown.camera);
  expect(await entryF(page)).not.toBe(start.f);
  expect(await undo.textContent()).toMatch(/^Undoshift .*facially$/);
  // Figures, not a check: what the pointer's path costs a move; and all script of the page (evaluation, panels, stage), shared out over the moves,
  // each of which had a frame of its own.
  const times = (await moveTimes(page)).sort((a, b) => a - b);
  expect(times).toHaveLength(MOVES);
  const at = (share: number) => times[Math.floor(share * (MOVES - 1))].toFixed(1);
  console.info(
    `Pointer's path of a move, ms: median ${at(0.5)}, 95 of 100 under ${at(0.95)}, most ${at(1)}.`,
  );
  console.info(`All script with its frame, ms a move: ${(spent / MOVES).toFixed(1)}.`);

  // At rest again: no draw call over 120 frames of the browser's own.
  await page.mouse.move(0, 0);
  await settled(page);
  await frames(page, 20);
  const drawn = await drawnCalls(page);
  expect(drawn).toBeGreaterThan(0);
  await frames(page, 120);
  expect(await drawnCalls(page)).toBe(drawn);

  await undo.click();
  await settled(page);
  expect(await undo.isDisabled()).toBe(true);
  expect(await entryF(page)).toBe(start.f);
});

test('moves that come between two frames are followed once, to the last of them, and a release takes it exactly', {
  timeout: 180_000,
}, async ({ page }) => {
  await openPlace(page);
  const path = await gripOf(page);
  const at = () => page.evaluate(() => Number(document.documentElement.dataset.revision));
  await carry(page, path, 0, 2);
  await settled(page);
  await letGo(page, path);
  await settled(page);
  const end = await entryF(page);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await settled(page);

  const before = await at();
  await dash(page, path);
  await settled(page);
  const changes = (await at()) - before;
  expect(await entryF(page)).toBe(end);
  // One change of the plan for all of them: the rest is the hover, the grip, the touch and the release.
  expect(changes).toBeLessThan(DASHES / 2);
});
