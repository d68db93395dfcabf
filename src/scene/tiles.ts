import { CanvasTexture, RepeatWrapping, SRGBColorSpace } from 'three';

/** A tile of paper with strokes on it, repeated over the cut face; `draw` works on a square of `size` px, `covers` mm of the face. */
function tile(
  ground: string,
  covers: number,
  draw: (pen: CanvasRenderingContext2D, size: number) => void,
): CanvasTexture {
  const size = 256;
  const canvas = document.createElement('canvas');
  canvas.width = size;
  canvas.height = size;
  const pen = canvas.getContext('2d');
  if (pen) {
    pen.fillStyle = ground;
    pen.fillRect(0, 0, size, size);
    draw(pen, size);
  }
  const texture = new CanvasTexture(canvas);
  texture.wrapS = RepeatWrapping;
  texture.wrapT = RepeatWrapping;
  texture.colorSpace = SRGBColorSpace;
  texture.anisotropy = 4;
  texture.repeat.set(1 / covers, 1 / covers);
  return texture;
}

/** Compact bone: hatching at 45°, two strokes a tile, joined over its edges. */
export const hatching = (): CanvasTexture =>
  tile('#f1eadb', 1.9, (pen, size) => {
    pen.strokeStyle = '#8d7a5c';
    pen.lineWidth = 15;
    for (let k = -2; k <= 4; k++) {
      pen.beginPath();
      pen.moveTo((k * size) / 2 - 20, -20);
      pen.lineTo((k * size) / 2 + size + 20, size + 20);
      pen.stroke();
    }
  });

/** What is to be taken off: hatching the other way, on paper that is seen through; laid round a cone by shares of it. */
export function takenOff(): CanvasTexture {
  const texture = tile('rgba(252, 250, 244, 0.82)', 1, (pen, size) => {
    pen.strokeStyle = '#1e2430';
    pen.lineWidth = 34;
    pen.beginPath();
    pen.moveTo(-20, size + 20);
    pen.lineTo(size + 20, -20);
    pen.moveTo(-20, 20);
    pen.lineTo(20, -20);
    pen.moveTo(size - 20, size + 20);
    pen.lineTo(size + 20, size - 20);
    pen.stroke();
  });
  texture.repeat.set(10, 6);
  return texture;
}

/** Places of the dots, shares of the tile: a fixed list, so that every visit draws the same. */
const SCATTER = [
  [0.07, 0.13],
  [0.42, 0.05],
  [0.78, 0.22],
  [0.25, 0.38],
  [0.6, 0.44],
  [0.9, 0.6],
  [0.12, 0.68],
  [0.46, 0.75],
  [0.75, 0.88],
  [0.33, 0.95],
] as const;

/** Spongy bone: scattered dots. */
export const dots = (): CanvasTexture =>
  tile('#f6f0e3', 3.2, (pen, size) => {
    pen.fillStyle = '#b3a384';
    for (const [i, [x, y]] of SCATTER.entries()) {
      pen.beginPath();
      pen.arc(x * size, y * size, i % 2 === 0 ? 7 : 5, 0, 2 * Math.PI);
      pen.fill();
    }
  });
