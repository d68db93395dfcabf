import { type Camera, Matrix4, type PerspectiveCamera } from 'three';
import type { Vec3 } from '../core/geometry/vec.ts';
import type { Point } from '../marks/path.ts';

/** The camera as a drawing needs it: where points of the jaw frame lie on the picture, px from its upper left corner. */
export interface Lens {
  readonly width: number;
  readonly height: number;
  /** Where the eye is, jaw frame. */
  readonly eye: Vec3;
  /** A text that changes when, and only when, the view does. */
  readonly name: string;
  readonly at: (p: Vec3) => Point;
  /** Size of a millimetre at a point, px. */
  readonly scale: (p: Vec3) => number;
}

/** The lens of a camera whose matrices are up to date. */
export function lensOf(camera: Camera, width: number, height: number): Lens {
  const m = new Matrix4().multiplyMatrices(camera.projectionMatrix, camera.matrixWorldInverse);
  const e = m.elements;
  const row = (k: number, p: Vec3): number => e[k] * p[0] + e[4 + k] * p[1] + e[8 + k] * p[2] + e[12 + k];
  const near = (camera as PerspectiveCamera).projectionMatrix.elements[5];
  const { x, y, z } = camera.position;
  return {
    width,
    height,
    eye: [x, y, z],
    name: [...e].map((v) => Math.round(v * 1e5) / 1e5 + 0).join(' '),
    at: (p) => {
      const w = row(3, p);
      return { x: ((row(0, p) / w + 1) / 2) * width, y: ((1 - row(1, p) / w) / 2) * height };
    },
    scale: (p) => ((near / row(3, p)) * height) / 2,
  };
}
