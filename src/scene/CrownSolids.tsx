import { useCallback, useEffect, useMemo, useRef } from 'react';
import { CylinderGeometry, type Mesh, Vector3 } from 'three';
import { creased } from '../core/geometry/crease.ts';
import type { Vec3 } from '../core/geometry/vec.ts';
import { along } from '../core/geometry/vec.ts';
import type { AbutmentNumbers } from '../core/implant/shape.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { groundAbutmentOf } from '../core/restoration/drawing.ts';
import type { CrownLook } from '../state/session.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import type { Cut, Removed } from './cut.ts';
import { crownFace } from './cut.ts';
import { FatLines } from './fatLines.ts';
import { OwnedGeometry, RewrittenGeometry } from './geometry.ts';
import { INK, type Materials } from './materials.ts';
import type { SiteSolids } from './siteSolids.ts';
import { useEachPlan } from './useEachPlan.ts';

interface CrownSolidsProps {
  stores: PlanStores;
  solids: SiteSolids;
  materials: Materials;
  look: CrownLook;
  cut: Cut;
  removed: Removed;
  shadow: boolean;
}

/** The planned crown in its own place: cut open with the bone, whole where that is not cut. */
export function CrownSolids({ stores, solids, materials: m, look, cut, removed, shadow }: CrownSolidsProps) {
  const solid = look === 'solid';
  const open = removed !== 0;
  const material = solid ? (open ? m.cutPorcelain : m.porcelain) : open ? m.cutPlanned : m.planned;
  const body = look === 'solid' || look === 'translucent';
  return (
    <>
      <group visible={body}>
        <mesh
          geometry={solids.crown}
          material={material}
          renderOrder={solid ? 0 : 8}
          castShadow={shadow && solid}
          dispose={null}
        />
        {solid && <mesh geometry={solids.crown} material={open ? m.cutHull : m.hull} dispose={null} />}
      </group>
      <CrownFace
        stores={stores}
        materials={m}
        cut={cut}
        shown={look !== 'none' && open}
        filled={body}
        solid={solid}
      />
      <Wedge stores={stores} materials={m} />
    </>
  );
}

interface CrownFaceProps {
  stores: PlanStores;
  materials: Materials;
  cut: Cut;
  shown: boolean;
  filled: boolean;
  solid: boolean;
}

/** The face at which the crown is cut, with its outline. */
function CrownFace({ stores, materials, cut, shown, filled, solid }: CrownFaceProps) {
  const made = useMemo(
    () => ({ face: new RewrittenGeometry(500, 500), line: new FatLines(500, INK, 1.6) }),
    [],
  );
  useEffect(
    () => () => {
      made.face.dispose();
      made.line.dispose();
    },
    [made],
  );
  useEachPlan(
    stores,
    useCallback(
      (evaluation: Evaluation) => {
        const { face, outline } = crownFace(evaluation);
        made.face.write(face.points, face.flat, face.index);
        const { x, y, z } = cut.keep.normal;
        made.line.write(outline, [-0.05 * x, -0.05 * y, -0.05 * z]);
      },
      [made, cut],
    ),
  );
  return (
    <group visible={shown}>
      <mesh
        visible={filled}
        geometry={made.face.geometry}
        material={solid ? materials.solidCrownFace : materials.crownFace}
        renderOrder={2}
        dispose={null}
        frustumCulled={false}
      />
      <primitive object={made.line.object} dispose={null} />
    </group>
  );
}

/** Columns of the whole abutment, as many as the ground one has: where nothing is taken off the two are one surface. */
const COLUMNS = 72;
const CREASE = 35;

interface WedgeProps {
  stores: PlanStores;
  materials: Materials;
}

/** The one-piece abutment as it is after grinding, and over it in hatching what is to be taken off. */
function Wedge({ stores, materials }: WedgeProps) {
  const abutment = useSelected(stores.document, ({ plan }) => plan.implant.abutment);
  return abutment && <GroundAbutment stores={stores} materials={materials} abutment={abutment} />;
}

function GroundAbutment({ stores, materials, abutment }: WedgeProps & { abutment: AbutmentNumbers }) {
  const ground = useMemo(() => new OwnedGeometry(), []);
  const whole = useRef<Mesh>(null);
  const { height, baseDiameter, topDiameter } = abutment;
  const cone = useMemo(
    () => new CylinderGeometry(topDiameter / 2, baseDiameter / 2, height, COLUMNS),
    [height, baseDiameter, topDiameter],
  );
  useEffect(() => () => ground.dispose(), [ground]);
  useEffect(() => () => cone.dispose(), [cone]);
  useEachPlan(
    stores,
    useCallback(
      (evaluation: Evaluation) => {
        const made = groundAbutmentOf(evaluation);
        const node = whole.current;
        if (!made || !node) return;
        const { anatomy, placement } = evaluation;
        ground.lay(creased(made.left, CREASE));
        const v = (p: Vec3) => new Vector3(...anatomy.toJawDirection(p));
        const middle = anatomy.toJaw(along(placement.platform, placement.a, height / 2));
        node.matrix.makeBasis(v(placement.em), v(placement.a), v(placement.ef)).setPosition(...middle);
        node.matrixWorldNeedsUpdate = true;
      },
      [ground, height],
    ),
  );
  return (
    <>
      <mesh geometry={ground.geometry} material={materials.polished} dispose={null} frustumCulled={false} />
      <mesh geometry={ground.geometry} material={materials.hull} dispose={null} frustumCulled={false} />
      <mesh
        ref={whole}
        geometry={cone}
        material={materials.wedge}
        matrixAutoUpdate={false}
        renderOrder={6}
        dispose={null}
        frustumCulled={false}
      />
    </>
  );
}
