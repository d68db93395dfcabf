import { useEffect, useLayoutEffect, useReducer, useRef, useState } from 'react';
import type { Place } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
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
export function useParts({ session, live }: PlanStores): Parts {
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

  const here = parts ? { place, parts } : last;
  const before = useRef(here.parts);
  // The stage may have drawn the newest revision as the place before has it: it draws once more.
  useLayoutEffect(() => {
    if (before.current !== here.parts) live.touch();
    before.current = here.parts;
  }, [here.parts, live]);

  return { here, arrived: parts !== null, lost, retry: again };
}
