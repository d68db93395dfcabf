import { plannedCrownInPlace } from '../../core/anatomy/toothMeshes.ts';
import { broughtOut } from '../../core/geometry/carry.ts';
import { withSmoothNormals } from '../../core/geometry/crease.ts';
import { MeshBuilder } from '../../core/geometry/loft.ts';
import type { TriangleMesh } from '../../core/geometry/mesh.ts';
import type { Vec3 } from '../../core/geometry/vec.ts';
import type { Evaluation } from '../../core/plan/evaluate.ts';
import { crownFrame } from '../../core/restoration/plannedCrown.ts';
import { type CrownFit, fitted } from './crownFit.ts';

const COLUMNS = 48;
const FORM = { columns: COLUMNS, rings: 36 } as const;

/**
 * Lines of the cuff from its foot over the gum to its margin: height over the cervical line as a share of the margin's, or below it in mm; how far outside the
 * crown, mm; drawn in by which share toward the axis; and how much of it is seen, so that it runs out into the gum.
 */
const LINES = [
  { up: 0, down: 3.6, out: 0, drawnIn: 0.5, cover: 0 },
  { up: 0, down: 2, out: 0.3, drawnIn: 0.16, cover: 0.15 },
  { up: 0, down: 0.9, out: 0.4, drawnIn: 0.05, cover: 0.65 },
  { up: 0, down: 0, out: 0.4, drawnIn: 0, cover: 1 },
  { up: 0.55, down: 0, out: 0.32, drawnIn: 0, cover: 1 },
  { up: 0.9, down: 0, out: 0.18, drawnIn: 0, cover: 1 },
  { up: 1, down: 0, out: 0.03, drawnIn: 0, cover: 1 },
] as const;

export interface GumCuff {
  readonly mesh: TriangleMesh;
  /** By vertex: 1 whole, 0 not seen. */
  readonly cover: readonly number[];
}

/** Height over the cervical line, mm, at which the crown's wall is asked: the point of a column of the crown's mesh there. */
function onWall({ positions: p }: TriangleMesh, j: number, height: number): Vec3 {
  const at = (i: number): Vec3 => {
    const k = 3 * (i * COLUMNS + j);
    return [p[k], p[k + 1], p[k + 2]];
  };
  const foot = at(0);
  let low = foot;
  for (let i = 1; i < FORM.rings / 3; i++) {
    const high = at(i);
    if (high[2] - foot[2] >= height) {
      const w = (height - (low[2] - foot[2])) / Math.max(1e-6, high[2] - low[2]);
      return [low[0] + w * (high[0] - low[0]), low[1] + w * (high[1] - low[1]), foot[2] + height];
    }
    low = high;
  }
  return low;
}

/**
 * The gum as it is meant to lie round the neck of the planned crown, up to the planned margin: the model's own gum is that of today. Site frame, mm; for
 * the eye only, nothing is read off it.
 */
export function gumCuff({ anatomy, plan }: Evaluation, fit: CrownFit): GumCuff {
  const { site } = anatomy;
  const { mesh } = plannedCrownInPlace(anatomy, FORM);
  const frame = crownFrame(anatomy, plan.crown);
  const margin = Math.min(2, Math.max(0.3, site.reference.margin - site.reference.cej));
  const builder = new MeshBuilder();
  const rings = LINES.map(({ up, down, out, drawnIn }) =>
    builder.ring(COLUMNS, (j) => {
      const [x, y, z] = onWall(mesh, j, up * margin);
      const k = (1 - drawnIn) * (1 + out / Math.hypot(x, y));
      return fitted(broughtOut(frame, [k * x, k * y, z - down]), fit);
    }),
  );
  builder.bands(rings);
  const cover = LINES.flatMap((line) => Array.from({ length: COLUMNS }, () => line.cover));
  return { mesh: withSmoothNormals(builder.build()), cover };
}
