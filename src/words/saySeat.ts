import { handWords } from './hand.en.ts';
import { sayer } from './say.ts';
import { seatingWords } from './seating.en.ts';
import { seatPanelWords } from './seatPanel.en.ts';

/** Says the words of seating, and of the hand that drills before it. */
export const say = sayer({ ...seatingWords, ...seatPanelWords, ...handWords });
