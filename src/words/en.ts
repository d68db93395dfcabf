import { classWords } from './class.en.ts';
import { classPageWords } from './classPage.en.ts';
import { cliWords } from './cli.en.ts';
import { crownWords } from './crown.en.ts';
import { crownPlaceWords } from './crownPlace.en.ts';
import { drillingWords } from './drilling.en.ts';
import { exercisePanelWords } from './exercisePanel.en.ts';
import { faultWords } from './faults.en.ts';
import { handWords } from './hand.en.ts';
import { handOverWords } from './handOver.en.ts';
import { modelWords } from './models.en.ts';
import { ownHandWords } from './ownHand.en.ts';
import { rehearseWords } from './rehearse.en.ts';
import { seatingWords } from './seating.en.ts';
import { seatPanelWords } from './seatPanel.en.ts';
import { sheetWords } from './sheet.en.ts';
import { shellWords } from './shell.en.ts';
import { siteWords } from './site.en.ts';
import { strayWords } from './stray.en.ts';
import { tableWords } from './tables.en.ts';
import { teachWords } from './teach.en.ts';
import { teachPanelWords } from './teachPanel.en.ts';

/**
 * Every word a user can see, in English; the page loads them part by part, each with what says it (`say.ts`). A template may hold named slots, `{slot}`; `say` fills them.
 * Slots take text, never numbers: a number goes through the formatter first.
 * Keys are `place.thing`, in the order in which the page shows them.
 */
export const en = {
  ...shellWords,
  ...strayWords,
  ...handWords,
  ...siteWords,
  ...rehearseWords,
  ...seatingWords,
  ...seatPanelWords,
  ...crownPlaceWords,
  ...drillingWords,
  ...faultWords,
  ...modelWords,
  ...teachWords,
  ...teachPanelWords,
  ...crownWords,
  ...classWords,
  ...classPageWords,
  ...exercisePanelWords,
  ...ownHandWords,
  ...cliWords,
  ...tableWords,
  ...handOverWords,
  ...sheetWords,
} as const;
