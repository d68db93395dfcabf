import { useFrame, useThree } from '@react-three/fiber';
import { useRef } from 'react';
import { flushSync } from 'react-dom';
import type { Vec3 } from '../core/geometry/vec.ts';
import type { ReadingId } from '../core/measure/reading.ts';
import { holeAlone } from '../core/teaching/cost.ts';
import { trajectoryOf } from '../core/teaching/trajectories.ts';
import { BEFORE_THE_CUT, HIDDEN } from '../marks/dash.ts';
import { evaluationOf } from '../state/evaluation.ts';
import { heldIn, plannedOf } from '../state/held.ts';
import { litReading } from '../state/litReading.ts';
import type { BoneLook } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { say } from '../words/say.ts';
import { sayTiltOf } from '../words/sayStage.ts';
import { crownDrawing } from './crownDrawing.ts';
import { crownTags } from './crownTags.ts';
import type { Cut, Removed } from './cut.ts';
import { axisDrawing, handleDrawing, incisalDrawing, pathOf } from './drawing.ts';
import { ghostDrawing } from './ghost.ts';
import { goneWrongDrawing } from './goneWrong.ts';
import { type Lens, lensOf } from './lens.ts';
import type { Sheet } from './Overlay.tsx';
import { clipped, rimOf, standing, standingSilhouette } from './silhouette.ts';
import type { SiteSolids } from './siteSolids.ts';
import { TAG_SIZE } from './tagLayout.ts';
import { tagLines } from './wallTags.ts';

interface InkProps {
  stores: PlanStores;
  solids: SiteSolids;
  cut: Cut;
  bone: BoneLook;
  removed: Removed;
  onSheet: (sheet: Sheet, lens: Lens) => void;
}

/** Outlines that change with the camera, the site or the cut only; kept from frame to frame. */
interface Outlines {
  readonly key: string;
  readonly solids: SiteSolids;
  readonly hidden: string;
  readonly ghost: string;
}

function outlinesOf(
  solids: SiteSolids,
  cut: Cut,
  lens: Lens,
  removed: Removed,
  teeth: boolean,
  ofCrown: boolean,
  key: string,
): Outlines {
  const { eye } = lens;
  const hidden = solids.teeth
    .filter(({ tooth, beside }) => teeth && beside && Math.sign(tooth.station) !== removed)
    .map((t) => pathOf(standingSilhouette(t.standing.mesh, t.standing.frame, eye), lens, HIDDEN));
  const veiled = solids.teeth
    .filter(({ tooth, beside }) => ofCrown && teeth && beside && Math.sign(tooth.station) === removed)
    .map((t) => pathOf(standingSilhouette(t.crownStanding, t.standing.frame, eye), lens, BEFORE_THE_CUT));
  const planes = [cut.drop, ...cut.ends];
  const gone = ([x, y, z]: Vec3) =>
    planes.every(({ normal: n, constant }) => n.x * x + n.y * y + n.z * z + constant > 0);
  const { boneMesh, frame } = solids;
  const bone = () => [
    ...standingSilhouette(boneMesh.mesh, frame, eye, boneMesh.walls),
    ...standing(rimOf(boneMesh), frame),
  ];
  const ghost = removed === 0 ? [] : clipped(bone(), gone);
  return {
    key,
    solids,
    hidden: hidden.join(''),
    ghost: pathOf(ghost, lens, BEFORE_THE_CUT) + veiled.join(''),
  };
}

const CAN = { plan: 'all', tool: 'hold', implant: 'steer', wrong: 'none' } as const;

/** Draws the ink of every frame: in the same frame as the canvas, so that a line never lags behind what it measures. */
export function Ink({ stores, solids, cut, bone, removed, onSheet }: InkProps) {
  const size = useThree((three) => three.size);
  const kept = useRef<Outlines | null>(null);

  useFrame(({ camera, controls }) => {
    camera.updateMatrixWorld();
    const lens = lensOf(camera, size.width, size.height);
    const { document, session, live } = stores;
    const evaluation = evaluationOf(document.getState().plan);
    if (evaluation.anatomy !== solids.anatomy) return;
    const { layers, pivot, view, kept: aside, place, crownLook } = session.getState();
    const ofCrown = place === 'crown';
    const { gesture } = document.getState();
    const planned = plannedOf(stores)?.document.getState().plan;
    const wrong = heldIn(stores) === 'wrong';
    const gone = wrong && planned ? goneWrongDrawing(evaluationOf(planned), evaluation, lens) : null;
    const others = (wrong ? [] : [planned ?? gesture?.start, planned ? null : aside]).filter(
      (one) => one !== undefined && one !== null,
    );
    const { normal, constant } = cut.keep;
    // A shift within the cut's own plane leaves it where it is, but for the last digits.
    const plane = [...normal.toArray(), constant].map((v) => Math.round(v * 1e6));
    const key = [lens.name, removed, bone, layers.teeth, ofCrown, ...plane].join(' ');
    if (kept.current?.key !== key || kept.current.solids !== solids) {
      kept.current = outlinesOf(solids, cut, lens, bone === 'cut' ? removed : 0, layers.teeth, ofCrown, key);
    }
    const { hover, dragging, projector, guessing, answerHidden, trajectory } = live.getState();
    // Where the hole alone has gone wrong, the walls beside the implant are not those that count.
    const covered = wrong && (answerHidden || holeAlone(trajectoryOf(trajectory)));
    const lines = layers.lines && !guessing && !covered;
    const lit: ReadingId | null = litReading(live.getState(), session.getState());
    const target = (controls as { target?: { toArray: () => [number, number, number] } } | null)?.target;
    const mesialArc =
      (dragging ?? hover) === 'tilt-md' ||
      ((view === 'facial' || (ofCrown && view === 'palatal')) && (dragging ?? hover) !== 'tilt-fp');
    const tagSize = projector ? TAG_SIZE.class : TAG_SIZE.desk;
    const sheet: Sheet = {
      width: size.width,
      height: size.height,
      axis: gone?.axis ?? axisDrawing(evaluation, lens),
      gone,
      incisal: incisalDrawing(evaluation, lens),
      hidden: kept.current.hidden,
      ghost: kept.current.ghost,
      poses: others.map((one) => ghostDrawing(one, evaluation.anatomy, lens)),
      tags: !lines
        ? []
        : ofCrown
          ? crownTags(evaluation, lens, lit, tagSize)
          : tagLines(evaluation, lens, lit, bone !== 'cut', tagSize),
      crown: ofCrown
        ? crownDrawing(evaluation, lens, { look: crownLook, removed: bone === 'cut' ? removed : 0, cut })
        : null,
      tagSize,
      handles: handleDrawing(evaluation, lens, pivot),
      scale: lens.scale(target?.toArray() ?? [0, 0, 0]),
      lines,
      lit,
      hover,
      dragging,
      mesialArc,
      tiltShown: bone === 'cut' || (dragging ?? hover ?? '').startsWith('tilt'),
      can: ofCrown ? 'steer' : CAN[heldIn(stores) ?? 'plan'],
      tilt: sayTiltOf(evaluation.plan.pose.tilt, mesialArc),
      caption: say(bone === 'cut' ? 'stage.cut' : bone === 'whole' ? 'stage.whole' : 'stage.translucent'),
    };
    flushSync(() => onSheet(sheet, lens));
  });

  return null;
}
