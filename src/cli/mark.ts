import { mark } from './commands/mark.ts';
import { run } from './program.ts';

process.exitCode = await run(mark, 'npm run --silent mark --', process.argv.slice(2));
