/**
 * What is sent before the page stands, before the model is drawn, and when a ridge is first drilled: bytes of the built files, gzip. The budgets for the model
 * and the workers are the project's (340 and 280 KiB). Its 100 KiB for the shell would be react-dom (64) with what says, draws and holds the first place, without
 * the measuring (45); here both are counted, since the first place shows its readings from the beginning.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from '../support/browser.ts';
import { ROOT } from '../support/scan.ts';

/** KiB. */
const BUDGET = { page: 170, model: 340, worker: 280 } as const;

const ASSETS = join(ROOT, 'dist/assets');
const textOf = (file: string): string => readFileSync(join(ASSETS, file), 'utf8');
const kib = (files: Iterable<string>): number =>
  [...files].reduce((sum, file) => sum + gzipSync(readFileSync(join(ASSETS, file)), { level: 9 }).length, 0) /
  1024;

/** The one built file whose name begins so. */
function named(start: string, end: string): string {
  const found = readdirSync(ASSETS).filter((file) => file.startsWith(`${start}-`) && file.endsWith(end));
  expect(found, start).toHaveLength(1);
  return found[0];
}

/** Files, and all that they import before they run. */
function withImports(files: readonly string[], known = new Set<string>()): Set<string> {
  for (const file of files) {
    if (known.has(file)) continue;
    known.add(file);
    if (!file.endsWith('.js')) continue;
    const imports = [...textOf(file).matchAll(/(?:from|import)\s*["']\.\/([^"']+\.js)["']/g)];
    withImports(
      imports.map(([, name]) => name),
      known,
    );
  }
  return known;
}

function firstLoad(): Set<string> {
  const html = readFileSync(join(ROOT, 'dist/index.html'), 'utf8');
  const named = [...html.matchAll(/(?:src|href)="\.\/assets\/([^"]+\.(?:js|css))"/g)].map(([, file]) => file);
  expect(named.length).toBeGreaterThan(3);
  return withImports(named);
}

test('what the page needs before it stands', () => {
  const files = firstLoad();
  expect(kib(files)).toBeLessThan(BUDGET.page);
  // What reads files, cuts holes and clips is not among it.
  const text = [...files].filter((file) => file.endsWith('.js')).map(textOf);
  expect(text.filter((code) => code.includes('ridgewright-exercise'))).toEqual([]);
});

test('what the model needs beside it', () => {
  const shell = firstLoad();
  const files = [...withImports([named('Stage', '.js')])].filter((file) => !shell.has(file));
  expect(kib([...files, named('Stage', '.css')])).toBeLessThan(BUDGET.model);
});

test.for(['solid.worker', 'models.worker'])('%s with the modeller', (worker) => {
  expect(kib([named(worker, '.js'), named('manifold', '.wasm')])).toBeLessThan(BUDGET.worker);
});
