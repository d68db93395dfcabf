import { type ParseArgsConfig, parseArgs } from 'node:util';
import { say } from '../words/sayAll.ts';

/** Exit codes: 0 done, 1 something is beyond and the command was asked to judge, 2 usage, 3 unusable file, 4 a fault of this program. */
export const DONE = 0;
export const BEYOND = 1;
const USAGE = 2;
const UNUSABLE = 3;
const OWN_FAULT = 4;

/** The command line is not one that a command takes. */
export class UsageError extends Error {}

/** A file cannot be read or written, is no plan, or does not hold what is asked of it. */
export class UnusableFile extends Error {}

/** Talk goes to stderr, results to stdout. */
export const talk = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

export const tell = (result: string | Uint8Array): void => {
  process.stdout.write(result);
};

/** A command: what it says of its use, and what it does with the arguments after its name. Returns the exit code. */
export interface Command {
  readonly name: string;
  /** `call` is how it was reached, up to its first argument. */
  readonly usage: (call: string) => string;
  readonly run: (args: readonly string[]) => number | Promise<number>;
}

type Options = NonNullable<ParseArgsConfig['options']>;

/** The arguments by their options; throws a {@link UsageError} on what the command does not know. */
export function taken<T extends Options>(args: readonly string[], options: T) {
  try {
    return parseArgs({ args: [...args], allowPositionals: true, options });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

/** One of a few words; throws a {@link UsageError} that lists them. */
export function oneOf<T extends string>(option: string, allowed: readonly T[], given: string): T {
  const found = allowed.find((one) => one === given);
  if (found) return found;
  throw new UsageError(say('cli.oneOf', { option, given, allowed: allowed.join(', ') }));
}

/** Runs a command; whatever it throws becomes a line on stderr and a code. */
export async function run(command: Command, call: string, args: readonly string[]): Promise<number> {
  if (args.includes('--help')) {
    tell(`${command.usage(call)}\n`);
    return DONE;
  }
  try {
    return await command.run(args);
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    if (error instanceof UsageError) {
      talk(`${detail}\n${command.usage(call)}`);
      return USAGE;
    }
    if (error instanceof UnusableFile) {
      talk(detail);
      return UNUSABLE;
    }
    talk(say('cli.ownFault', { detail }));
    return OWN_FAULT;
  }
}
