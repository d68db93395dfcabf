import { classWords } from './class.en.ts';
import { sayer } from './say.ts';
import { strayWords } from './stray.en.ts';

/** Says the words of the hand that strays. */
export const say = sayer({ ...strayWords, ...classWords });
