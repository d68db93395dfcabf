import { Canvas, type RootState } from '@react-three/fiber';
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { Evaluation } from '../../core/plan/evaluate.ts';
import { evaluationOf } from '../../state/evaluation.ts';
import type { PlanStores } from '../../state/stores.ts';
import { useSelected } from '../../state/useSelected.ts';
import type { Language } from '../../words/language.ts';
import type { PatientStep } from '../../words/presentPatient.ts';
import { sayPatient } from '../../words/sayPatient.ts';
import '../console.ts';
import { Drawn } from '../Drawn.tsx';
import { graphicsHere } from '../graphics.ts';
import type { Lens } from '../lens.ts';
import { anchorsOf, placeLabels } from './labels.ts';
import { LOOKS } from './looks.ts';
import { LabelLayer, type LabelSheet } from './ShowLabels.tsx';
import { type ShowDoor, ShowWorld } from './ShowWorld.tsx';
import { type Frame, SHOW_LENS, type Size } from './showCamera.ts';
import { outlineOf, type ShowSolids } from './showSolids.ts';
import { type Leaf, Unfolding } from './unfolding.ts';
import { useTurn } from './useTurn.ts';
import './show.css';

/** Draws a step as a picture of its own; the canvas holds it only while `take` runs. */
export type TakePicture = (
  step: PatientStep,
  size: Size,
  take: (canvas: HTMLCanvasElement, sheet: LabelSheet) => void,
) => void;

export interface ShowStageProps {
  stores: PlanStores;
  step: PatientStep;
  language: Language;
  /** The empty part of the page that the drawing is to stand in. */
  place: RefObject<HTMLElement | null>;
  /** Filled with the door to pictures of the steps. */
  pictures: RefObject<TakePicture | null>;
  onDrawn: (revision: number) => void;
  onAbsent: () => void;
}

const CAMERA = { ...SHOW_LENS, position: [0, 170, 0] as [number, number, number] };
const NOWHERE: Frame = { left: 0, top: 0, width: 1, height: 1 };
/** A picture is shown a third as large as it is drawn: its type is larger, and room is left for it. */
const PICTURE = { side: 0.03, top: 0.11, type: 42, size: 1.04 } as const;

const calm = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

function prepare({ gl, invalidate }: RootState): void {
  gl.domElement.addEventListener('webglcontextrestored', () => invalidate());
}

/** Where the place of the drawing lies on the stage, px. */
function frameOn(stage: HTMLElement, place: HTMLElement): Frame {
  const [on, at] = [stage.getBoundingClientRect(), place.getBoundingClientRect()];
  return { left: at.left - on.left, top: at.top - on.top, width: at.width, height: at.height };
}

/** Words and outline of a leaf. */
function sheetOf(
  step: PatientStep,
  evaluation: Evaluation,
  leaf: Leaf,
  lens: Lens,
  solids: ShowSolids,
  type?: number,
): LabelSheet {
  return {
    labels: placeLabels(
      step,
      evaluation.plan.site.tooth >= 20,
      anchorsOf(evaluation),
      lens,
      leaf.frame,
      type,
    ),
    outline: leaf.look.outline > 0 ? outlineOf(solids.crownPoints, lens) : '',
    share: leaf.look.outline,
    words: 1,
  };
}

/**
 * The patient's drawing: the plan's solids, unfolding step by step on the page's own paper. Draws on demand; `data-shown` names the step that stands
 * still on it.
 */
export default function ShowStage({
  stores,
  step,
  language,
  place,
  pictures,
  onDrawn,
  onAbsent,
}: ShowStageProps) {
  const [graphics] = useState(graphicsHere);
  const plan = useSelected(stores.document, (state) => state.plan);
  const drawing = useSelected(stores.session, (state) => state.drawing);
  const [slow, setSlow] = useState(graphics.software);
  const light = drawing === 'light' || (drawing === 'auto' && slow);
  const evaluation = useMemo(() => evaluationOf(plan), [plan]);
  const stage = useRef<HTMLDivElement>(null);
  const world = useRef<ShowDoor | null>(null);
  const labels = useRef<((sheet: LabelSheet) => void) | null>(null);
  const solids = useRef<ShowSolids | null>(null);
  const [unfolding] = useState(() => new Unfolding({ look: LOOKS[step], frame: NOWHERE }));
  const wanted = useRef(step);
  const fitted = useRef(false);

  useEffect(() => {
    if (!graphics.present) onAbsent();
  }, [graphics, onAbsent]);

  useLayoutEffect(() => {
    const before = wanted.current;
    wanted.current = step;
    if (!stage.current || !place.current) return;
    const frame = frameOn(stage.current, place.current);
    if (!fitted.current) unfolding.refit(frame);
    else if (before !== step) unfolding.unfold({ look: LOOKS[step], frame }, calm());
    fitted.current = true;
    world.current?.invalidate();
  }, [step, place, unfolding]);

  useEffect(() => {
    if (!stage.current || !place.current) return;
    const watch = new ResizeObserver(() => {
      if (!stage.current || !place.current || unfolding.moving) return;
      unfolding.refit(frameOn(stage.current, place.current));
      world.current?.invalidate();
    });
    watch.observe(stage.current);
    watch.observe(place.current);
    return () => watch.disconnect();
  }, [place, unfolding]);

  const onDoor = useCallback((door: ShowDoor | null) => {
    world.current = door;
  }, []);

  const onLeaf = useCallback(
    (leaf: Leaf, lens: Lens, made: ShowSolids) => {
      solids.current = made;
      const sheet = sheetOf(wanted.current, evaluation, leaf, lens, made);
      flushSync(() => labels.current?.({ ...sheet, words: unfolding.rest }));
      if (!stage.current) return;
      const { left, width } = leaf.frame;
      stage.current.style.setProperty('--left', `${Math.round(left)}px`);
      stage.current.style.setProperty('--right', `${Math.round(left + width)}px`);
      stage.current.dataset.camera = lens.name;
    },
    [evaluation, unfolding],
  );

  useLayoutEffect(() => {
    pictures.current = (wished, size, take) => {
      const made = solids.current;
      if (!made) return;
      const frame = {
        left: PICTURE.side * size.width,
        top: PICTURE.top * size.height,
        width: (1 - 2 * PICTURE.side) * size.width,
        height: (1 - 2 * PICTURE.top) * size.height,
      };
      const leaf = { look: { ...LOOKS[wished], size: LOOKS[wished].size * PICTURE.size }, frame };
      world.current?.picture(leaf, size, (canvas, lens) =>
        take(canvas, sheetOf(wished, evaluation, leaf, lens, made, PICTURE.type)),
      );
      world.current?.invalidate();
    };
    return () => {
      pictures.current = null;
    };
  }, [pictures, evaluation]);

  const onFrame = useCallback(() => {
    if (stage.current) stage.current.dataset.shown = unfolding.moving ? '' : wanted.current;
  }, [unfolding]);
  const onSlow = useCallback(() => setSlow(true), []);
  const turn = useTurn((azimuth, elevation) => {
    unfolding.turnBy(azimuth, elevation);
    world.current?.invalidate();
  });

  if (!graphics.present) return <p className="show-absent">{sayPatient(language, 'patient.noGraphics')}</p>;
  return (
    <div
      ref={stage}
      className="show-stage"
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: an application takes keys
      tabIndex={0}
      aria-label={sayPatient(language, 'patient.drawing')}
      aria-description={sayPatient(language, 'patient.turnKeys')}
      data-setting={light ? 'light' : 'full'}
      {...turn}
    >
      <Canvas
        key={light ? 'light' : 'full'}
        frameloop="demand"
        flat
        dpr={light ? 1 : [1, 2]}
        gl={{ stencil: false, antialias: true }}
        camera={CAMERA}
        onCreated={prepare}
      >
        <ShowWorld
          evaluation={evaluation}
          light={light}
          unfolding={unfolding}
          onDoor={onDoor}
          onLeaf={onLeaf}
        />
        <Drawn live={stores.live} onDrawn={onDrawn} onFrame={onFrame} onSlow={onSlow} />
      </Canvas>
      <LabelLayer language={language} door={labels} />
    </div>
  );
}
