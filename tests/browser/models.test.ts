/** Models made on the page: offered with their figures once they are made, saved, and the 3MF read by three's loader, which needs a browser. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { inject } from 'vitest';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { buildModel } from '../../src/solids/build.ts';
import { MODEL_KINDS, type Model, type ModelKind } from '../../src/solids/model.ts';
import { en } from '../../src/words/en.ts';
import { say } from '../../src/words/sayAll.ts';
import { sayFigures } from '../../src/words/sayModel.ts';
import { expect, openPage, settled, test } from '../support/browser.ts';
import { opinionOn, solidModeller } from '../support/solid.ts';
import { welded } from '../support/weld.ts';

/** Five solids are made meanwhile, ms. */
const LONG = 180_000;

async function taken(page: Page, what: string, kind: string): Promise<{ name: string; bytes: Buffer }> {
  const press = page.getByRole('button', { name: say('handOver.asFile', { what, kind }) });
  const [download] = await Promise.all([page.waitForEvent('download', { timeout: LONG }), press.click()]);
  const folder = mkdtempSync(join(tmpdir(), 'ridgewright-models-'));
  try {
    const path = join(folder, 'model');
    await download.saveAs(path);
    return { name: download.suggestedFilename(), bytes: readFileSync(path) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

test('the models of a plan are made, told with their figures, and saved; what was not drilled is not offered', async ({
  page,
}) => {
  await openPage(page);
  await page.getByRole('button', { name: en['handOver.open'] }).click();
  await page.getByRole('button', { name: en['models.make'] }).click();
  await page.locator('[data-models="made"]').waitFor({ timeout: LONG });
  await settled(page);
  const kernel = await solidModeller();
  const modelOf = (kind: ModelKind): Model => {
    const made = buildModel(kernel, DEMO_PLANS[0].plan, kind);
    if (!made.ok) throw new Error(made.why.code);
    return made.model;
  };
  const [implant, planned] = [modelOf('implant'), modelOf('planned')];
  const row = (kind: ModelKind) => page.locator(`[data-model="${kind}"]`);
  for (const model of [implant, planned]) {
    const figures = sayFigures({ ...model, triangles: model.mesh.triangles.length / 3 });
    expect((await row(model.kind).textContent())?.trim()).toBe(figures);
  }
  expect(await Promise.all(MODEL_KINDS.map((kind) => row(kind).count()))).toEqual([1, 0, 1, 1, 1]);
  expect(await page.getByText(en['models.fault.no-passes']).count()).toBe(1);
  expect(await page.getByText(en['models.purpose']).count()).toBe(1);

  const stl = await taken(page, en['models.ridge'], en['models.stl']);
  expect(stl.name).toBe('ridgewright-12-ridge.stl');
  expect(stl.bytes.length).toBe(84 + 50 * stl.bytes.readUInt32LE(80));
  const packed = await taken(page, en['models.planned'], en['models.3mf']);
  expect(packed.name).toBe('ridgewright-12-ridge-planned-hole.3mf');

  await page.goto(`${inject('bench')}#read3mf`);
  await page.waitForFunction(() => window.read3mf !== undefined);
  const read = await page.evaluate((bytes) => window.read3mf?.(bytes), packed.bytes.toString('base64'));
  if (!read) throw new Error('nothing read');
  const { mesh, volume } = planned;
  expect(read.points.length).toBe(3 * mesh.triangles.length);
  const body = welded(
    read.points,
    Array.from({ length: read.points.length / 3 }, (_, i) => i),
  );
  const opinion = await opinionOn(body);
  expect(opinion).toMatchObject({ status: 'NoError', parts: 1 });
  expect(Math.abs(opinion.volume / volume - 1)).toBeLessThan(1e-5);
  // Bone, tooth and hole by their colours.
  expect(read.colours).toBe(3);
}, 300_000);
