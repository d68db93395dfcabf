import {
  type PointerEvent,
  type RefObject,
  useCallback,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import type { ReadingId } from '../core/measure/reading.ts';
import type { PlanStores } from '../state/stores.ts';
import { beginDrag, type Drag } from './drag.ts';
import type { HandleId } from './handles.ts';
import type { Lens } from './lens.ts';
import { Overlay, type Sheet } from './Overlay.tsx';

/** Puts a frame's ink on the page. */
export type ShowSheet = (sheet: Sheet, lens: Lens) => void;

interface InkLayerProps {
  stores: PlanStores;
  /** Filled with the door through which the frames' ink comes. */
  door: RefObject<ShowSheet | null>;
}

/** The ink over the canvas and the hand on its handles. Drawn again for every frame, and nothing else with it. */
export function InkLayer({ stores, door }: InkLayerProps) {
  const { session, live } = stores;
  const layer = useRef<HTMLDivElement>(null);
  const lens = useRef<Lens | null>(null);
  const drag = useRef<Drag | null>(null);
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

  const letGo = useCallback((how: 'end' | 'cancel') => {
    drag.current?.[how]();
    drag.current = null;
  }, []);

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && drag.current) letGo('cancel');
    };
    window.addEventListener('keydown', onKey);
    return () => {
      window.removeEventListener('keydown', onKey);
      letGo('end');
    };
  }, [letGo]);

  const handAt = (event: PointerEvent) => {
    const box = layer.current?.getBoundingClientRect();
    return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) };
  };

  const onGrip = (id: HandleId, event: PointerEvent<SVGElement>) => {
    if (!lens.current || drag.current || event.button !== 0) return;
    event.preventDefault();
    layer.current?.setPointerCapture(event.pointerId);
    drag.current = beginDrag(stores, id, lens.current, handAt(event));
  };

  return (
    <div
      ref={layer}
      className="stage-ink"
      onPointerMove={(event) => drag.current?.move(handAt(event))}
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
