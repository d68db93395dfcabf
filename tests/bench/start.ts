/**
 * Builds the bench as the page is built and runs that: the loader that runs TypeScript directly names every inner function anew at every call, which
 * costs up to a fifth of the time and is no part of the program.
 */
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../../', import.meta.url));
const outDir = `${root}node_modules/.cache/bench`;
await build({
  root,
  configFile: false,
  logLevel: 'warn',
  build: { ssr: `${root}tests/bench/run.ts`, outDir, emptyOutDir: true, minify: false, target: 'node20' },
});
await import(pathToFileURL(`${outDir}/run.js`).href);
