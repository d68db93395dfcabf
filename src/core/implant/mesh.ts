import { MeshBuilder, type Ring } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { columnsOf, evenColumns } from './meshColumns.ts';
import { bandWithMark, type Mark, markPlace } from './meshMark.ts';
import { addAbutment, addNeck, addWell } from './meshShoulder.ts';
import { addThread } from './meshThread.ts';
import { envelopePolyline } from './profile.ts';
import { type ImplantShape, totalLength } from './shape.ts';

/**
 * Mesh of an implant in its own right-handed frame: `z` along the axis, 0 at the platform plane, + coronal; `x` toward the mark;
 * `y` completes it. Millimetres. To place one, carry it by a proper rotation only: a mirrored one would have a left-handed thread.
 */
export interface ImplantMesh {
  /** Closed, outward, genus 0: thread with its flutes and the end face; then neck, shoulder, and abutment or well; then the engraved mark. */
  readonly body: TriangleMesh;
  /** First triangle of the polished part, coronal of the last thread. */
  readonly polishedFrom: number;
  /** First triangle of the engraved mark; the number of triangles where there is none. */
  readonly markFrom: number;
}

export interface ImplantMeshOptions {
  /** Even columns round the axis, at least 8; rounded up to a multiple of 4. Tessellation error `r (1 − cos π/n)`. */
  readonly segments?: number;
}

const segmentsOf = (options: ImplantMeshOptions): number =>
  Math.max(8, 4 * Math.ceil((options.segments ?? 64) / 4));

/**
 * Body of revolution of the thread crests up to the platform plane, closed by flat discs (rule S15), in the frame of
 * {@link ImplantMesh}. Its vertices lie on the envelope: inside by at most `r (1 − cos π/n)`.
 */
export function envelopeMesh(shape: ImplantShape, options: ImplantMeshOptions = {}): TriangleMesh {
  const angles = evenColumns(segmentsOf(options));
  const { x, r } = envelopePolyline(shape);
  const builder = new MeshBuilder();
  const rings: Ring[] = [];
  for (let i = x.length - 1; i >= 0; i--) {
    if (i < x.length - 1 && x[i + 1] - x[i] < 1e-9 && r[i + 1] === r[i]) continue;
    rings.push(
      builder.ring(angles.length, (j) => [r[i] * Math.cos(angles[j]), r[i] * Math.sin(angles[j]), -x[i]]),
    );
  }
  builder.bands(rings);
  builder.capBelow(rings[0], [0, 0, -totalLength(shape)]);
  builder.capAbove(rings[rings.length - 1], [0, 0, 0]);
  return builder.build();
}

/**
 * The implant as it is drawn: right-handed thread of true V flanks whose crests lie on the envelope, run out over one pitch at
 * both ends; flutes cut into it from the flat apical end; neck straight to the platform; scalloped rim; well for the screw or one-piece
 * abutment; the index mark let into neck or shoulder.
 */
export function implantMesh(shape: ImplantShape, options: ImplantMeshOptions = {}): ImplantMesh {
  const mark = markPlace(shape);
  const angles = columnsOf(shape, segmentsOf(options), mark?.half ?? 0);
  const builder = new MeshBuilder();
  const { apicalRim, lastThread } = addThread(builder, shape, angles);
  builder.capBelow(apicalRim, [0, 0, -totalLength(shape)]);
  const polishedFrom = builder.triangleCount;
  let engrave = () => {};
  const band = (on: Mark['on']) => (lower: Ring, upper: Ring) => {
    if (mark?.on === on) engrave = bandWithMark(builder, mark, lower, upper);
    else builder.band(lower, upper);
  };
  const rim = addNeck(builder, shape, lastThread, angles, band('neck'));
  const addTop = shape.abutment ? addAbutment : addWell;
  addTop(builder, shape, rim, angles, band('face'));
  const markFrom = builder.triangleCount;
  engrave();
  return { body: builder.build(), polishedFrom, markFrom };
}
