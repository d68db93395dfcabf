import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { build } from 'vite';
import { ROOT } from './scan.ts';

type Program = 'measure' | 'ridgewright' | 'mark';

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function start(args: readonly string[]): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { cwd: ROOT });
    let [out, err] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      err += text;
    });
    child.on('error', reject).on('close', (code) => resolve({ code, out, err }));
  });
}

/** The program from its sources, as the scripts of `package.json` start it: a second and more for each start. */
export const runSource = (program: Program, ...args: string[]): Promise<Ran> =>
  start(['--import', 'tsx', join('src/cli', `${program}.ts`), ...args]);

let built: Promise<string> | undefined;

/** The programs put together, once a worker and in a folder of its own, so that a start need not translate every file again. */
async function buildAll(): Promise<string> {
  const folder = join(ROOT, 'node_modules/.cache/cli', `${process.pid}`);
  const input = Object.fromEntries(
    (['measure', 'ridgewright', 'mark'] as const).map((name) => [name, join(ROOT, 'src/cli', `${name}.ts`)]),
  );
  await build({
    configFile: false,
    root: ROOT,
    logLevel: 'warn',
    build: { ssr: true, outDir: folder, emptyOutDir: true, rollupOptions: { input } },
  });
  return folder;
}

/** The program as a process of its own, from the same sources, started quickly. */
export async function runProgram(program: Program, ...args: string[]): Promise<Ran> {
  built ??= buildAll();
  return start([join(await built, `${program}.js`), ...args]);
}
