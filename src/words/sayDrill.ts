import { drillingWords } from './drilling.en.ts';
import { handWords } from './hand.en.ts';
import { rehearseWords } from './rehearse.en.ts';
import { sayer } from './say.ts';

/** Says the words of drilling and its rehearsal. */
export const say = sayer({ ...handWords, ...rehearseWords, ...drillingWords });
