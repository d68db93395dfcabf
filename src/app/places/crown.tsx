import { CrownPanel } from '../../panels/CrownPanel.tsx';
import { CrownSection } from '../../panels/CrownSection.tsx';
import { CrownSentence } from '../../panels/CrownSentence.tsx';
import { ReadingsTable } from '../../panels/ReadingsTable.tsx';
import { say } from '../../words/sayCrown.ts';
import type { Bench } from './place.ts';

/** *Crown*: what the pose means for the crown, with both sections through it at a larger scale. */
export const CROWN: Bench = {
  kind: 'bench',
  names: { rail: say('panel.crown'), profile: say('panel.crownAcross'), readings: say('panel.readings') },
  shown: (stores) => stores,
  Sentence: CrownSentence,
  Rail: CrownPanel,
  Section: ({ stores }) => <CrownSection stores={stores} kind="faciopalatal" />,
  Beside: ({ stores }) => <CrownSection stores={stores} kind="mesiodistal" />,
  Under: ReadingsTable,
};
