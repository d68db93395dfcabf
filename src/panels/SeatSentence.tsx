import { memo } from 'react';
import { seatNow } from '../core/plan/seat.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { useSelected } from '../state/useSelected.ts';
import { presentSeatSentence } from '../words/presentSeatSentence.ts';
import { SpokenSentence } from './SpokenSentence.tsx';

/** The state of the seating in one sentence. */
export const SeatSentence = memo(function SeatSentence({ stores }: { stores: PlanStores }) {
  const moving = useSelected(stores.document, (state) => state.gesture !== null);
  return <SpokenSentence {...presentSeatSentence(seatNow(usePlan(stores)))} moving={moving} />;
});
