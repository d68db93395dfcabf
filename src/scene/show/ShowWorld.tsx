import { useFrame, useThree } from '@react-three/fiber';
import { createRef, type RefObject, useEffect, useLayoutEffect, useMemo, useState } from 'react';
import { type Group, Matrix4, type PerspectiveCamera, type Scene, Vector3, type WebGLRenderer } from 'three';
import { scale, type Vec3 } from '../../core/geometry/vec.ts';
import type { Evaluation } from '../../core/plan/evaluate.ts';
import { implantFinish } from '../Implant.tsx';
import { type Lamp, Lights } from '../Lights.tsx';
import { type Lens, lensOf } from '../lens.ts';
import type { Look } from './looks.ts';
import { layRunOut } from './runOut.ts';
import { jawStands, SHOW_KEY, type Size, standCamera } from './showCamera.ts';
import { type ShowMaterials, showMaterials } from './showMaterials.ts';
import { type ShowSolids, showSolids } from './showSolids.ts';
import type { Leaf, Unfolding } from './unfolding.ts';

/** What the page does with the drawing from outside its frames. */
export interface ShowDoor {
  /** Asks for a frame. */
  readonly invalidate: () => void;
  /** Draws a leaf as a picture of its own, hands it over while it stands on the canvas, and puts back what was shown. */
  readonly picture: (leaf: Leaf, size: Size, take: (canvas: HTMLCanvasElement, lens: Lens) => void) => void;
}

interface ShowWorldProps {
  evaluation: Evaluation;
  light: boolean;
  unfolding: Unfolding;
  onDoor: (door: ShowDoor | null) => void;
  /** Called with every frame: what was drawn and the lens it was drawn through. */
  onLeaf: (leaf: Leaf, lens: Lens, solids: ShowSolids) => void;
}

/** What moves by itself. */
interface Moving {
  readonly implant: RefObject<Group | null>;
  readonly crown: RefObject<Group | null>;
  readonly bite: RefObject<Group | null>;
}

function applyLook(look: Look, moving: Moving, m: ShowMaterials, solids: ShowSolids): void {
  m.boneVeil.value = look.boneVeil;
  m.gumVeil.value = look.gumVeil;
  m.tintBone(look.bone);
  // In whole gum a root would show through where the drawing runs out.
  m.root.opacity = Math.min(1, 2 * look.bone);
  m.root.visible = look.bone > 0;
  m.boneHull.opacity = look.bone;
  for (const material of [m.crown, m.crownHull, m.collar]) material.opacity = look.crown;
  // The gum closes round the crown when it has come.
  m.cuff.opacity = look.crown * Math.max(0, 1 - look.crownOut / CLOSES);
  m.cuff.visible = m.cuff.opacity > 0.01;
  for (const material of [m.bite, m.biteHull]) material.opacity = look.bite;
  const put = ({ current }: RefObject<Group | null>, share: number, [x, y, z]: Vec3) => {
    if (!current) return;
    current.visible = share > 0.01;
    current.position.set(x, y, z);
  };
  put(moving.implant, look.implant, scale(solids.axis, look.implantOut));
  put(moving.crown, look.crown, scale(solids.crownAxis, look.crownOut));
  put(moving.bite, solids.bites ? look.bite : 0, [0, 0, BITE_FROM * (1 - look.bite)]);
}

/** Weaker than the stage's: it stands more to the front, and enamel would be all white. */
const LAMP: Lamp = { from: scale(SHOW_KEY, 70), strength: 1.6 };

/** From how far outside its place the crown is met by the gum, mm. */
const CLOSES = 5;

/** How far below their place the lower teeth come from, mm. */
const BITE_FROM = 5;

/** The patient's drawing: the stage's solids with a look of their own. */
export function ShowWorld({ evaluation, light, unfolding, onDoor, onLeaf }: ShowWorldProps) {
  const { gl, scene, size, invalidate } = useThree();
  const camera = useThree((three) => three.camera) as PerspectiveCamera;
  const materials = useMemo(() => showMaterials(light), [light]);
  const solids = useMemo(() => showSolids(evaluation, light), [evaluation, light]);
  const stands = useMemo(() => {
    const { ex, ey, ez } = jawStands(evaluation.anatomy);
    return new Matrix4().makeBasis(new Vector3(...ex), new Vector3(...ey), new Vector3(...ez));
  }, [evaluation]);
  const [moving] = useState<Moving>(() => ({ implant: createRef(), crown: createRef(), bite: createRef() }));
  useEffect(() => () => materials.dispose(), [materials]);
  useEffect(() => () => solids.dispose(), [solids]);
  useEffect(() => invalidate());

  useLayoutEffect(() => layRunOut(materials.runOut, evaluation), [materials, evaluation]);

  useLayoutEffect(() => {
    const show = (leaf: Leaf, shape: Size) => {
      applyLook(leaf.look, moving, materials, solids);
      standCamera(camera, evaluation, leaf.look, shape, leaf.frame);
      scene.updateMatrixWorld(true);
    };
    onDoor({
      invalidate,
      picture: (leaf, shape, take) =>
        pictured(gl, scene, camera, shape, () => {
          show(leaf, shape);
          return () => take(gl.domElement, lensOf(camera, shape.width, shape.height));
        }),
    });
    return () => onDoor(null);
  }, [gl, scene, camera, materials, solids, evaluation, invalidate, onDoor, moving]);

  useFrame(() => {
    unfolding.goOn(performance.now());
    const { leaf } = unfolding;
    applyLook(leaf.look, moving, materials, solids);
    standCamera(camera, evaluation, leaf.look, size, leaf.frame);
    onLeaf(leaf, lensOf(camera, size.width, size.height), solids);
    if (unfolding.moving) invalidate();
  });

  return (
    <>
      <Lights target={[0, 0, 0]} floor={null} steel={materials.mirrors} light={light} lamp={LAMP} />
      <group matrix={stands} matrixAutoUpdate={false}>
        <Solids solids={solids} materials={materials} moving={moving} />
      </group>
    </>
  );
}

/** Draws into the canvas at another size and puts its own size back; nothing of it is seen, since it is one turn of the page. */
function pictured(
  gl: WebGLRenderer,
  scene: Scene,
  camera: PerspectiveCamera,
  { width, height }: Size,
  prepare: () => () => void,
): void {
  const ratio = gl.getPixelRatio();
  const own = { width: gl.domElement.width / ratio, height: gl.domElement.height / ratio };
  gl.setPixelRatio(1);
  gl.setSize(width, height, false);
  const take = prepare();
  gl.render(scene, camera);
  take();
  gl.setPixelRatio(ratio);
  gl.setSize(own.width, own.height, false);
}

interface SolidsProps {
  solids: ShowSolids;
  materials: ShowMaterials;
  moving: Moving;
}

/** Opaque things first, then bone, then gum: each shell lets through what lies in it. */
function Solids({ solids, materials: m, moving }: SolidsProps) {
  const { site, implant, collar, cuff, stands, fits } = solids;
  const finish = useMemo(() => implantFinish(m), [m]);
  return (
    <>
      {site.teeth.map(({ tooth, crown, root }) => (
        <group key={tooth.code}>
          <mesh geometry={root} material={m.root} dispose={null} />
          <mesh geometry={crown} material={m.porcelain} renderOrder={1} dispose={null} />
          <mesh geometry={crown} material={m.hull} renderOrder={1.5} dispose={null} />
        </group>
      ))}
      <group ref={moving.bite}>
        {site.bite.map(({ tooth, crown }) => (
          <group key={tooth.code}>
            <mesh geometry={crown} material={m.bite} renderOrder={2} dispose={null} />
            <mesh geometry={crown} material={m.biteHull} renderOrder={2.5} dispose={null} />
          </group>
        ))}
      </group>
      <group ref={moving.implant}>
        <mesh geometry={implant} material={finish} matrix={stands} matrixAutoUpdate={false} dispose={null} />
      </group>
      <mesh geometry={site.bone} material={m.bone} renderOrder={4} dispose={null} />
      <mesh geometry={site.bone} material={m.boneHull} renderOrder={4.5} dispose={null} />
      <group ref={moving.crown}>
        {collar && <mesh geometry={collar} material={m.collar} renderOrder={3} dispose={null} />}
        <group matrix={fits} matrixAutoUpdate={false}>
          <mesh geometry={site.crown} material={m.crown} renderOrder={3} dispose={null} />
          <mesh geometry={site.crown} material={m.crownHull} renderOrder={3} dispose={null} />
        </group>
      </group>
      <mesh geometry={site.gum} material={m.gum} renderOrder={5} dispose={null} />
      <mesh geometry={cuff} material={m.cuff} renderOrder={5.5} dispose={null} />
    </>
  );
}
