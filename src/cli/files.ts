import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { ReadResult } from '../core/plan/read.ts';
import { LARGEST_FILE, parsePlanFile, tooLarge } from '../io/planFile.ts';
import { presentFault } from '../words/presentFault.ts';
import { say } from '../words/sayAll.ts';
import { talk, tell, UnusableFile, UsageError } from './program.ts';

/** A file that is too large is not even opened. */
function readAny(path: string, file: string): ReadResult {
  try {
    const { size } = statSync(path);
    if (size > LARGEST_FILE) return tooLarge(size);
    return parsePlanFile(readFileSync(path, 'utf8'));
  } catch {
    throw new UnusableFile(say('fault.unreadable', { file }));
  }
}

/** The plan of a file; an older version is said on stderr. Throws {@link UnusableFile} with one line that says what is wrong. */
export function planIn(path: string) {
  const file = basename(path);
  const read = readAny(path, file);
  if (!read.ok) throw new UnusableFile(say('fault.inFile', { file, fault: presentFault(read.faults[0]) }));
  if (read.migrated.length > 0) talk(say('cli.migrated', { file, steps: read.migrated.join(', ') }));
  return { file, plan: read.plan, migrated: read.migrated };
}

/** The files a command was given; throws a {@link UsageError} where they are not as many as it takes. */
export function fileNames(positionals: readonly string[], least: number, most = least): readonly string[] {
  if (positionals.length === 0) throw new UsageError(say('cli.noFile'));
  if (positionals.length < least) throw new UsageError(say('cli.tooFew'));
  if (positionals.length > most) throw new UsageError(say('cli.tooMany', { file: positionals[most] }));
  return positionals;
}

/** Writes a result into the file that was named, else to stdout. Bytes that are no text are not poured into a terminal. */
export function give(result: string | Uint8Array, out: string | undefined): void {
  if (out === undefined) {
    if (typeof result !== 'string' && process.stdout.isTTY) throw new UsageError(say('cli.nameOut'));
    tell(result);
    return;
  }
  try {
    writeFileSync(out, result);
  } catch {
    throw new UnusableFile(say('cli.unwritable', { file: basename(out) }));
  }
}
