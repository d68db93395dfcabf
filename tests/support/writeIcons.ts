/** Draws the icons of the installed page from the mark: `npx tsx tests/support/writeIcons.ts`. Only when the mark changes. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { launchChromium } from './chromium.ts';
import { ROOT } from './scan.ts';

const ICONS = [
  { name: 'icon-192.png', size: 192, share: 1 },
  { name: 'icon-512.png', size: 512, share: 1 },
  // What a system cuts to a shape of its own: everything that matters within a circle of four fifths (W3C, Web Application Manifest, icon masks).
  { name: 'icon-mask-512.png', size: 512, share: 0.74 },
  { name: 'icon-180.png', size: 180, share: 0.92 },
] as const;

const mark = readFileSync(join(ROOT, 'src/app/mark.svg'), 'utf8');
const server = await launchChromium();
const browser = await chromium.connect(server.wsEndpoint());
for (const { name, size, share } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const side = Math.round(size * share);
  await page.setContent(
    `<style>html,body{height:100%;margin:0;display:grid;place-items:center;background:${share < 1 ? '#F6F2E9' : 'none'}}svg{width:${side}px}</style>${mark}`,
  );
  writeFileSync(
    join(ROOT, 'src/app/icons', name),
    await page.screenshot({ omitBackground: true, scale: 'css' }),
  );
  await page.close();
}
await browser.close();
await server.close();
