import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import { type MeshStandardMaterial, Object3D, PlaneGeometry, ShadowMaterial } from 'three';
import type { Vec3 } from '../core/geometry/vec.ts';
import { FILL, FILL_LIGHT, GROUND_COLOUR, KEY_COLOUR, KEY_LIGHT, SKY_COLOUR, SKY_LIGHT } from './shaders.ts';
import { surroundings } from './surroundings.ts';

interface LightsProps {
  /** Middle of the model, jaw frame. */
  target: Vec3;
  /** Level of the paper the cast stands on; null: it stands on none. */
  floor: number | null;
  /** What mirrors the surroundings for steel. */
  steel: readonly MeshStandardMaterial[];
  /** The light setting: nothing to mirror, no shadow. */
  light: boolean;
  lamp?: Lamp;
}

/** The key: where it stands from the target, mm, and how strong it is. */
export interface Lamp {
  readonly from: Vec3;
  readonly strength: number;
}

const STAGE_LAMP: Lamp = { from: [26, 44, 46], strength: KEY_LIGHT };

/** One raking key, a soft sky, surroundings for the steel; the paper under the cast takes the shadow. */
export function Lights({ target, floor, steel, light, lamp = STAGE_LAMP }: LightsProps) {
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
    const made = surroundings(gl, false);
    const bright = surroundings(gl, true);
    scene.environment = made.texture;
    scene.environmentIntensity = 0.42;
    for (const material of steel) material.envMap = bright.texture;
    return () => {
      scene.environment = null;
      for (const material of steel) material.envMap = null;
      made.dispose();
      bright.dispose();
    };
  }, [gl, scene, light, steel]);

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
        intensity={lamp.strength}
        position={[x + lamp.from[0], y + lamp.from[1], z + lamp.from[2]]}
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
      {!light && floor !== null && (
        <mesh position={[x, y, floor - 0.05]} geometry={paper.sheet} material={paper.shade} receiveShadow />
      )}
    </>
  );
}
