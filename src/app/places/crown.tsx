import { lazy } from 'react';
import { CrownSection } from '../../panels/CrownSection.tsx';
import { CrownSentence } from '../../panels/CrownSentence.tsx';
import { ReadingsTable } from '../../panels/ReadingsTable.tsx';
import type { Bench } from './place.ts';

/** *Crown*: what the pose means for the crown, with both sections through it at a larger scale. */
export const CROWN: Bench = {
  kind: 'bench',
  names: { rail: 'panel.crown', profile: 'panel.crownAcross', readings: 'panel.readings' },
  shown: ({ stores }) => stores,
  Sentence: CrownSentence,
  Rail: lazy(() => import('../../panels/CrownPanel.tsx')),
  Section: ({ stores }) => <CrownSection stores={stores} kind="faciopalatal" />,
  Beside: ({ stores }) => <CrownSection stores={stores} kind="mesiodistal" />,
  Under: ReadingsTable,
};
