import { useMemo } from 'react';
import type { ReadingId } from '../core/measure/reading.ts';
import type { PlanStores } from '../state/stores.ts';

/** What a pointer does to a drawn line: over it its reading is lit everywhere, pressed it is explained in the table. */
export interface LineActs {
  readonly onPointerEnter: () => void;
  readonly onPointerLeave: () => void;
  readonly onClick: () => void;
}

/** The acts of a reading's line; the table offers the same to a keyboard. */
export function useLineActs({ live, session }: PlanStores): (id: ReadingId) => LineActs {
  return useMemo(
    () => (id) => ({
      onPointerEnter: () => live.set({ hover: id }),
      onPointerLeave: () => live.set({ hover: null }),
      onClick: () => session.set({ selectedReading: id }),
    }),
    [live, session],
  );
}
