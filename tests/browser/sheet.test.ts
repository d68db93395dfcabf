import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import type { Download, Page } from 'playwright-core';
import { totalLength } from '../../src/core/implant/shape.ts';
import { drillingOf } from '../../src/core/plan/drilling.ts';
import { fingerprint } from '../../src/core/plan/fingerprint.ts';
import { printPlanFile } from '../../src/io/planFile.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { en } from '../../src/words/en.ts';
import { formatNumber } from '../../src/words/format.ts';
import { axeFindings, withAxe } from '../support/axe.ts';
import { expect, openPage, settled, test } from '../support/browser.ts';
import { type PdfPage, readPdf } from '../support/pdf.ts';
import { commandLine, digits, openPanels, savedPlan } from '../support/place.ts';
import { rehearsed } from '../support/rehearsed.ts';

const [{ plan: FIRST }] = DEMO_PLANS;

/** Goes to the sheet and waits until its pages and pictures stand. */
async function openSheet(page: Page, paper: 'A4' | 'US Letter'): Promise<void> {
  await page.getByRole('button', { name: en['place.sheet'], exact: true }).click();
  await page.locator('.paper-page').first().waitFor();
  await page.getByRole('button', { name: paper, exact: true }).click();
  await page.evaluate(async () => {
    await document.fonts.ready;
  });
  await settled(page);
}

const printed = async (page: Page): Promise<PdfPage[]> =>
  readPdf(new Uint8Array(await page.pdf({ preferCSSPageSize: true, printBackground: true })));

/** What a download brought. */
async function bytesOf(download: Download): Promise<Buffer> {
  const folder = mkdtempSync(join(tmpdir(), 'ridgewright-handed-over-'));
  try {
    await download.saveAs(join(folder, 'file'));
    return readFileSync(join(folder, 'file'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A file that a button of the hand-over gives. */
async function handedOver(page: Page, button: string): Promise<Buffer> {
  await page.getByRole('button', { name: en['handOver.open'] }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  await page.keyboard.press('Escape');
  return bytesOf(download);
}

const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
const widthOf = ({ points }: PdfPage['paths'][number]): number => span(points.map(([x]) => x));
const heightOf = ({ points }: PdfPage['paths'][number]): number => span(points.map(([, y]) => y));
const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** What the sheet's rows say, by reading id: name and digits. */
const sheetRows = (page: Page): Promise<{ id: string; label: string; number: string }[]> =>
  page.locator('[data-sheet-reading]').evaluateAll((rows) =>
    rows.map((row) => ({
      id: row.getAttribute('data-sheet-reading') ?? '',
      label: (row.querySelector('th, dt')?.firstChild?.textContent ?? '').trim(),
      number: row.querySelector('[data-value]')?.getAttribute('data-value') ?? '',
    })),
  );

/** Source of the sizes: ISO 216 and ANSI Y14.1, mm. */
const PAPERS = [
  { paper: 'A4', width: 210, height: 297 },
  { paper: 'US Letter', width: 215.9, height: 279.4 },
] as const;

for (const { paper, width, height } of PAPERS) {
  test(`on ${paper} the bar is 50 mm, section and drill are in true scale, nothing is cut off`, async ({
    page,
  }) => {
    await openPanels(page);
    await openSheet(page, paper);
    const pages = await printed(page);
    const [first] = pages;
    for (const one of pages) {
      expect(Math.abs(one.width - width)).toBeLessThan(0.2);
      expect(Math.abs(one.height - height)).toBeLessThan(0.2);
      for (const { from, to, y } of one.pieces) {
        expect(from).toBeGreaterThan(9);
        expect(to).toBeLessThan(width - 9);
        expect(y).toBeGreaterThan(9);
        expect(y).toBeLessThan(height - 9);
      }
    }
    const bars = first.paths.filter((path) => path.points.length === 2 && Math.abs(widthOf(path) - 50) < 2);
    expect(bars).toHaveLength(1);
    expect(Math.abs(widthOf(bars[0]) - 50)).toBeLessThan(0.1);
    expect(heightOf(bars[0])).toBeLessThan(0.01);

    // Worked: a flat shoulder to the apical rim is the whole length of the shape, 1.5 + 11 mm.
    const length = totalLength(FIRST.implant);
    expect(length).toBe(12.5);
    const steel = first.paths.filter((path) => path.filled === '#555555').map(heightOf);
    expect(steel.filter((h) => Math.abs(h - length) < 0.1)).toHaveLength(1);
    expect(steel.filter((h) => Math.abs(h - 3 * length) < 0.2)).toHaveLength(1);
    expect(pages.at(-1)?.text).toContain(en['sheet.cautions']);
    pages.forEach((one, i) => {
      expect(one.text).toContain(`sheet ${i + 1} / ${pages.length}`);
      const print = fingerprint(FIRST)
        .slice(0, 12)
        .replace(/(.{4})(?=.)/g, '$1 ');
      expect(one.text).toContain(print);
    });
    const overfull = await page
      .locator('.paper-room, .paper-frame')
      .evaluateAll((rooms) =>
        rooms.filter((room) => room.scrollHeight > room.clientHeight + 1).map((room) => room.textContent),
      );
    expect(overfull).toEqual([]);
  });
}

test('page, print, CSV, JSON and command line have the same digits by reading id', async ({ page }) => {
  await openPanels(page);
  const table = await digits(page);
  const csv = `${await handedOver(page, 'Readings of this plan as CSV')}`;
  const json = `${await handedOver(page, 'Readings of this plan as JSON')}`;
  const cli = await commandLine(await savedPlan(page));
  await openSheet(page, 'A4');
  const rows = await sheetRows(page);
  const pages = await printed(page);
  const text = pages.map((one) => one.text).join(' ');

  const shown = Object.fromEntries(Object.entries(table).filter(([, number]) => number !== '–'));
  expect(Object.fromEntries(rows.map(({ id, number }) => [id, number]))).toEqual(shown);
  for (const { label, number } of rows)
    expect(text).toMatch(new RegExp(`${escaped(label.replace(/\s+/g, ' '))} ${escaped(number)}(?![\\d.])`));

  const cells = Papa.parse<Record<string, string>>(csv.replace(/^\uFEFF/, ''), { header: true }).data;
  const objects = (JSON.parse(json) as { rows: Record<string, string>[] }).rows;
  const page0 = (cell: string) => (cell === '' ? '–' : cell.replace(/^-/, '−'));
  const byId = (list: Record<string, string>[]) =>
    Object.fromEntries(list.filter(({ id }) => id in table).map(({ id, value }) => [id, page0(value)]));
  expect(byId(cells)).toEqual(table);
  expect(byId(objects)).toEqual(table);
  const told = Object.fromEntries(
    cli.flatMap(({ id, shown: one }) => (one === undefined ? [] : [[id, one]])),
  );
  expect(told).toEqual(table);
});

test('a rehearsed plan has its drills, the mark to stop at, and its passes on the sheet', async ({
  page,
}) => {
  const plan = rehearsed(DEMO_PLANS[1].plan);
  await openPanels(page);
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({
      name: 'made.json',
      mimeType: 'application/json',
      buffer: Buffer.from(printPlanFile(plan)),
    });
  await openSheet(page, 'A4');
  await page.locator('.paper-passes').first().waitFor();
  await settled(page);
  const pages = await printed(page);
  const text = pages.map((one) => one.text).join(' ');
  const steps = drillingOf(plan)?.plan.steps ?? [];
  const full = steps.find(({ reason }) => reason === 'full-depth');
  expect(await page.locator('[data-sheet-step]').count()).toBe(steps.length);
  expect(await page.locator('[data-printed-pass]').count()).toBe(plan.rehearsal?.passes.length);
  const mark = formatNumber({ value: full?.mark?.value ?? Number.NaN, unit: 'mm' });
  expect(text).toContain(`${mark} ${en['sheet.stopHere']}`);
  expect(text).toContain(en['drilling.caution.force']);
  expect(text).toContain(en['sheet.rehearsal']);
});

test('axe finds nothing on the sheet', async ({ page }) => {
  await withAxe(page);
  await openPanels(page);
  await openSheet(page, 'US Letter');
  expect(await axeFindings(page)).toEqual([]);
}, 150_000);

test('the sheet has pictures of the model, and the stage comes as a picture of the size asked for', async ({
  page,
}) => {
  await page.setViewportSize({ width: 900, height: 640 });
  await page.addInitScript(() => {
    localStorage.setItem('ridgewright.session.1', JSON.stringify({ drawing: 'light' }));
  });
  await openPage(page);
  const png = await handedOver(page, 'The model as it stands, PNG as 1200 px');
  // Source: PNG specification, 11.2.2: width and height are the first eight bytes of IHDR.
  expect(png.subarray(1, 4).toString()).toBe('PNG');
  expect(png.readUInt32BE(16)).toBe(1200);
  const stage = await page
    .locator('.stage canvas')
    .evaluate(({ clientWidth, clientHeight }) => [clientWidth, clientHeight]);
  expect(Math.abs(png.readUInt32BE(20) - (1200 * stage[1]) / stage[0])).toBeLessThan(2);
  await openSheet(page, 'A4');
  const pictures = await page.locator('[data-picture]').evaluateAll(async (images) =>
    Promise.all(
      images.map(async (image) => {
        if (!(image instanceof HTMLImageElement)) return 0;
        await image.decode();
        const canvas = document.createElement('canvas');
        canvas.width = 60;
        canvas.height = 50;
        const context = canvas.getContext('2d');
        context?.drawImage(image, 0, 0, 60, 50);
        const { data } = context?.getImageData(0, 0, 60, 50) ?? { data: [] };
        return new Set([...data].filter((_, i) => i % 4 === 0)).size;
      }),
    ),
  );
  expect(pictures).toHaveLength(2);
  // Not one colour: a canvas read in another tick would be empty.
  for (const colours of pictures) expect(colours).toBeGreaterThan(30);
  const pages = await printed(page);
  expect(pages.reduce((sum, one) => sum + one.images, 0)).toBe(2);
}, 150_000);
