import type { MeshBuilder, Ring } from '../geometry/loft.ts';
import { clamp } from '../geometry/vec.ts';
import { fluteCut } from './flutes.ts';
import { envelopeOf } from './profile.ts';
import { type ImplantShape, leadOf, totalLength } from './shape.ts';

/**
 * The threaded wall between the apical rim and the last thread: a right-handed helix of V grooves, crests on the envelope, run
 * out to nothing over one pitch at both ends, and the flutes cut into it. Every column (its angle from the mark, rising from 0) has its vertices
 * where crest and groove lines cross it; one turn on, the lines have moved up by the lead, so that the last column meets the first
 * `2 starts` lines further on.
 */
export function addThread(
  builder: MeshBuilder,
  shape: ImplantShape,
  angles: readonly number[],
): { readonly apicalRim: Ring; readonly lastThread: Ring } {
  const { depth, pitch, starts } = shape.thread;
  const top = -shape.transmucosalLength;
  const bottom = -totalLength(shape);
  const lead = leadOf(shape);
  const envelope = envelopeOf(shape);
  const segments = angles.length;
  /** On the envelope at its radius `r`, but for the deeper of groove and flute. */
  const at = (j: number, z: number, r: number, groove = 0): number => {
    const inner = r - Math.max(groove, fluteCut(shape, angles[j], z));
    return builder.vertex([inner * Math.cos(angles[j]), inner * Math.sin(angles[j]), z]);
  };
  const rim = (z: number, r: number): number[] => angles.map((_, j) => at(j, z, r));
  const apicalRim = rim(bottom, shape.apicalDiameter / 2);
  const lastThread = rim(top, shape.implantedDiameter / 2);
  const lines = 2 * Math.ceil((top - bottom + lead) / pitch) + 2;
  const tiny = 1e-3 * pitch;

  const column = (j: number): number[] =>
    Array.from({ length: lines + 1 + 2 * starts }, (_, k) => {
      const z = bottom - lead + (k * pitch) / 2 + (lead * angles[j]) / (2 * Math.PI);
      if (z <= bottom + tiny) return apicalRim[j];
      if (z >= top - tiny) return lastThread[j];
      const fade = clamp(Math.min(z - bottom, top - z) / pitch, 0, 1);
      return at(j, z, envelope.radius(-z), k % 2 === 1 ? depth * fade : 0);
    });
  const columns = angles.map((_, j) => column(j));
  const next = (j: number, k: number): number =>
    j + 1 < segments ? columns[j + 1][k] : columns[0][k + 2 * starts];
  for (let j = 0; j < segments; j++) {
    for (let k = 0; k < lines; k++) {
      builder.quad(columns[j][k], next(j, k), next(j, k + 1), columns[j][k + 1]);
    }
  }
  return { apicalRim, lastThread };
}
