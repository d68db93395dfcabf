import { classWords } from './class.en.ts';
import { classPageWords } from './classPage.en.ts';
import { exercisePanelWords } from './exercisePanel.en.ts';
import { handWords } from './hand.en.ts';
import { ownHandWords } from './ownHand.en.ts';
import { sayer } from './say.ts';
import { teachWords } from './teach.en.ts';
import { teachPanelWords } from './teachPanel.en.ts';

/** Says the words of the place where a class is taught. */
export const say = sayer({
  ...teachWords,
  ...teachPanelWords,
  ...classWords,
  ...classPageWords,
  ...exercisePanelWords,
  ...ownHandWords,
  ...handWords,
});
