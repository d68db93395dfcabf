import { Canvas, type RootState } from '@react-three/fiber';
import { type PointerEvent, useCallback, useEffect, useRef, useState } from 'react';
import type { ReadingId } from '../core/measure/reading.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';
import type { Asked } from './CameraRig.tsx';
import './console.ts';
import { Drawn } from './Drawn.tsx';
import { beginDrag, type Drag } from './drag.ts';
import { graphicsHere } from './graphics.ts';
import { HANDLES, type HandleId } from './handles.ts';
import type { Lens } from './lens.ts';
import { Overlay, type Sheet } from './Overlay.tsx';
import './stage.css';
import { ViewButtons } from './ViewButtons.tsx';
import { LENS } from './views.ts';
import { World } from './World.tsx';

export interface StageProps {
  stores: PlanStores;
  /** The number of what is to be shown; a frame is drawn for each, and none while nothing changes. */
  revision: number;
  onDrawn: (revision: number) => void;
  /** Called where there is no 3D: nothing will be reported as drawn. */
  onAbsent: () => void;
}

const CAMERA = {
  ...LENS,
  up: [0, 0, 1] as [number, number, number],
  position: [150, 0, 40] as [number, number, number],
};

/** A lost context comes back with nothing on it: one more frame puts the picture right. */
function prepare({ gl, invalidate }: RootState): void {
  gl.localClippingEnabled = true;
  gl.shadowMap.autoUpdate = false;
  gl.domElement.addEventListener('webglcontextrestored', () => invalidate());
}

/** The stage: canvas, the ink over it, the buttons of the views. Draws on demand: no frame passes while nothing changes. */
export default function Stage({ stores, revision, onDrawn, onAbsent }: StageProps) {
  const [graphics] = useState(graphicsHere);
  const { session, live } = stores;
  const drawing = useSelected(session, (state) => state.drawing);
  const [slow, setSlow] = useState(graphics.software);
  const light = drawing === 'light' || (drawing === 'auto' && slow);
  const frame = useRef<HTMLDivElement>(null);
  const lens = useRef<Lens | null>(null);
  const drag = useRef<Drag | null>(null);
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const [asked, setAsked] = useState<Asked>(() => ({ view: session.getState().view, count: 0 }));
  const [free, setFree] = useState(false);

  useEffect(() => {
    if (!graphics.present) onAbsent();
  }, [graphics, onAbsent]);

  const onFree = useCallback(() => setFree(true), []);
  const onSlow = useCallback(() => setSlow(true), []);

  const onSheet = useCallback((next: Sheet, through: Lens, held: number) => {
    lens.current = through;
    setSheet(next);
    const stage = frame.current;
    if (!stage) return;
    if (stage.dataset.camera !== through.name) stage.dataset.camera = through.name;
    stage.dataset.geometries = `${held}`;
    for (const id of HANDLES) {
      const { x, y } = next.handles.grips[id];
      stage.setAttribute(`data-handle-${id}`, `${Math.round(x)},${Math.round(y)}`);
    }
  }, []);

  const onGrip = useCallback(
    (id: HandleId, event: PointerEvent<SVGElement>) => {
      const box = frame.current?.getBoundingClientRect();
      if (!lens.current || !box || drag.current || event.button !== 0) return;
      event.preventDefault();
      event.currentTarget.ownerSVGElement?.setPointerCapture(event.pointerId);
      const hand = { x: event.clientX - box.left, y: event.clientY - box.top };
      drag.current = beginDrag(stores, id, lens.current, hand);
    },
    [stores],
  );

  const letGo = useCallback((how: 'end' | 'cancel') => {
    drag.current?.[how]();
    drag.current = null;
  }, []);

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && drag.current) letGo('cancel');
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [letGo]);

  if (!graphics.present) {
    return (
      <div className="calm">
        <p>{say('stage.noGraphics')}</p>
      </div>
    );
  }

  const onPointerMove = (event: PointerEvent) => {
    const box = frame.current?.getBoundingClientRect();
    if (drag.current && box) drag.current.move({ x: event.clientX - box.left, y: event.clientY - box.top });
  };

  return (
    <div className="stage" ref={frame} data-setting={light ? 'light' : 'full'}>
      <div className="stage-picture" role="img" aria-label={say('stage.label')}>
        <Canvas
          key={light ? 'light' : 'full'}
          frameloop="demand"
          flat
          shadows={light ? false : 'percentage'}
          dpr={light ? 1 : [1, 2]}
          gl={{ stencil: false, antialias: !light }}
          camera={CAMERA}
          onCreated={prepare}
        >
          <World stores={stores} light={light} asked={asked} onFree={onFree} onSheet={onSheet} />
          <Drawn revision={revision} onDrawn={onDrawn} onSlow={onSlow} />
        </Canvas>
        <div
          className="stage-ink"
          onPointerMove={onPointerMove}
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
              onPoint={(id) => live.set({ hover: id })}
            />
          )}
        </div>
      </div>
      <ViewButtons
        stores={stores}
        free={free}
        onAsk={(view) => {
          setFree(false);
          setAsked(({ count }) => ({ view, count: count + 1 }));
        }}
      />
    </div>
  );
}
