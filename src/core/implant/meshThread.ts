import type { MeshBuilder, Ring } from '../geometry/loft.ts';
import { clamp } from '../geometry/vec.ts';
import { envelopeOf } from './profile.ts';
import { type ImplantShape, leadOf, totalLength } from './shape.ts';

/** Angle of column `j`, counted from the mark. */
export const columnAngle = (j: number, segments: number): number => (2 * Math.PI * j) / segments;

/**
 * The threaded wall between the apical rim and the last thread: a right-handed helix of V grooves, crests on the envelope, run
 * out to nothing over one pitch at both ends. Every column has its vertices where crest and groove lines cross it; one turn
 * on, the lines have moved up by the lead, so that the last column meets the first `2 starts` lines further on.
 */
export function addThread(
  builder: MeshBuilder,
  shape: ImplantShape,
  segments: number,
): { readonly apicalRim: Ring; readonly lastThread: Ring } {
  const { depth, pitch, starts } = shape.thread;
  const top = -shape.transmucosalLength;
  const bottom = -totalLength(shape);
  const lead = leadOf(shape);
  const envelope = envelopeOf(shape);
  const at = (j: number, z: number, r: number): number => {
    const angle = columnAngle(j, segments);
    return builder.vertex([r * Math.cos(angle), r * Math.sin(angle), z]);
  };
  const rim = (z: number, r: number): number[] => Array.from({ length: segments }, (_, j) => at(j, z, r));
  const apicalRim = rim(bottom, shape.apicalDiameter / 2);
  const lastThread = rim(top, shape.implantedDiameter / 2);
  const lines = 2 * Math.ceil((top - bottom + lead) / pitch) + 2;
  const tiny = 1e-3 * pitch;

  const column = (j: number): number[] =>
    Array.from({ length: lines + 1 + 2 * starts }, (_, k) => {
      const z = bottom - lead + (k * pitch) / 2 + (lead * j) / segments;
      if (z <= bottom + tiny) return apicalRim[j];
      if (z >= top - tiny) return lastThread[j];
      const fade = clamp(Math.min(z - bottom, top - z) / pitch, 0, 1);
      const groove = k % 2 === 1 ? depth * fade : 0;
      return at(j, z, envelope.radius(-z) - groove);
    });
  const columns = Array.from({ length: segments }, (_, j) => column(j));
  const next = (j: number, k: number): number =>
    j + 1 < segments ? columns[j + 1][k] : columns[0][k + 2 * starts];
  for (let j = 0; j < segments; j++) {
    for (let k = 0; k < lines; k++) {
      builder.quad(columns[j][k], next(j, k), next(j, k + 1), columns[j][k + 1]);
    }
  }
  return { apicalRim, lastThread };
}
