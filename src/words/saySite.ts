import { sayer } from './say.ts';
import { siteWords } from './site.en.ts';

/** Says the words of the place where the site is described. */
export const say = sayer(siteWords);
