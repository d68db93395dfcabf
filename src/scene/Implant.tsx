import { useCallback, useEffect, useMemo, useRef } from 'react';
import { type BufferGeometry, type Group, type Material, type Matrix4, Vector3 } from 'three';
import { creased } from '../core/geometry/crease.ts';
import { markOf } from '../core/geometry/pose.ts';
import { cross, type Vec3 } from '../core/geometry/vec.ts';
import { implantMesh } from '../core/implant/mesh.ts';
import type { ImplantShape } from '../core/implant/shape.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { geometryOf } from './geometry.ts';
import type { Materials } from './materials.ts';
import { useEachPlan } from './useEachPlan.ts';

/** Edges of the implant sharper than this are drawn crisp, degrees. */
const CREASE = 24;

/** The implant with its parts in groups, for {@link implantFinish}. */
export function implantGeometry(shape: ImplantShape, segments: number): BufferGeometry {
  const { body, polishedFrom, markFrom } = implantMesh(shape, { segments });
  const geometry = geometryOf(creased(body, CREASE));
  const ends = [0, polishedFrom, markFrom, body.triangles.length / 3];
  for (let i = 0; i < 3; i++) geometry.addGroup(3 * ends[i], 3 * (ends[i + 1] - ends[i]), i);
  return geometry;
}

/** Threads, polished neck, engraved mark. */
export const implantFinish = ({
  steel,
  polished,
  mark,
}: Pick<Materials, 'steel' | 'polished' | 'mark'>): Material[] => [steel, polished, mark];

/**
 * Where the implant stands in the jaw frame: a proper rotation built from the axis and the mark as they lie there, on either side of the
 * arch, so that the thread stays right-handed.
 */
export function implantMatrix({ plan, placement, anatomy }: Evaluation, out: Matrix4): Matrix4 {
  const z = anatomy.toJawDirection(placement.a);
  const x = anatomy.toJawDirection(markOf(plan.pose));
  const y = cross(z, x);
  const v = (p: Vec3) => new Vector3(...p);
  return out.makeBasis(v(x), v(y), v(z)).setPosition(v(anatomy.toJaw(placement.platform)));
}

interface ImplantProps {
  stores: PlanStores;
  materials: Materials;
  segments: number;
  shadow: boolean;
  /** Without an abutment of its own, which is drawn by itself. */
  bare?: boolean;
}

export function Implant({ stores, materials, segments, shadow, bare = false }: ImplantProps) {
  const whole = useSelected(stores.document, ({ plan }) => plan.implant);
  const shape = useMemo(() => (bare && whole.abutment ? { ...whole, abutment: null } : whole), [bare, whole]);
  const group = useRef<Group>(null);
  const geometry = useMemo(() => implantGeometry(shape, segments), [shape, segments]);
  const finish = useMemo(() => implantFinish(materials), [materials]);

  useEffect(() => () => geometry.dispose(), [geometry]);

  const apply = useCallback((evaluation: Evaluation) => {
    const node = group.current;
    if (!node) return;
    implantMatrix(evaluation, node.matrix);
    node.matrixWorldNeedsUpdate = true;
  }, []);
  useEachPlan(stores, apply);

  return (
    <group ref={group} matrixAutoUpdate={false} name="implant">
      <mesh geometry={geometry} material={finish} castShadow={shadow} receiveShadow={shadow} dispose={null} />
      <mesh geometry={geometry} material={materials.hull} dispose={null} />
    </group>
  );
}
