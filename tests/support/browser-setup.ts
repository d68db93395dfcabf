import { execFileSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { type PreviewServer, preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { launchChromium } from './chromium.ts';
import { ROOT } from './scan.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built page. */
    page: string;
    /** Address of the test bench, built for development: React tells of its complaints there. */
    bench: string;
    /** Where the one browser of the run listens. */
    browser: string;
  }
}

const BENCH = 'node_modules/.cache/bench';

const newest = (path: string): number => {
  const file = statSync(path);
  if (!file.isDirectory()) return file.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
};

const age = (path: string): number => {
  try {
    return statSync(join(ROOT, path)).mtimeMs;
  } catch {
    return 0;
  }
};

/** Builds unless the page that was built is younger than everything it is made of. */
export function build(page: string, args: readonly string[], mode: string, from: readonly string[]): void {
  const made = age(page);
  const sources = [...from, 'vite.config.ts', 'package.json'].map((path) => join(ROOT, path));
  if (made > Math.max(...sources.map(newest))) return;
  const { VITEST: _, ...env } = process.env;
  const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
  const options = { cwd: ROOT, env: { ...env, NODE_ENV: mode }, stdio: 'inherit' as const };
  execFileSync(process.execPath, [vite, 'build', '--logLevel', 'warn', ...args], options);
}

async function serve(directory: string): Promise<{ server: PreviewServer; address: string }> {
  const server = await preview({
    configFile: false,
    root: ROOT,
    logLevel: 'warn',
    build: { outDir: directory },
    preview: { host: '127.0.0.1', port: 0 },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('the preview server has no port');
  return { server, address: `http://127.0.0.1:${address.port}/` };
}

/** Once per run: the built page and the bench are made and served, and one browser is started. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const assets = age('assets') > 0 ? ['assets'] : [];
  build('dist/index.html', [], 'production', ['src', ...assets]);
  const config = ['--config', 'tests/support/bench/vite.config.ts', '--mode', 'development'];
  build(`${BENCH}/index.html`, config, 'development', ['src', 'tests/support/bench', ...assets]);

  const page = await serve('dist');
  const bench = await serve(BENCH);
  const browser = await launchChromium();
  project.provide('page', page.address);
  project.provide('bench', bench.address);
  project.provide('browser', browser.wsEndpoint());

  return async () => {
    await browser.close();
    await page.server.close();
    await bench.server.close();
  };
}
