import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type BrowserServer, chromium } from 'playwright-core';
import { ROOT } from './scan.ts';

/** Where a system's own browser usually stands. */
const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/**
 * WebGL by a software renderer; the page round it is painted by the processor itself. Painted through the same renderer, as
 * Debian's Chromium has it unless it is told otherwise, panels and text took more of a test than all of its script.
 */
const FLAGS = [
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-gpu-rasterization',
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--disable-quic',
];

/** Kept between runs, beside the installed packages, so that unpacking is paid for once. */
const UNPACKED = join(ROOT, 'node_modules', '.cache', 'chromium-143.0.4');

/** `CHROMIUM_PATH` if set, else the system's browser if it has one, else undefined. */
export function systemChromium(): string | undefined {
  return process.env.CHROMIUM_PATH ?? USUAL_PLACES.find((path) => existsSync(path));
}

interface Launch {
  executablePath: string;
  env?: Record<string, string | undefined>;
}

/** Unpacks one file of the package; it does not export this helper, which is reached by its place in it. */
async function inflate(home: string, file: string): Promise<void> {
  const place = pathToFileURL(join(home, 'build/esm/lambdafs.js')).href;
  const helper = (await import(place)) as { inflate: (packed: string) => Promise<string> };
  await helper.inflate(join(home, 'bin', file));
}

/** The package's own font settings name places that are not ours; without a font, text has no size. */
const fontsIn = (directory: string): string => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${directory}</dir>
  <cachedir>${directory}/cache</cachedir>
</fontconfig>
`;

/** The browser that comes along by npm (Linux, x64), unpacked with the libraries that a bare Linux lacks. */
async function bundledChromium(): Promise<Launch> {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('No browser found: set CHROMIUM_PATH to a Chromium or Chrome.');
  }
  const complete = join(UNPACKED, 'complete');
  const temporary = process.env.TMPDIR;
  // The package unpacks into the directory for temporary files; this gives it one of ours.
  process.env.TMPDIR = UNPACKED;
  try {
    if (!existsSync(complete)) {
      const { default: carried } = await import('@sparticuz/chromium');
      const home = join(dirname(createRequire(import.meta.url).resolve('@sparticuz/chromium')), '../..');
      rmSync(UNPACKED, { recursive: true, force: true });
      mkdirSync(UNPACKED, { recursive: true });
      carried.setGraphicsMode = true;
      await inflate(home, 'al2023.tar.br');
      await carried.executablePath();
      writeFileSync(join(UNPACKED, 'fonts/fonts.conf'), fontsIn(join(UNPACKED, 'fonts')));
      writeFileSync(complete, '');
    }
  } finally {
    if (temporary === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = temporary;
  }
  const libraries = [join(UNPACKED, 'al2023/lib'), process.env.LD_LIBRARY_PATH].filter(Boolean).join(':');
  return {
    executablePath: join(UNPACKED, 'chromium'),
    env: { ...process.env, LD_LIBRARY_PATH: libraries, FONTCONFIG_PATH: join(UNPACKED, 'fonts') },
  };
}

/** Starts one browser; any number of tests connect to it. `RIDGEWRIGHT_BUNDLED_CHROMIUM=1` passes over the system's. */
export async function launchChromium(
  bundled = process.env.RIDGEWRIGHT_BUNDLED_CHROMIUM === '1',
): Promise<BrowserServer> {
  const system = bundled ? undefined : systemChromium();
  const launch = system === undefined ? await bundledChromium() : { executablePath: system };
  return chromium.launchServer({ ...launch, args: FLAGS, headless: true });
}
