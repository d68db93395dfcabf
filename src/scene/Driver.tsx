import { useCallback, useEffect, useMemo, useRef } from 'react';
import { BoxGeometry, CylinderGeometry, type Group } from 'three';
import { DRIVER } from '../core/drilling/genericKit.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { passesShown } from '../core/plan/inHand.ts';
import { plannedOf } from '../state/held.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { implantMatrix } from './Implant.tsx';
import type { Materials } from './materials.ts';
import { useEachPlan } from './useEachPlan.ts';

/** Size of the engraved mark on the driver's shank, mm. */
const MARK = 0.7;

interface DriverProps {
  stores: PlanStores;
  materials: Materials;
}

/** What turns the implant in, standing on it: a shank and a head, with the index mark of the implant repeated on both. */
export function Driver({ stores, materials }: DriverProps) {
  const off = useSelected(stores.live, (state) => state.driverOff);
  // Where nothing is drilled there is nothing to turn.
  const drilled = useSelected(
    (plannedOf(stores) ?? stores).document,
    ({ plan }) => passesShown(plan).length > 0,
  );
  const post = useSelected(stores.document, ({ plan }) => plan.implant.abutment?.height ?? 0);
  const group = useRef<Group>(null);
  const made = useMemo(() => {
    const { length, diameter, wrench } = DRIVER;
    const upright = (radius: number, height: number) =>
      new CylinderGeometry(radius, radius, height, 40).rotateX(Math.PI / 2);
    return {
      shank: upright(diameter / 2, length).translate(0, 0, length / 2),
      head: upright(wrench.diameter / 2, wrench.height).translate(0, 0, length + wrench.height / 2),
      marks: [
        new BoxGeometry(0.12, MARK, length * 0.8).translate(diameter / 2, 0, length / 2),
        new BoxGeometry(wrench.diameter / 2, MARK, 0.12).translate(
          wrench.diameter / 4,
          0,
          length + wrench.height,
        ),
      ],
    };
  }, []);

  useEffect(
    () => () => {
      for (const one of [made.shank, made.head, ...made.marks]) one.dispose();
    },
    [made],
  );

  const apply = useCallback((evaluation: Evaluation) => {
    const node = group.current;
    if (!node) return;
    implantMatrix(evaluation, node.matrix);
    node.matrixWorldNeedsUpdate = true;
  }, []);
  useEachPlan(stores, apply);

  return (
    <group ref={group} matrixAutoUpdate={false} visible={drilled && !off} name="driver">
      <group position={[0, 0, post]}>
        {[made.shank, made.head].map((geometry) => (
          <group key={geometry.uuid}>
            <mesh geometry={geometry} material={materials.polished} dispose={null} />
            <mesh geometry={geometry} material={materials.hull} dispose={null} />
          </group>
        ))}
        {made.marks.map((geometry) => (
          <mesh key={geometry.uuid} geometry={geometry} material={materials.mark} dispose={null} />
        ))}
      </group>
    </group>
  );
}
