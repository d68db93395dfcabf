import { PROGRAM_VERSION } from '../io/version.ts';
import { say } from '../words/sayAll.ts';
import { compare } from './commands/compare.ts';
import { exportPlan } from './commands/export.ts';
import { mark } from './commands/mark.ts';
import { measure } from './commands/measure.ts';
import { migrate } from './commands/migrate.ts';
import { type Command, DONE, run, tell, UsageError } from './program.ts';

const CALL = 'npm run --silent ridgewright --';

/** Every command, by the word that calls it. */
const COMMANDS: readonly Command[] = [measure, compare, exportPlan, migrate, mark];

/** The program without a command: its help, its version, or what is wrong with the word that was to be one. */
const bare = (word: string | undefined): Command => ({
  name: '',
  usage: () => say('cli.usage', { call: CALL }),
  run: () => {
    if (word === '--version') {
      tell(`${PROGRAM_VERSION}\n`);
      return DONE;
    }
    throw new UsageError(word === undefined ? say('cli.noCommand') : say('cli.unknownCommand', { word }));
  },
});

const [word, ...rest] = process.argv.slice(2);
const command = COMMANDS.find(({ name }) => name === word);
process.exitCode = command
  ? await run(command, `${CALL} ${command.name}`, rest)
  : await run(bare(word), CALL, word === '--help' ? [word] : rest);
