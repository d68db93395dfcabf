import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Answered } from '../../core/teaching/mark.ts';
import { classCsv } from '../../io/classTable.ts';
import { parseExerciseFile } from '../../io/exerciseFile.ts';
import { gathered, type MarkedFile, markFile } from '../../io/markFiles.ts';
import { LARGEST_FILE } from '../../io/planFile.ts';
import { presentFault } from '../../words/presentFault.ts';
import { say } from '../../words/sayAll.ts';
import { fileNames, give } from '../files.ts';
import { markJson, markTable } from '../markReport.ts';
import { type Command, DONE, taken, UnusableFile, UsageError } from '../program.ts';

const OPTIONS = {
  json: { type: 'boolean' },
  csv: { type: 'boolean' },
  out: { type: 'string' },
} as const;

/** A file's text; null: it cannot be read. One that is too large is not opened: blanks of that length say so. */
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

/** The exercise with its answer. Throws {@link UnusableFile} with one line that says what is wrong. */
function exerciseIn(path: string): Answered {
  const file = basename(path);
  const text = textOf(path);
  if (text === null) throw new UnusableFile(say('fault.unreadable', { file }));
  const read = parseExerciseFile(text);
  if (!read.ok) throw new UnusableFile(say('fault.inFile', { file, fault: presentFault(read.faults[0]) }));
  const { answer } = read.value;
  if (!answer) throw new UnusableFile(say('mark.noAnswer', { file }));
  return { ...read.value, answer };
}

/** A class of attempts against the teacher's plan. A broken attempt is a line of the report. */
export const mark: Command = {
  name: 'mark',
  usage: (call) => say('cli.usage.mark', { call }),
  run: (args) => {
    const { values, positionals } = taken(args, OPTIONS);
    const [path, ...attempts] = fileNames(positionals, 2, Number.POSITIVE_INFINITY);
    if (values.json && values.csv) throw new UsageError(say('cli.jsonOrCsv'));
    const exercise = exerciseIn(path);
    const files: MarkedFile[] = attempts
      .flatMap(filesOf)
      .map((file) => markFile(exercise, basename(file), textOf(file)));
    const print = values.json ? markJson : values.csv ? classCsv : markTable;
    give(print(exercise, gathered(files)), values.out);
    return DONE;
  },
};
