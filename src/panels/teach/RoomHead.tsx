import type { ReactNode } from 'react';
import type { PlanStores } from '../../state/stores.ts';
import { Rooms } from './Rooms.tsx';
import './room-head.css';

/** The head of all that is taught from: the words that lead to the others, then its own. */
export function RoomHead({ stores, children }: { stores: PlanStores; children: ReactNode }) {
  return (
    <div className="room-head">
      <Rooms stores={stores} />
      {children}
    </div>
  );
}
