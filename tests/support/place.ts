import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { openPage } from './browser.ts';
import { runProgram } from './commandLine.ts';

/** What the command line prints of one reading, as far as the tests look at it. */
export interface PrintedReading {
  id: string;
  shown?: string;
  status?: string | null;
}

/** Takes 3D away from a page, as on a machine without it. */
export const withoutGraphics = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => null;
  });

/**
 * Opens the page without its stage, as on a machine without 3D: the panels are the same and nothing waits for
 * a software renderer. The stage has tests of its own.
 */
export async function openPanels(page: Page): Promise<void> {
  await withoutGraphics(page);
  await openPage(page);
}

/** Opens the whole page in the light setting on a small stage: quick to draw, the same in all else. */
export async function openPlace(page: Page): Promise<void> {
  await page.setViewportSize({ width: 1024, height: 768 });
  await page.addInitScript(() => {
    localStorage.setItem('ridgewright.session.1', JSON.stringify({ drawing: 'light' }));
  });
  await openPage(page);
}

export const field = (page: Page, name: string) => page.getByRole('spinbutton', { name, exact: true });

/** Types into a field and leaves it with Enter. */
export async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
}

/** Digits of every reading in the table, by id. */
export const digits = (page: Page): Promise<Record<string, string>> =>
  page.locator('[data-reading]').evaluateAll((rows) =>
    Object.fromEntries(
      rows.map((row) => {
        const cell = row.querySelector('[data-value]');
        return [row.getAttribute('data-reading') ?? '', cell?.firstChild?.textContent ?? ''];
      }),
    ),
  );

/** The number behind digits as the page shows them: a true minus, no unit. */
export const numberOf = (shown: string): number => Number(shown.replace('\u2212', '-'));

/** The drawn edge of a side in the wall profile, as its path. */
export const wallEdge = (page: Page, side: 'facial' | 'palatal') =>
  page.locator(`[data-wall-profile] [data-edge="${side}"]`).getAttribute('d');

/** The file that the page hands out when `press` is done. */
export async function handedOut(
  page: Page,
  press: () => Promise<unknown>,
): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  const folder = mkdtempSync(join(tmpdir(), 'ridgewright-saved-'));
  try {
    await download.saveAs(join(folder, 'file'));
    return { name: download.suggestedFilename(), text: readFileSync(join(folder, 'file'), 'utf8') };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The plan on the table, saved by the page's own button and read back from the file; `press` is how it is pressed. */
export const savedPlan = async (
  page: Page,
  press = () => page.getByRole('button', { name: 'Save as a file' }).click(),
): Promise<string> => (await handedOut(page, press)).text;

/** What the command line reads off a plan file's text. */
export async function commandLine(text: string): Promise<PrintedReading[]> {
  const folder = mkdtempSync(join(tmpdir(), 'ridgewright-plan-'));
  const file = join(folder, 'plan.json');
  try {
    writeFileSync(file, text);
    const { out } = await runProgram('measure', file, '--json');
    const [{ readings }] = JSON.parse(out) as { readings: PrintedReading[] }[];
    return readings;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
