/** The single file for a memory stick, opened from a file as its user does. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { beforeAll } from 'vitest';
import { planHash } from '../../src/io/link/planLink.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { en } from '../../src/words/en.ts';
import { expect, settled, test } from '../support/browser.ts';
import { build } from '../support/browser-setup.ts';
import { planOn } from '../support/keep.ts';
import { digits, type } from '../support/place.ts';
import { ROOT } from '../support/scan.ts';

const FILE = join(ROOT, 'dist-portable/ridgewright.html');
const ADDRESS = pathToFileURL(FILE).href;

beforeAll(() => {
  const config = ['--config', 'src/build/portable.config.ts'];
  build('dist-portable/ridgewright.html', config, 'production', ['src', 'assets']);
}, 180_000);

async function openFile(page: Page, hash = ''): Promise<string[]> {
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.setViewportSize({ width: 1024, height: 768 });
  await page.goto(`${ADDRESS}${hash}`);
  await settled(page);
  return asked.filter((url) => !url.startsWith('data:'));
}

test('is one file that asks for nothing, draws its stage, and answers an edit', async ({ page }) => {
  expect(readdirSync(join(ROOT, 'dist-portable'))).toEqual(['ridgewright.html']);
  expect(await openFile(page)).toEqual([ADDRESS]);
  expect(await page.locator('.stage canvas').count()).toBe(1);
  const before = await digits(page);
  await type(page, en['rail.tiltFpName'], '5');
  await settled(page);
  expect(await digits(page)).not.toEqual(before);
  expect(await page.getByText(en['kept.never']).count()).toBe(1);
});

test('says what it leaves out, leaves nothing on the machine, and opens a plan put after its address', async ({
  page,
}) => {
  await openFile(page, `#${planHash(DEMO_PLANS[1].plan)}`);
  await page.getByText(en['link.opened']).waitFor();
  await page.getByRole('button', { name: en['plans.open'] }).click();
  await page.getByText(en['portable.note']).waitFor();
  await page.getByRole('button', { name: en['link.open'] }).click();
  await page.getByText(en['link.fromFile']).waitFor();
  await page.keyboard.press('Escape');
  expect((await planOn(page)).site).toEqual(DEMO_PLANS[1].plan.site);
  const left = await page.evaluate(async () => ({
    storage: localStorage.length,
    databases: (await indexedDB.databases()).length,
  }));
  expect(left).toEqual({ storage: 0, databases: 0 });
});

test('lets in its own script and style by their hashes, and nothing else', () => {
  const page = readFileSync(FILE, 'utf8');
  const policy = /Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1] ?? '';
  expect(policy).toMatch(/default-src 'none'; script-src 'sha256-[^']{44}'; style-src 'sha256-[^']{44}';/);
  expect(policy).not.toMatch(/unsafe|https?:|\*/);
  expect(page.match(/<script/g)).toHaveLength(1);
});
