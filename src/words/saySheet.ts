import { drillingWords } from './drilling.en.ts';
import { handWords } from './hand.en.ts';
import { handOverWords } from './handOver.en.ts';
import { sayer } from './say.ts';
import { sheetWords } from './sheet.en.ts';

/** Says the words of what is drawn on paper. */
export const say = sayer({ ...sheetWords, ...handOverWords, ...drillingWords, ...handWords });
