/** The page without a network: after one visit its server goes away. Sources: the W3C's Service Workers (a new version waits while the old one is in use) and Web Application Manifest. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll } from 'vitest';
import { en } from '../../src/words/en.ts';
import { expect, listen, settled, test } from '../support/browser.ts';
import { sampleHeaders } from '../support/hosting.ts';
import { keptAs } from '../support/keep.ts';
import { digits, field, type, withoutGraphics } from '../support/place.ts';
import { ROOT } from '../support/scan.ts';

const TILT = en['rail.tiltFpName'];
const NEWER = 'Ridgewright, newer';

let copy = '';
beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'ridgewright-served-'));
  cpSync(join(ROOT, 'dist'), copy, { recursive: true });
});
afterAll(() => rmSync(copy, { recursive: true, force: true }));

async function serve(port: number): Promise<{ server: PreviewServer; port: number; address: string }> {
  const server = await preview({
    configFile: false,
    root: copy,
    logLevel: 'error',
    build: { outDir: '.' },
    preview: { host: '127.0.0.1', port, strictPort: port !== 0, headers: sampleHeaders().get('every file') },
  });
  const at = server.httpServer.address();
  if (at === null || typeof at === 'string') throw new Error('the server has no port');
  return { server, port: at.port, address: `http://127.0.0.1:${at.port}/` };
}

const files = (): string[] =>
  readdirSync(copy, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== 'sw.js')
    .map((entry) => relative(copy, join(entry.parentPath, entry.name)));

/** Makes of what is served another version: another page, and a list of files that says so. */
function bringOut(): void {
  const [page, list] = ['index.html', 'sw.js'].map((name) => join(copy, name));
  writeFileSync(page, readFileSync(page, 'utf8').replace(/<title>.*<\/title>/, `<title>${NEWER}</title>`));
  const before = readFileSync(list, 'utf8');
  const after = before.replace(/(url:"index\.html",revision:")[^"]*/, '$1another');
  expect(after).not.toBe(before);
  writeFileSync(list, after);
}

test('under the headers of a host: starts without a network after one visit, whole; a new version waits until it is taken', {
  timeout: 120_000,
}, async ({ browser }) => {
  const { server, port, address } = await serve(0);
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  listen(page, complaints);
  await withoutGraphics(page);
  await page.goto(address);
  await settled(page);
  await page.waitForFunction(() => document.documentElement.dataset.offline === 'ready');
  await server.close();
  await context.setOffline(true);
  await page.reload();
  await settled(page);
  const before = await digits(page);
  await type(page, TILT, '5');
  await settled(page);
  expect(await digits(page)).not.toEqual(before);
  await keptAs(page, 'kept');
  // Every file there is answers: rooms that were never entered, the solid modeller, fonts, icons.
  const missing = await page.evaluate(async (names) => {
    const answers = await Promise.all(names.map(async (name) => [(await fetch(name)).ok, name] as const));
    return answers.filter(([ok]) => !ok).map(([, name]) => name);
  }, files());
  expect(missing).toEqual([]);
  expect(files().length).toBeGreaterThan(25);

  await context.setOffline(false);
  bringOut();
  const again = await serve(port);
  await page.reload();
  await page.waitForFunction(() => document.documentElement.dataset.newer !== undefined);
  expect(await page.title()).toBe('Ridgewright');
  await page.getByRole('button', { name: en['offline.newer'] }).click();
  await Promise.all([
    page.waitForEvent('load'),
    page.getByRole('button', { name: en['offline.take'] }).click(),
  ]);
  await settled(page);
  expect(await page.title()).toBe(NEWER);
  expect(await field(page, TILT).inputValue()).toBe('+5.0');
  expect(complaints).toEqual([]);
  await context.close();
  await again.server.close();
});

test('can be installed: a manifest with a name, a start, and icons of the sizes it says', async ({
  page,
}) => {
  const { server, address } = await serve(0);
  await page.goto(address);
  const href = await page.locator('link[rel="manifest"]').getAttribute('href');
  const at = new URL(href ?? '', address);
  const manifest = await (await fetch(at)).json();
  expect(manifest).toMatchObject({ name: 'Ridgewright', display: 'standalone', start_url: './' });
  expect(manifest.icons.map(({ purpose = 'any' }) => purpose)).toEqual(['any', 'any', 'maskable']);
  for (const { src, sizes } of manifest.icons) {
    const png = Buffer.from(await (await fetch(new URL(src, at))).arrayBuffer());
    // Source: the W3C's PNG specification, IHDR: width and height at bytes 16 and 20.
    expect(`${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`).toBe(sizes);
  }
  await settled(page);
  await server.close();
});
