import {
  BackSide,
  BoxGeometry,
  Mesh,
  MeshBasicMaterial,
  PMREMGenerator,
  Scene,
  type WebGLRenderer,
  type WebGLRenderTarget,
} from 'three';
import type { Vec3 } from '../core/geometry/vec.ts';

interface SoftBox {
  readonly place: Vec3;
  readonly size: Vec3;
  readonly light: number;
}

/** How many upright strips of light stand round the model, so that round steel gleams along its length from every side. */
const STRIPS = 5;
/** Azimuth of the first strip, radians from the jaw's + x. */
export const FIRST_STRIP = 0.55;

/** Soft boxes: place and size in arbitrary units, jaw frame, brightness. */
const SOFT_BOXES: readonly SoftBox[] = [
  { place: [6, 5, 7], size: [5, 5, 0.2], light: 9 },
  { place: [-7, 3, 5], size: [0.2, 6, 4], light: 4 },
  { place: [0, -8, 2], size: [7, 0.2, 3], light: 2 },
];

const UPRIGHT: readonly SoftBox[] = Array.from({ length: STRIPS }, (_, i) => {
  const azimuth = FIRST_STRIP + (2 * Math.PI * i) / STRIPS;
  return { place: [9 * Math.cos(azimuth), 9 * Math.sin(azimuth), 1], size: [1.3, 1.3, 11], light: 5 };
});

/**
 * What stands round the model, blurred as the renderer wants it: three soft boxes in a grey room, and for steel the upright strips too. Whoever
 * asks disposes of it.
 */
export function surroundings(gl: WebGLRenderer, forSteel: boolean): WebGLRenderTarget {
  const scene = new Scene();
  const box = new BoxGeometry(1, 1, 1);
  const boxes = forSteel ? [...SOFT_BOXES, ...UPRIGHT] : SOFT_BOXES;
  const glow = boxes.map(({ place, size, light }) => {
    const material = new MeshBasicMaterial();
    material.color.setScalar(light);
    const mesh = new Mesh(box, material);
    mesh.position.set(...place);
    mesh.scale.set(...size);
    scene.add(mesh);
    return material;
  });
  const room = new MeshBasicMaterial({ color: '#8d897f', side: BackSide });
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
