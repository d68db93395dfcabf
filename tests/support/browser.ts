import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { test as base, expect, inject } from 'vitest';

export interface BrowserFixtures {
  browser: Browser;
  context: BrowserContext;
  /**
   * What the page complained of so far: console warnings and errors, faults, files it did not get. Anything
   * left here at the end fails the test; a test that provokes a complaint takes it out and looks at it.
   */
  complaints: string[];
  page: Page;
}

let connected: Promise<Browser> | undefined;

/** Listens to a page; complaints are collected in the array. */
export function listen(page: Page, complaints: string[]): void {
  page.on('console', (message) => {
    if (['warning', 'error', 'assert'].includes(message.type()))
      complaints.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`fault: ${error.message}`));
  page.on('requestfailed', (request) => complaints.push(`not loaded: ${request.url()}`));
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()}: ${response.url()}`);
  });
}

export const test = base.extend<BrowserFixtures>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of the fixtures from this pattern
  browser: async ({}, use) => {
    connected ??= chromium.connect(inject('browser'));
    await use(await connected);
  },
  context: async ({ browser }, use) => {
    const context = await browser.newContext({
      viewport: { width: 1440, height: 900 },
      reducedMotion: 'reduce',
      locale: 'en-GB',
    });
    context.setDefaultTimeout(30_000);
    // The page is not laid by for later, three megabytes a test; offline.test.ts has contexts of its own.
    await context.addInitScript(() => {
      Object.defineProperty(Navigator.prototype, 'serviceWorker', { get: () => undefined });
    });
    await use(context);
    await context.close();
  },
  // biome-ignore lint/correctness/noEmptyPattern: as above
  complaints: async ({}, use) => {
    const complaints: string[] = [];
    await use(complaints);
    expect(complaints, 'the page complained').toEqual([]);
  },
  page: async ({ context, complaints }, use) => {
    const page = await context.newPage();
    listen(page, complaints);
    await use(page);
  },
});

export { expect };

/** Waits until everything on the page shows the newest revision. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const { revision, drawn } = document.documentElement.dataset;
    return revision !== undefined && revision === drawn;
  });
}

/** Opens the built page and waits until all of it is drawn. */
export async function openPage(page: Page): Promise<void> {
  await page.goto(inject('page'));
  await settled(page);
}

/** Opens one thing on the bench; see `tests/support/bench/bench.tsx`. */
export async function openBench(page: Page, name: string): Promise<void> {
  await page.goto(`${inject('bench')}#${name}`);
  await page.locator('#root > *').first().waitFor();
}
