import { OrbitControls } from '@react-three/drei';
import { useFrame, useThree } from '@react-three/fiber';
import { useCallback, useLayoutEffect, useRef } from 'react';
import type { OrbitControls as Controls } from 'three-stdlib';
import { solidsOf } from '../core/plan/evaluate.ts';
import type { Plan } from '../core/plan/plan.ts';
import { heldIn, plannedOf } from '../state/held.ts';
import type { View } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { between, cameraAt, type Standpoint, standpointOf } from './views.ts';

/** A view that was asked for; `count` tells two askings of the same view apart. */
export interface Asked {
  readonly view: View;
  readonly count: number;
}

interface CameraRigProps {
  stores: PlanStores;
  asked: Asked;
  inMouth: boolean;
  /** The hand has turned the camera away from the view. */
  onFree: () => void;
}

/** How long a change of view takes, ms; none for those who asked for less motion. */
const TURN = 320;
const calm = () => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Stands the camera where the view says, for the shape of the picture; after that it is the hand's. */
export function CameraRig({ stores, asked, inMouth, onFree }: CameraRigProps) {
  const camera = useThree((three) => three.camera);
  const invalidate = useThree((three) => three.invalidate);
  const width = useThree(({ size }) => size.width);
  const height = useThree(({ size }) => size.height);
  const site = useSelected(stores.document, ({ plan }) => plan.site);
  const wrong = heldIn(stores) === 'wrong';
  const crown = useSelected(stores.session, ({ place }) => place === 'crown');
  const subject = wrong ? 'wrong' : crown ? 'crown' : 'site';
  const controls = useRef<Controls>(null);
  const here = useRef<Standpoint | null>(null);
  const turn = useRef<{ from: Standpoint; to: Standpoint; start: number } | null>(null);
  const free = useRef(false);

  const stand = useCallback(
    (at: Standpoint) => {
      here.current = at;
      camera.up.set(...at.up);
      camera.position.set(...cameraAt(at));
      camera.lookAt(...at.target);
      const orbit = controls.current;
      if (orbit) {
        orbit.target.set(...at.target);
        orbit.update();
      }
      camera.updateMatrixWorld();
      invalidate();
    },
    [camera, invalidate],
  );

  const shape = useRef({ asked, site, inMouth, subject });
  /** The plan that the view was framed for: another shape of the picture frames the same again. */
  const framed = useRef<Plan | null>(null);
  useLayoutEffect(() => {
    const before = shape.current;
    const same =
      before.asked === asked &&
      before.site === site &&
      before.inMouth === inMouth &&
      before.subject === subject;
    shape.current = { asked, site, inMouth, subject };
    // Another shape of the picture alone does not take a free camera back.
    if (same && free.current) return;
    free.current = false;
    // A plan gone wrong is framed as the plan itself, whatever the amount.
    const { document } = wrong ? (plannedOf(stores) ?? stores) : stores;
    const plan = (same && framed.current) || document.getState().plan;
    framed.current = plan;
    const to = standpointOf(asked.view, plan, solidsOf(site), inMouth, { width, height }, subject);
    const from = here.current;
    if (!from || same || calm() || before.inMouth !== inMouth || before.site !== site) {
      turn.current = null;
      stand(to);
    } else {
      turn.current = { from, to, start: performance.now() };
      invalidate();
    }
  }, [asked, site, inMouth, subject, wrong, width, height, stand, stores, invalidate]);

  useFrame(() => {
    if (!turn.current) return;
    const { from, to, start } = turn.current;
    const w = Math.min(1, (performance.now() - start) / TURN);
    stand(w === 1 ? to : between(from, to, 1 - (1 - w) ** 3));
    if (w === 1) turn.current = null;
  });

  const onStart = useCallback(() => {
    turn.current = null;
    free.current = true;
    onFree();
  }, [onFree]);

  const onChange = useCallback(() => {
    const orbit = controls.current;
    if (!orbit || turn.current) return;
    const { x, y, z } = orbit.target;
    const away = camera.position.clone().sub(orbit.target);
    const distance = away.length();
    away.divideScalar(distance);
    here.current = {
      toward: away.toArray(),
      up: camera.up.toArray(),
      target: [x, y, z],
      distance,
    };
  }, [camera]);

  return (
    <OrbitControls
      key={inMouth ? 'down' : 'up'}
      ref={controls}
      makeDefault
      enableDamping={false}
      minDistance={50}
      maxDistance={380}
      onStart={onStart}
      onChange={onChange}
    />
  );
}
