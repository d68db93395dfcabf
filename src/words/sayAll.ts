import { en } from './en.ts';
import { sayer } from './say.ts';

/** Says every word there is: for the command line. */
export const say = sayer(en);
