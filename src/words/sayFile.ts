import { handOverWords } from './handOver.en.ts';
import { modelWords } from './models.en.ts';
import { sayer } from './say.ts';
import { tableWords } from './tables.en.ts';

/** Says the words of what is handed over as a file. */
export const say = sayer({ ...handOverWords, ...modelWords, ...tableWords });
