import { useEffect, useReducer, useState } from 'react';
import type { Place, SessionStore } from '../state/session.ts';
import { useSelected } from '../state/useSelected.ts';
import type { Bench, Page } from './places/place.ts';
import { load, partsAt } from './places/places.ts';
import { POSE } from './places/pose.tsx';

interface Here {
  readonly place: Place;
  readonly parts: Bench | Page;
}

export interface Parts {
  /** What is on the page: the session's place, or while that is loaded the one before it; the implant's place, before any. */
  readonly here: Here;
  /** It is the session's place. */
  readonly arrived: boolean;
  /** The session's place, where it could not be loaded. */
  readonly lost: Place | null;
  /** Tries to load it again. */
  readonly retry: () => void;
}

const FIRST: Here = { place: 'place', parts: POSE };

/** What the session's place puts on the page. */
export function useParts(session: SessionStore): Parts {
  const place = useSelected(session, (state) => state.place);
  const teaching = useSelected(session, (state) => state.teaching);
  const [tries, again] = useReducer((before: number) => before + 1, 0);
  const [lost, setLost] = useState<Place | null>(null);
  const [last, setLast] = useState<Here>(FIRST);
  const parts = partsAt({ place, teaching });
  if (parts && last.parts !== parts) setLast({ place, parts });

  // biome-ignore lint/correctness/useExhaustiveDependencies: another try is another load
  useEffect(() => {
    setLost(null);
    if (parts) return;
    let current = true;
    load({ place, teaching }).then(
      () => current && again(),
      () => current && setLost(place),
    );
    return () => {
      current = false;
    };
  }, [parts, place, teaching, tries]);

  return { here: parts ? { place, parts } : last, arrived: parts !== null, lost, retry: again };
}
