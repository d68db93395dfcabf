import { readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { drillReport } from '../core/plan/drillReport.ts';
import { evaluate } from '../core/plan/evaluate.ts';
import { passesShown } from '../core/plan/inHand.ts';
import type { ReadResult } from '../core/plan/read.ts';
import { LARGEST_FILE, parsePlanFile, tooLarge } from '../io/planFile.ts';
import { presentFault } from '../words/presentFault.ts';
import { say } from '../words/say.ts';
import { measureJson } from './measureJson.ts';
import { measureTable } from './measureTable.ts';

/** Exit codes: 0 done, 1 something is beyond and `--judge` was given, 2 usage, 3 unusable file, 4 a fault of this program. */
const DONE = 0;
const BEYOND = 1;
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
      options: { json: { type: 'boolean' }, judge: { type: 'boolean' }, help: { type: 'boolean' } },
    });
  } catch (error) {
    talk(error instanceof Error ? error.message : String(error));
    return null;
  }
}

/** The file's plan or its faults; null where it cannot be read. A file that is too large is not even opened. */
function planOf(file: string): ReadResult | null {
  let text: string;
  try {
    const { size } = statSync(file);
    if (size > LARGEST_FILE) return tooLarge(size);
    text = readFileSync(file, 'utf8');
  } catch {
    return null;
  }
  return parsePlanFile(text);
}

/** Results on stdout, talk on stderr. Returns the exit code. Every file is read before the first is printed. */
function run(args: readonly string[]): number {
  const given = options(args);
  if (!given) {
    talk(say('cli.usage'));
    return USAGE;
  }
  if (given.values.help) {
    process.stdout.write(`${say('cli.usage')}\n`);
    return DONE;
  }
  if (given.positionals.length === 0) {
    talk(`${say('cli.noFile')}\n${say('cli.usage')}`);
    return USAGE;
  }
  const evaluations = [];
  for (const path of given.positionals) {
    const file = basename(path);
    const read = planOf(path);
    if (read === null) {
      talk(say('fault.unreadable', { file }));
      return UNUSABLE;
    }
    if (!read.ok) {
      talk(say('fault.inFile', { file, fault: presentFault(read.faults[0]) }));
      return UNUSABLE;
    }
    if (read.migrated.length > 0) talk(say('cli.migrated', { file, steps: read.migrated.join(', ') }));
    const { plan } = read;
    const report = passesShown(plan).length > 0 ? drillReport(plan) : null;
    evaluations.push({ file, evaluation: evaluate(plan), report });
  }
  process.stdout.write(given.values.json ? measureJson(evaluations) : measureTable(evaluations));
  const beyond = evaluations.some(({ evaluation }) => evaluation.readings.some((r) => r.status === 'beyond'));
  return given.values.judge && beyond ? BEYOND : DONE;
}

try {
  process.exitCode = run(process.argv.slice(2));
} catch (error) {
  talk(say('cli.ownFault', { detail: error instanceof Error ? error.message : String(error) }));
  process.exitCode = OWN_FAULT;
}
