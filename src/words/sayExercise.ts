import { exercisePanelWords } from './exercisePanel.en.ts';
import { sayer } from './say.ts';

/** Says the words of an exercise that is opened or done. */
export const say = sayer(exercisePanelWords);
