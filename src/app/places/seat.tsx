import { lazy } from 'react';
import { ContactChart } from '../../panels/ContactChart.tsx';
import { ReadingsTable } from '../../panels/ReadingsTable.tsx';
import { SeatSentence } from '../../panels/SeatSentence.tsx';
import { SeatStop } from '../../panels/SeatStop.tsx';
import type { Bench } from './place.ts';

const SeatPanel = lazy(() => import('../../panels/SeatPanel.tsx'));

/** *Seat*: the implant as its acts have left it. */
export const SEAT: Bench = {
  kind: 'bench',
  names: { rail: 'panel.seat', profile: 'panel.contact', readings: 'panel.readings' },
  shown: ({ inSeat }) => inSeat,
  Sentence: SeatSentence,
  Rail: ({ inSeat }) => <SeatPanel stores={inSeat} />,
  Beside: ({ inSeat }) => <ContactChart stores={inSeat} />,
  Under: ({ stores, inSeat }) => (
    <>
      <SeatStop stores={stores} />
      <ReadingsTable stores={inSeat} />
    </>
  ),
};
