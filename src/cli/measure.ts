import { measure } from './commands/measure.ts';
import { run } from './program.ts';

process.exitCode = await run(measure, 'npm run --silent measure --', process.argv.slice(2));
