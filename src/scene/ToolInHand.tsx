import { useCallback, useEffect, useMemo, useRef } from 'react';
import { type BufferGeometry, type Group, Vector3 } from 'three';
import type { Drill, NeckCutter } from '../core/drilling/kit.ts';
import { toolMesh } from '../core/drilling/toolMesh.ts';
import { creased } from '../core/geometry/crease.ts';
import { cross, type Vec3 } from '../core/geometry/vec.ts';
import { totalLength } from '../core/implant/shape.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { handOf, isDrill, toolOf } from '../core/plan/inHand.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { geometryOf } from './geometry.ts';
import type { Materials } from './materials.ts';
import { useEachPlan } from './useEachPlan.ts';

/** Edges of a tool sharper than this are drawn crisp, degrees. */
const CREASE = 30;

/** The tool with its marks as a second group. */
function toolGeometry(tool: Drill | NeckCutter): BufferGeometry {
  const { body, marksFrom } = toolMesh(tool);
  const geometry = geometryOf(creased(body, CREASE));
  geometry.addGroup(0, 3 * marksFrom, 0);
  geometry.addGroup(3 * marksFrom, body.triangles.length - 3 * marksFrom, 1);
  return geometry;
}

interface ToolProps {
  stores: PlanStores;
  materials: Materials;
  shadow: boolean;
}

/** The drill or neck cutter in the hand, where it stands. */
export function ToolInHand({ stores, materials, shadow }: ToolProps) {
  const tool = useSelected(stores.document, ({ plan }) => toolOf(plan, handOf(plan).tool));
  const group = useRef<Group>(null);
  const geometry = useMemo(() => (tool ? toolGeometry(tool) : null), [tool]);
  const finish = useMemo(() => [materials.polished, materials.mark], [materials]);

  useEffect(() => () => geometry?.dispose(), [geometry]);

  const apply = useCallback(({ plan, placement, anatomy }: Evaluation) => {
    const node = group.current;
    const held = toolOf(plan, handOf(plan).tool);
    if (!node || !held) return;
    const z = anatomy.toJawDirection(placement.a);
    const x = anatomy.toJawDirection(placement.ef);
    const v = (p: Vec3) => new Vector3(...p);
    const foot = isDrill(held) ? totalLength(plan.implant) : plan.implant.transmucosalLength;
    const bottom = anatomy.toJaw(placement.axisPoint(placement.tP + foot));
    node.matrix.makeBasis(v(x), v(cross(z, x)), v(z)).setPosition(v(bottom));
    node.matrixWorldNeedsUpdate = true;
  }, []);
  useEachPlan(stores, apply);

  return (
    geometry && (
      <group ref={group} matrixAutoUpdate={false} name="tool">
        <mesh
          geometry={geometry}
          material={finish}
          castShadow={shadow}
          receiveShadow={shadow}
          dispose={null}
        />
        <mesh geometry={geometry} material={materials.hull} dispose={null} />
      </group>
    )
  );
}
