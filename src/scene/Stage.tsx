import { Canvas, type RootState } from '@react-three/fiber';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { heldIn } from '../state/held.ts';
import type { View } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/say.ts';
import type { Asked } from './CameraRig.tsx';
import './console.ts';
import { Drawn, type Held } from './Drawn.tsx';
import { graphicsHere } from './graphics.ts';
import { HANDLES } from './handles.ts';
import { InkLayer, type ShowSheet } from './InkLayer.tsx';
import type { Lens } from './lens.ts';
import type { Sheet } from './Overlay.tsx';
import { Photographer } from './Photographer.tsx';
import './stage.css';
import { StageTools } from './StageTools.tsx';
import { ViewButtons } from './ViewButtons.tsx';
import { LENS } from './views.ts';
import { World } from './World.tsx';

export interface StageProps {
  stores: PlanStores;
  /** Called with the revision that a frame has shown; a frame is drawn for each, and none while nothing changes. */
  onDrawn: (revision: number) => void;
  /** Called where there is no 3D: nothing will be reported as drawn. */
  onAbsent: () => void;
}

export const CAMERA = {
  ...LENS,
  up: [0, 0, 1] as [number, number, number],
  position: [150, 0, 40] as [number, number, number],
};

/** A lost context comes back with nothing on it: one more frame puts the picture right. */
export function prepare({ gl, invalidate }: RootState): void {
  gl.localClippingEnabled = true;
  gl.shadowMap.autoUpdate = false;
  gl.domElement.addEventListener('webglcontextrestored', () => invalidate());
}

/**
 * The stage: canvas, the ink over it, the buttons of the views. Draws on demand. On its element it tells whoever drives the page the camera,
 * the places of the handles and how many geometries and textures are held.
 */
export default function Stage({ stores, onDrawn, onAbsent }: StageProps) {
  const [graphics] = useState(graphicsHere);
  const { session, live } = stores;
  const drawing = useSelected(session, (state) => state.drawing);
  const [slow, setSlow] = useState(graphics.software);
  const light = drawing === 'light' || (drawing === 'auto' && slow);
  const drilled = useSelected(stores.live, (state) => state.drilled?.passes.length ?? 0);
  const frame = useRef<HTMLDivElement>(null);
  const door = useRef<ShowSheet | null>(null);
  const view = useSelected(session, (state) => state.view);
  const count = useSelected(live, (state) => state.viewAsked);
  const asked = useMemo<Asked>(() => ({ view, count }), [view, count]);
  /** The view that the hand has turned the camera away from. */
  const [left, setLeft] = useState<Asked | null>(null);
  const held = heldIn(stores);

  useEffect(() => {
    if (!graphics.present) onAbsent();
  }, [graphics, onAbsent]);

  const onFree = useCallback(() => setLeft(asked), [asked]);
  const onSlow = useCallback(() => setSlow(true), []);

  const onView = useCallback(
    (wanted: View) => {
      session.set({ view: wanted });
      live.set({ viewAsked: live.getState().viewAsked + 1 });
    },
    [session, live],
  );

  const onSheet = useCallback((sheet: Sheet, lens: Lens) => {
    door.current?.(sheet, lens);
    const stage = frame.current;
    if (!stage) return;
    if (stage.dataset.camera !== lens.name) stage.dataset.camera = lens.name;
    for (const id of HANDLES) {
      const { x, y } = sheet.handles.grips[id];
      stage.setAttribute(`data-handle-${id}`, `${Math.round(x)},${Math.round(y)}`);
    }
  }, []);

  const onFrame = useCallback(({ geometries, textures }: Held) => {
    if (!frame.current) return;
    frame.current.dataset.geometries = `${geometries}`;
    frame.current.dataset.textures = `${textures}`;
  }, []);

  if (!graphics.present) {
    return (
      <div className="calm">
        <p>{say('stage.noGraphics')}</p>
      </div>
    );
  }
  return (
    <div
      className="stage"
      ref={frame}
      data-setting={light ? 'light' : 'full'}
      data-drilled={held && held !== 'wrong' ? drilled : 0}
    >
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
          <Photographer live={stores.live} frame={frame} />
          <Drawn live={stores.live} onDrawn={onDrawn} onFrame={onFrame} onSlow={onSlow} />
        </Canvas>
        <InkLayer stores={stores} door={door} onView={onView} />
      </div>
      <ViewButtons stores={stores} free={left === asked} onAsk={onView} />
      {(held === null || held === 'tool') && <StageTools stores={stores} />}
    </div>
  );
}
