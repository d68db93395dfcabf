import { useFrame, useThree } from '@react-three/fiber';
import { useCallback, useEffect, useMemo, useRef } from 'react';
import type { Vec3 } from '../core/geometry/vec.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { handBody, passBodies } from '../core/plan/inHand.ts';
import { heldIn } from '../state/held.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { type Cut, clearBody, cutFaces, type Face, layBody, layCut, type Removed } from './cut.ts';
import { FatLines } from './fatLines.ts';
import { RewrittenGeometry } from './geometry.ts';
import { type Body, INK, type Materials } from './materials.ts';
import { useEachPlan } from './useEachPlan.ts';

interface CutFaceProps {
  stores: PlanStores;
  cut: Cut;
  body: Body;
  materials: Materials;
  /** The bone is to be cut. */
  wanted: boolean;
  /** It is cut, as the camera stands. */
  shown: boolean;
  gum: boolean;
  /** Called when another part of the arch is the one that is taken away. */
  onTurn: (removed: Removed) => void;
}

const write = (into: RewrittenGeometry, { points, flat, index }: Face) => into.write(points, flat, index);

/** The capped, hatched faces of the cut through the axis with their outlines. They follow the implant, and turn with the camera. */
export function CutFace({ stores, cut, body, materials, wanted, shown, gum, onTurn }: CutFaceProps) {
  const made = useMemo(
    () => ({
      bone: new RewrittenGeometry(1400, 1400),
      marrow: new RewrittenGeometry(1400, 1400),
      gum: new RewrittenGeometry(700, 700),
      canal: new RewrittenGeometry(400, 400),
      boneLine: new FatLines(1400, INK, 1.8),
      marrowLine: new FatLines(1400, '#8d7a5c', 1),
      gumLine: new FatLines(700, '#8c5a53', 1.1),
      canalLine: new FatLines(400, INK, 1.1),
    }),
    [],
  );
  const last = useRef<{ evaluation: Evaluation; faces: ReturnType<typeof cutFaces> } | null>(null);

  useEffect(
    () => () => {
      for (const one of Object.values(made)) one.dispose();
    },
    [made],
  );

  const draw = useCallback(() => {
    if (!last.current) return;
    const { faces } = last.current;
    write(made.bone, faces.bone);
    write(made.marrow, faces.marrow);
    write(made.gum, faces.gum);
    write(made.canal, faces.canal);
    const { x, y, z } = cut.keep.normal;
    const lift = (k: number): Vec3 => [-k * x, -k * y, -k * z];
    made.boneLine.write(faces.outlines.bone, lift(0.05));
    made.marrowLine.write(faces.outlines.marrow, lift(0.04));
    made.gumLine.write(faces.outlines.gum, lift(0.03));
    made.canalLine.write(faces.outlines.canal, lift(0.05));
  }, [made, cut]);

  const held = heldIn(stores);
  const subject = useSelected(stores.session, ({ place }) => (place === 'crown' ? 'crown' : 'site'));
  const side = useRef<Removed>(1);
  const camera = useThree((three) => three.camera);
  const lay = useCallback(
    (evaluation: Evaluation) => {
      const removed = layCut(cut, evaluation, camera.position.toArray(), side.current, subject);
      const turned = removed !== side.current;
      side.current = removed;
      if (turned) onTurn(removed);
      return turned;
    },
    [cut, onTurn, camera, subject],
  );

  useEachPlan(
    stores,
    useCallback(
      (evaluation: Evaluation) => {
        lay(evaluation);
        if (held === 'tool') clearBody(body);
        else layBody(body, evaluation);
        if (!wanted) return;
        const { plan } = evaluation;
        const tool = held === 'tool' ? handBody(plan) : null;
        const bodies = held ? [...passBodies(plan), ...(tool ? [tool] : [])] : [];
        last.current = { evaluation, faces: cutFaces(evaluation, bodies) };
        draw();
      },
      [lay, draw, wanted, body, held],
    ),
  );

  useFrame(() => {
    if (last.current && lay(last.current.evaluation)) draw();
  });

  // Hidden, not taken out: what comes back must stand in the same order as before.
  return (
    <group visible={shown}>
      <group visible={gum}>
        <mesh geometry={made.gum.geometry} material={materials.gumCut} dispose={null} frustumCulled={false} />
        <primitive object={made.gumLine.object} dispose={null} />
      </group>
      <mesh geometry={made.bone.geometry} material={materials.cortex} dispose={null} frustumCulled={false} />
      <mesh
        geometry={made.marrow.geometry}
        material={materials.marrow}
        dispose={null}
        frustumCulled={false}
      />
      <mesh geometry={made.canal.geometry} material={materials.hollow} dispose={null} frustumCulled={false} />
      <primitive object={made.canalLine.object} dispose={null} />
      <primitive object={made.marrowLine.object} dispose={null} />
      <primitive object={made.boneLine.object} dispose={null} />
    </group>
  );
}
