import { Canvas, type RootState, useFrame, useThree } from '@react-three/fiber';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Plan } from '../core/plan/plan.ts';
import { createLiveStore } from '../state/live.ts';
import { createSessionStore, type View } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import './console.ts';
import { graphicsHere } from './graphics.ts';
import { InkLayer, type ShowSheet } from './InkLayer.tsx';
import type { Lens } from './lens.ts';
import type { Sheet } from './Overlay.tsx';
import { photograph, pngOf } from './photo.ts';
import './stage.css';
import { CAMERA, prepare } from './Stage.tsx';
import { World } from './World.tsx';

/** A view of the model and its picture. */
export interface Portrait {
  readonly view: View;
  readonly png: Blob;
}

interface PortraitsProps {
  stores: PlanStores;
  views: readonly View[];
  /** Width of the pictures, px. */
  width: number;
  /** All pictures of a plan have been taken. */
  onTaken: (plan: Plan, portraits: readonly Portrait[]) => void;
  /** Where there is no 3D. */
  onAbsent: () => void;
}

/** How far the taking of a plan's pictures has come. */
interface Sitting {
  readonly plan: Plan;
  readonly taken: readonly Portrait[];
}

/** The same document, looked at in a way that does not hang on how this browser looks at it: cut, with gum, teeth and lines. */
function plainly({ document, session, own }: PlanStores): PlanStores {
  const plain = createSessionStore();
  plain.set({ drawing: session.getState().drawing, layers: { ...plain.getState().layers, crown: true } });
  return { document, session: plain, own, live: createLiveStore(document, plain) };
}

/** Frames in which nothing moved any more before the picture is taken: the parts of the page that follow the camera have followed by then. */
const STILL = 3;

/** Counts frames until the camera stands still, then says so once for each `turn`. */
function StandsStill({ turn, onStill }: { turn: unknown; onStill: () => void }) {
  const invalidate = useThree((three) => three.invalidate);
  const seen = useRef({ turn, place: '', still: 0 });
  useEffect(() => invalidate(), [invalidate]);
  useFrame(({ camera }) => {
    const place = camera.matrixWorld.elements.map((v) => Math.round(v * 1e4)).join(' ');
    const before = seen.current;
    const same = before.turn === turn && before.place === place;
    const still = same ? before.still + 1 : 0;
    seen.current = { turn, place, still };
    if (still === STILL) onStill();
    else if (still < STILL) invalidate();
  }, 1);
  return null;
}

const ignore = () => undefined;

/** Takes pictures of the plan from several sides on a stage that is out of sight, anew whenever the plan has changed and no gesture goes on. */
export default function Portraits({ views, width, onTaken, onAbsent, ...props }: PortraitsProps) {
  const [graphics] = useState(graphicsHere);
  const [stores] = useState(() => plainly(props.stores));
  const plan = useSelected(stores.document, (state) => state.plan);
  const moving = useSelected(stores.document, (state) => state.gesture !== null);
  const [sitting, setSitting] = useState<Sitting>({ plan, taken: [] });
  const frame = useRef<HTMLDivElement>(null);
  const door = useRef<ShowSheet | null>(null);
  const camera = useRef<RootState | null>(null);
  if (!moving && sitting.plan !== plan) setSitting({ plan, taken: [] });
  const light = stores.session.getState().drawing === 'light' || graphics.software;
  const { taken } = sitting;
  const view = views[Math.min(taken.length, views.length - 1)];
  const asked = useMemo(() => ({ view, count: taken.length }), [view, taken.length]);

  useEffect(() => {
    if (!graphics.present) onAbsent();
  }, [graphics, onAbsent]);
  useEffect(() => {
    if (taken.length === views.length) onTaken(sitting.plan, taken);
  }, [sitting, taken, views, onTaken]);

  const onSheet = useCallback((sheet: Sheet, lens: Lens) => door.current?.(sheet, lens), []);

  const onStill = () => {
    const ink = frame.current?.querySelector<SVGSVGElement>('svg.ink');
    if (!ink || !camera.current || taken.length === views.length) return;
    void pngOf(photograph(camera.current, ink, width, false)).then((png) =>
      setSitting((now) => (now === sitting ? { ...now, taken: [...taken, { view, png }] } : now)),
    );
  };

  if (!graphics.present) return null;
  return (
    <div className="portraits" ref={frame} aria-hidden="true" inert>
      <Canvas
        frameloop="demand"
        flat
        shadows={light ? false : 'percentage'}
        dpr={1}
        gl={{ stencil: false, antialias: !light }}
        camera={CAMERA}
        onCreated={(state) => {
          prepare(state);
          camera.current = state;
        }}
      >
        <World stores={stores} light={light} asked={asked} onFree={ignore} onSheet={onSheet} />
        <StandsStill turn={sitting} onStill={onStill} />
      </Canvas>
      <InkLayer stores={stores} door={door} onView={ignore} />
    </div>
  );
}
