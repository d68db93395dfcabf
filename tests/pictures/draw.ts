/**
 * Pictures to look at while anatomy is worked on; nothing is compared with them.
 *
 *   npm run pictures -- teeth OUT.png                 every class from four sides
 *   npm run pictures -- tooth canine OUT.png          one class, right and left, from all sides
 *   npm run pictures -- site PLAN.json OUT.png [bone,gum,teeth,crown,implant,canal,bite] [veiled]
 *   npm run pictures -- implant PLAN.json OUT.png
 *   npm run pictures -- model FILE.glb OUT.png        a solid model as its file has it
 *   npm run pictures -- lower OUT.png
 *   npm run pictures -- sheet CELLS.json OUT.png      cells as in cells.ts
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { createServer } from 'vite';
import type { ToothClass } from '../../src/core/anatomy/landmarks.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { parsePlanFile } from '../../src/io/planFile.ts';
import { launchChromium } from '../support/chromium.ts';
import { ROOT } from '../support/scan.ts';
import { type Cell, EYES, type EyeName, type Sheet, type Subject } from './cells.ts';

const CLASSES: readonly ToothClass[] = ['central', 'lateral', 'canine', 'premolar1', 'premolar2'];
const ALL: readonly EyeName[] = ['facial', 'palatal', 'incisal', 'mesial', 'distal', 'oblique', 'behind'];

const views = (subject: Subject, names: readonly EyeName[], name: string): Cell[] =>
  names.map((eye) => ({ subject, eye: EYES[eye], caption: `${name} ${eye}` }));

function planOf(path: string): Plan {
  const read = parsePlanFile(readFileSync(path, 'utf8'));
  if (!read.ok) throw new Error(`not a plan: ${JSON.stringify(read.faults)}`);
  return read.plan;
}

function sheetOf([kind, ...rest]: readonly string[]): { sheet: Sheet; out: string } {
  if (kind === 'teeth') {
    const cells = CLASSES.flatMap((cls) =>
      views({ kind: 'tooth', cls, side: 'right' }, ['facial', 'palatal', 'incisal', 'mesial', 'behind'], cls),
    );
    return { sheet: { cells, columns: 5, size: 300 }, out: rest[0] };
  }
  if (kind === 'tooth') {
    const cells = (['right', 'left'] as const).flatMap((side) =>
      views({ kind: 'tooth', cls: rest[0] as ToothClass, side }, ALL, side),
    );
    return { sheet: { cells, columns: 4, size: 380 }, out: rest[1] };
  }
  if (kind === 'lower') {
    const cells = (['central', 'lateral'] as const).flatMap((cls) => views({ kind: 'lower', cls }, ALL, cls));
    return { sheet: { cells, columns: 7, size: 260 }, out: rest[0] };
  }
  if (kind === 'implant') {
    const subject = { kind: 'implant', shape: planOf(rest[0]).implant } as const;
    return { sheet: { cells: views(subject, ALL, ''), columns: 4, size: 420 }, out: rest[1] };
  }
  if (kind === 'model') {
    const subject = { kind: 'model', glb: readFileSync(rest[0]).toString('base64') } as const;
    const names: readonly EyeName[] = ['facial', 'palatal', 'incisal', 'oblique', 'behind', 'mesial'];
    return { sheet: { cells: views(subject, names, ''), columns: 3, size: 560 }, out: rest[1] };
  }
  if (kind === 'site') {
    const parts = (rest[2] ?? 'bone,gum,teeth').split(',');
    const subject = { kind: 'site', plan: planOf(rest[0]), parts, veiled: rest[3] === 'veiled' } as const;
    const names: readonly EyeName[] = ['facial', 'palatal', 'incisal', 'oblique', 'behind', 'mesial'];
    return { sheet: { cells: views(subject, names, ''), columns: 3, size: 560 }, out: rest[1] };
  }
  if (kind === 'sheet') return { sheet: JSON.parse(readFileSync(rest[0], 'utf8')) as Sheet, out: rest[1] };
  throw new Error('teeth, tooth, lower, implant, model, site or sheet; see the head of this file');
}

const { sheet, out } = sheetOf(process.argv.slice(2));
const server = await createServer({
  root: ROOT,
  configFile: false,
  logLevel: 'error',
  server: { port: 0, host: '127.0.0.1', hmr: false, watch: null },
  cacheDir: join(ROOT, 'node_modules/.cache/pictures'),
  optimizeDeps: { include: ['three'] },
});
await server.listen();
const launched = await launchChromium();
const browser = await chromium.connect(launched.wsEndpoint());
const page = await browser.newPage();
page.on('pageerror', (error) => console.error(error.message));
page.on('console', (message) => message.type() === 'error' && console.error(message.text()));
await page.goto(`${server.resolvedUrls?.local[0]}tests/pictures/index.html`);
await page.waitForFunction(() => window.drawSheet !== undefined);
const url = await page.evaluate(async (s) => (await window.drawSheet?.(s)) ?? '', sheet);
writeFileSync(out, Buffer.from(url.split(',')[1], 'base64'));
await browser.close();
await launched.close();
await server.close();
