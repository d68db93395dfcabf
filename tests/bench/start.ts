/**
 * `npm run bench`, or one section of it: `npm run bench -- ridge`. Builds the bench as the page is built and runs that: the loader that runs TypeScript directly names every inner function anew at every call, which
 * costs up to a fifth of the time and is no part of the program.
 */
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../../', import.meta.url));
const outDir = `${root}node_modules/.cache/bench`;
const sections = { readings: 'run', ridge: 'site', rehearsal: 'rehearsal' } as const;
const wanted = process.argv.slice(2);
const chosen = Object.entries(sections).filter(([name]) => wanted.length === 0 || wanted.includes(name));
if (chosen.length === 0) throw new Error(`No such section; there are ${Object.keys(sections).join(', ')}.`);
for (const [, file] of chosen) {
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    build: {
      ssr: `${root}tests/bench/${file}.ts`,
      outDir,
      emptyOutDir: true,
      minify: false,
      target: 'node20',
    },
  });
  await import(pathToFileURL(`${outDir}/${file}.js`).href);
}
