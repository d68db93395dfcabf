import { lazy } from 'react';
import { BudgetPanel } from '../../panels/BudgetPanel.tsx';
import { DepthStrip } from '../../panels/DepthStrip.tsx';
import { HoleReadings } from '../../panels/HoleReadings.tsx';
import { RehearseSentence } from '../../panels/RehearseSentence.tsx';
import type { Bench } from './place.ts';

const RehearsePanel = lazy(() => import('../../panels/RehearsePanel.tsx'));

/** *Rehearse*: the tool in the hand stands where the implant is planned. */
export const REHEARSE: Bench = {
  kind: 'bench',
  names: { rail: 'panel.rehearse', profile: 'panel.strip', readings: 'panel.hole' },
  shown: ({ inHand }) => inHand,
  Sentence: RehearseSentence,
  Rail: ({ inHand }) => <RehearsePanel stores={inHand} />,
  Beside: DepthStrip,
  Under: ({ stores }) => (
    <>
      <BudgetPanel stores={stores} />
      <HoleReadings stores={stores} />
    </>
  ),
};
