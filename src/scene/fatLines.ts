import { type InstancedInterleavedBuffer, InterleavedBufferAttribute } from 'three';
import { LineMaterial } from 'three/addons/lines/LineMaterial.js';
import { LineSegments2 } from 'three/addons/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/addons/lines/LineSegmentsGeometry.js';
import type { Vec3 } from '../core/geometry/vec.ts';

/** Ink lines in the model, as wide on screen as they are told, hidden by what stands before them; rewritten in place. */
export class FatLines {
  readonly object: LineSegments2;
  private readonly geometry = new LineSegmentsGeometry();
  private readonly material: LineMaterial;
  private readonly buffer: InstancedInterleavedBuffer;

  constructor(
    private readonly most: number,
    color: string,
    width: number,
  ) {
    this.geometry.setPositions(new Float32Array(6 * most));
    const start = this.geometry.getAttribute('instanceStart');
    if (!(start instanceof InterleavedBufferAttribute)) throw new Error('lines are not interleaved');
    this.buffer = start.data as InstancedInterleavedBuffer;
    this.material = new LineMaterial({ color, linewidth: width });
    this.object = new LineSegments2(this.geometry, this.material);
    this.object.frustumCulled = false;
    this.geometry.instanceCount = 0;
  }

  /** Closed lines, every point moved by `lift`. What does not fit is left out. */
  write(loops: readonly (readonly Vec3[])[], lift: Vec3): void {
    const { array } = this.buffer;
    let n = 0;
    for (const loop of loops) {
      for (let i = 0; i < loop.length && n < this.most; i++, n++) {
        const a = loop[i];
        const b = loop[(i + 1) % loop.length];
        for (let k = 0; k < 3; k++) {
          array[6 * n + k] = a[k] + lift[k];
          array[6 * n + 3 + k] = b[k] + lift[k];
        }
      }
    }
    this.buffer.needsUpdate = true;
    this.geometry.instanceCount = n;
  }

  dispose(): void {
    this.geometry.dispose();
    this.material.dispose();
  }
}
