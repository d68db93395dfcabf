import { faultWords } from './faults.en.ts';
import { sayer } from './say.ts';

/** Says the words of what a file is refused for. */
export const say = sayer(faultWords);
