import { addEffect } from '@react-three/fiber';
import {
  type PointerEvent,
  type RefObject,
  useCallback,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { entryOf } from '../core/geometry/pose.ts';
import type { ReadingId } from '../core/measure/reading.ts';
import { shift } from '../core/plan/edits.ts';
import { evaluationOf } from '../state/evaluation.ts';
import type { View } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';
import { beginDrag, type Drag } from './drag.ts';
import type { HandleId } from './handles.ts';
import type { Lens } from './lens.ts';
import { Overlay, type Sheet } from './Overlay.tsx';
import { solveAmounts } from './solve.ts';
import { useStageKeys } from './useStageKeys.ts';

/** Puts a frame's ink on the page. */
export type ShowSheet = (sheet: Sheet, lens: Lens) => void;

/** A place of the page, px. */
interface PagePlace {
  readonly clientX: number;
  readonly clientY: number;
}

interface InkLayerProps {
  stores: PlanStores;
  /** Filled with the door through which the frames' ink comes. */
  door: RefObject<ShowSheet | null>;
  onView: (view: View) => void;
}

/** The ink over the canvas and the hand on its handles. Drawn again for every frame, and nothing else with it. */
export function InkLayer({ stores, door, onView }: InkLayerProps) {
  const { document, session, live } = stores;
  const placing = useSelected(live, (state) => state.placing);
  const layer = useRef<HTMLDivElement>(null);
  const lens = useRef<Lens | null>(null);
  const drag = useRef<Drag | null>(null);
  /** Where the hand was last seen, until a frame has followed it there. */
  const hand = useRef<PagePlace | null>(null);
  const [sheet, setSheet] = useState<Sheet | null>(null);

  useLayoutEffect(() => {
    door.current = (next, through) => {
      lens.current = through;
      setSheet(next);
    };
    return () => {
      door.current = null;
    };
  }, [door]);

  const keys = useStageKeys(stores, lens, onView);

  const handAt = useCallback((place: PagePlace) => {
    const box = layer.current?.getBoundingClientRect();
    return { x: place.clientX - (box?.left ?? 0), y: place.clientY - (box?.top ?? 0) };
  }, []);

  const follow = useCallback(() => {
    const place = hand.current;
    hand.current = null;
    if (place) drag.current?.move(handAt(place));
  }, [handAt]);

  // A hand may move many times between two frames: the plan follows it once, before the frame is drawn.
  useEffect(() => addEffect(follow), [follow]);

  const onMove = ({ clientX, clientY }: PagePlace) => {
    if (!drag.current) return;
    if (!hand.current) live.touch();
    hand.current = { clientX, clientY };
  };

  const letGo = useCallback(
    (how: 'end' | 'cancel') => {
      if (how === 'end') follow();
      hand.current = null;
      drag.current?.[how]();
      drag.current = null;
    },
    [follow],
  );

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      if (drag.current) letGo('cancel');
      live.set({ placing: false });
    };
    window.addEventListener('keydown', onKey);
    return () => {
      window.removeEventListener('keydown', onKey);
      letGo('end');
    };
  }, [letGo, live]);

  const onGrip = (id: HandleId, event: PointerEvent<SVGElement>) => {
    if (!lens.current || drag.current || event.button !== 0) return;
    event.preventDefault();
    layer.current?.setPointerCapture(event.pointerId);
    drag.current = beginDrag(stores, id, lens.current, handAt(event));
  };

  /** Shifts the implant so that its entry lies under the point of the picture. */
  const place = (event: PagePlace) => {
    const through = lens.current;
    if (!through) return;
    live.set({ placing: false });
    document.edit(say('edit.place'), (plan) => {
      const { toJaw } = evaluationOf(plan).anatomy;
      const [m, f] = solveAmounts(
        ([dm, df]) => through.at(toJaw(entryOf(shift(plan, dm, df).pose))),
        [0, 0],
        handAt(event),
        0.5,
      );
      const tidy = (by: number) => Math.round(by * 100) / 100;
      return shift(plan, tidy(m), tidy(f));
    });
  };

  return (
    <div
      ref={layer}
      className={placing ? 'stage-ink placing' : 'stage-ink'}
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: an application takes keys
      tabIndex={0}
      aria-label={say('stage.keys')}
      aria-description={say('stage.keysHint')}
      onKeyDown={keys.onKeyDown}
      onKeyUp={keys.onKeyUp}
      onBlur={keys.onBlur}
      onClick={placing ? place : undefined}
      onPointerMove={onMove}
      onPointerUp={() => letGo('end')}
      onPointerCancel={() => letGo('end')}
      onLostPointerCapture={() => letGo('end')}
    >
      {sheet && (
        <Overlay
          sheet={sheet}
          onGrip={onGrip}
          onHover={(id) => !drag.current && live.set({ hover: id })}
          onPick={(id: ReadingId) => session.set({ selectedReading: id })}
          onPoint={(id) => !drag.current && live.set({ hover: id })}
        />
      )}
    </div>
  );
}
