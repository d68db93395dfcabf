import { crownWords } from './crown.en.ts';
import { crownPlaceWords } from './crownPlace.en.ts';
import { sayer } from './say.ts';

/** Says the words of the place where the crown is looked at. */
export const say = sayer({ ...crownWords, ...crownPlaceWords });
