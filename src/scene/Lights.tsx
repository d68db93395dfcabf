import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import {
  BoxGeometry,
  Mesh,
  MeshBasicMaterial,
  Object3D,
  PlaneGeometry,
  PMREMGenerator,
  Scene,
  ShadowMaterial,
  type WebGLRenderer,
} from 'three';
import type { Vec3 } from '../core/geometry/vec.ts';
import { FILL, FILL_LIGHT, GROUND_COLOUR, KEY_COLOUR, KEY_LIGHT, SKY_COLOUR, SKY_LIGHT } from './shaders.ts';

interface SoftBox {
  readonly place: Vec3;
  readonly size: Vec3;
  readonly light: number;
}

/** Three soft boxes for the steel to mirror: place and size in arbitrary units, brightness. */
const SOFT_BOXES: readonly SoftBox[] = [
  { place: [6, 5, 7], size: [5, 5, 0.2], light: 9 },
  { place: [-7, 3, 5], size: [0.2, 6, 4], light: 4 },
  { place: [0, -8, 2], size: [7, 0.2, 3], light: 2 },
];

/** The surroundings as the renderer wants them. */
function surroundings(gl: WebGLRenderer) {
  const scene = new Scene();
  const box = new BoxGeometry(1, 1, 1);
  const glow = SOFT_BOXES.map(({ place, size, light }) => {
    const material = new MeshBasicMaterial();
    material.color.setScalar(light);
    const mesh = new Mesh(box, material);
    mesh.position.set(...place);
    mesh.scale.set(...size);
    scene.add(mesh);
    return material;
  });
  const room = new MeshBasicMaterial({ color: '#8d897f', side: 1 });
  const walls = new Mesh(box, room);
  walls.scale.setScalar(30);
  scene.add(walls);
  const generator = new PMREMGenerator(gl);
  const made = generator.fromScene(scene, 0.03);
  generator.dispose();
  box.dispose();
  for (const material of [...glow, room]) material.dispose();
  return made;
}

interface LightsProps {
  /** Middle of the model, jaw frame. */
  target: Vec3;
  /** Level of the paper the cast stands on. */
  floor: number;
  /** The light setting: nothing to mirror, no shadow. */
  light: boolean;
}

/** One raking key, a soft sky, surroundings for the steel; the paper under the cast takes the shadow. */
export function Lights({ target, floor, light }: LightsProps) {
  const gl = useThree((three) => three.gl);
  const scene = useThree((three) => three.scene);
  const aim = useMemo(() => new Object3D(), []);
  const paper = useMemo(
    () => ({
      sheet: new PlaneGeometry(220, 220),
      shade: new ShadowMaterial({ color: '#5b4a33', opacity: 0.3 }),
    }),
    [],
  );

  useEffect(() => {
    if (light) return;
    const made = surroundings(gl);
    scene.environment = made.texture;
    scene.environmentIntensity = 0.42;
    return () => {
      scene.environment = null;
      made.dispose();
    };
  }, [gl, scene, light]);

  useEffect(
    () => () => {
      paper.sheet.dispose();
      paper.shade.dispose();
    },
    [paper],
  );

  useFrame(() => {
    gl.shadowMap.needsUpdate = !light;
  });

  const [x, y, z] = target;
  return (
    <>
      <hemisphereLight args={[SKY_COLOUR, GROUND_COLOUR, SKY_LIGHT]} position={[0, 0, 1]} />
      <primitive object={aim} position={target} />
      <directionalLight
        color={SKY_COLOUR}
        intensity={FILL_LIGHT}
        position={[x + 60 * FILL.x, y + 60 * FILL.y, z + 60 * FILL.z]}
        target={aim}
      />
      <directionalLight
        color={KEY_COLOUR}
        intensity={KEY_LIGHT}
        position={[x + 26, y + 44, z + 46]}
        target={aim}
        castShadow={!light}
        shadow-mapSize={[2048, 2048]}
        shadow-radius={5}
        shadow-intensity={0.62}
        shadow-bias={-0.0006}
        shadow-normalBias={0.06}
        shadow-camera-left={-26}
        shadow-camera-right={26}
        shadow-camera-top={26}
        shadow-camera-bottom={-26}
        shadow-camera-near={10}
        shadow-camera-far={130}
      />
      {!light && (
        <mesh position={[x, y, floor - 0.05]} geometry={paper.sheet} material={paper.shade} receiveShadow />
      )}
    </>
  );
}
