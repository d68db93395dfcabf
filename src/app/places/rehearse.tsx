import { BudgetPanel } from '../../panels/BudgetPanel.tsx';
import { DepthStrip } from '../../panels/DepthStrip.tsx';
import { HandSection } from '../../panels/HandSection.tsx';
import { HoleReadings } from '../../panels/HoleReadings.tsx';
import { RehearsePanel } from '../../panels/RehearsePanel.tsx';
import { RehearseSentence } from '../../panels/RehearseSentence.tsx';
import { handStores } from '../../state/inHand.ts';
import { say } from '../../words/sayDrill.ts';
import type { Bench } from './place.ts';

/** *Rehearse*: the tool in the hand stands where the implant is planned. */
export const REHEARSE: Bench = {
  kind: 'bench',
  names: { rail: say('panel.rehearse'), profile: say('panel.strip'), readings: say('panel.hole') },
  shown: handStores,
  Sentence: RehearseSentence,
  Rail: ({ stores }) => <RehearsePanel stores={handStores(stores)} />,
  Section: ({ stores }) => <HandSection stores={handStores(stores)} />,
  Beside: DepthStrip,
  Under: ({ stores }) => (
    <>
      <BudgetPanel stores={stores} />
      <HoleReadings stores={stores} />
    </>
  ),
};
