import { ContactChart } from '../../panels/ContactChart.tsx';
import { HandSection } from '../../panels/HandSection.tsx';
import { ReadingsTable } from '../../panels/ReadingsTable.tsx';
import { SeatPanel } from '../../panels/SeatPanel.tsx';
import { SeatSentence } from '../../panels/SeatSentence.tsx';
import { SeatStop } from '../../panels/SeatStop.tsx';
import { seatStores } from '../../state/inHand.ts';
import { say } from '../../words/saySeat.ts';
import type { Bench } from './place.ts';

/** *Seat*: the implant as its acts have left it. */
export const SEAT: Bench = {
  kind: 'bench',
  names: { rail: say('panel.seat'), profile: say('panel.contact'), readings: say('panel.readings') },
  shown: seatStores,
  Sentence: SeatSentence,
  Rail: ({ stores }) => <SeatPanel stores={seatStores(stores)} />,
  Section: ({ stores }) => <HandSection stores={seatStores(stores)} />,
  Beside: ({ stores }) => <ContactChart stores={seatStores(stores)} />,
  Under: ({ stores }) => (
    <>
      <SeatStop stores={stores} />
      <ReadingsTable stores={seatStores(stores)} />
    </>
  ),
};
