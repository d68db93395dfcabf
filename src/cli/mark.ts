import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Answered } from '../core/teaching/mark.ts';
import { parseExerciseFile } from '../io/exerciseFile.ts';
import { gathered, type MarkedFile, markFile } from '../io/markFiles.ts';
import { LARGEST_FILE } from '../io/planFile.ts';
import { presentFault } from '../words/presentFault.ts';
import { say } from '../words/say.ts';
import { markCsv, markJson, markTable } from './markReport.ts';

/** Exit codes: 0 done, 2 usage, 3 unusable exercise, 4 a fault of this program. A broken attempt is a line of the report. */
const DONE = 0;
const USAGE = 2;
const UNUSABLE = 3;
const OWN_FAULT = 4;

const talk = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

function options(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: 'boolean' }, csv: { type: 'boolean' }, help: { type: 'boolean' } },
    });
  } catch (error) {
    talk(error instanceof Error ? error.message : String(error));
    return null;
  }
}

/** A file's text; a file that is too large is not opened, and its length alone says so; null: it cannot be read. */
function textOf(path: string): string | null {
  try {
    const { size } = statSync(path);
    return size > LARGEST_FILE ? ' '.repeat(LARGEST_FILE + 1) : readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

/** A folder stands for its .json files, in the order of their names. */
function filesOf(path: string): string[] {
  try {
    if (!statSync(path).isDirectory()) return [path];
    return readdirSync(path)
      .filter((name) => name.endsWith('.json'))
      .sort()
      .map((name) => join(path, name));
  } catch {
    return [path];
  }
}

/** The exercise with its answer, or the exit code after having said why there is none. */
function exerciseOf(path: string): Answered | null {
  const file = basename(path);
  const text = textOf(path);
  if (text === null) {
    talk(say('fault.unreadable', { file }));
    return null;
  }
  const read = parseExerciseFile(text);
  if (!read.ok) {
    talk(say('fault.inFile', { file, fault: presentFault(read.faults[0]) }));
    return null;
  }
  const { answer } = read.value;
  if (answer) return { ...read.value, answer };
  talk(say('mark.noAnswer', { file }));
  return null;
}

function run(args: readonly string[]): number {
  const given = options(args);
  if (given?.values.help) {
    process.stdout.write(`${say('mark.usage')}\n`);
    return DONE;
  }
  const [path, ...attempts] = given?.positionals ?? [];
  if (!given || attempts.length === 0 || (given.values.json && given.values.csv)) {
    talk(say('mark.usage'));
    return USAGE;
  }
  const exercise = exerciseOf(path);
  if (!exercise) return UNUSABLE;
  const files: MarkedFile[] = attempts
    .flatMap(filesOf)
    .map((file) => markFile(exercise, basename(file), textOf(file)));
  const print = given.values.json ? markJson : given.values.csv ? markCsv : markTable;
  process.stdout.write(print(exercise, gathered(files)));
  return DONE;
}

try {
  process.exitCode = run(process.argv.slice(2));
} catch (error) {
  talk(say('cli.ownFault', { detail: error instanceof Error ? error.message : String(error) }));
  process.exitCode = OWN_FAULT;
}
