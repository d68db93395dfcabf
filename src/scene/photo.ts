import type { RootState } from '@react-three/fiber';
import { inkOnto } from './inkOnto.ts';

type Camera = Pick<RootState, 'gl' | 'scene' | 'camera' | 'size'>;

/** The ground of a picture: that of whatever it is put on. */
const GROUND = '#fff';

/**
 * The model as it stands on the stage, `width` px wide in the stage's own shape, with the ink over it and its scale bar. Rendered and taken in the same tick, since a canvas keeps its
 * picture no longer; a stage that is `seen` is drawn again at its own size before anyone does.
 */
export function photograph(
  { gl, scene, camera, size }: Camera,
  ink: SVGSVGElement,
  width: number,
  seen = true,
): HTMLCanvasElement {
  const scale = width / size.width;
  const picture = document.createElement('canvas');
  picture.width = width;
  picture.height = Math.round(size.height * scale);
  const context = picture.getContext('2d');
  if (!context) throw new Error('no canvas to draw on');
  const before = gl.getPixelRatio();
  gl.setPixelRatio(scale);
  gl.render(scene, camera);
  context.fillStyle = GROUND;
  context.fillRect(0, 0, picture.width, picture.height);
  context.drawImage(gl.domElement, 0, 0, picture.width, picture.height);
  gl.setPixelRatio(before);
  if (seen) gl.render(scene, camera);
  context.scale(scale, scale);
  inkOnto(context, ink);
  return picture;
}

/** The picture as a PNG file. */
export const pngOf = (picture: HTMLCanvasElement): Promise<Blob> =>
  new Promise((resolve, reject) => {
    picture.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('no picture'))), 'image/png');
  });
