import { withSmoothNormals } from '../../src/core/geometry/crease.ts';
import { MeshBuilder } from '../../src/core/geometry/loft.ts';
import type { Vec3 } from '../../src/core/geometry/vec.ts';
import { crownOf, type PlannedCrown } from '../../src/core/restoration/plannedCrown.ts';

/** A truncated cone as a crown, upright in the site frame about `(m, f) = (0, 0)`; mm. Its edge is the diameter of its flat top along `m`. */
export interface ConeCrown {
  /** Level of the foot over the site's crest, and how high the top stands over the foot. */
  readonly foot: number;
  readonly height: number;
  readonly footRadius: number;
  readonly topRadius: number;
}

const COLUMNS = 360;
const RINGS = 80;

/** The cone with 360 columns: its radius is short by at most 4·10⁻⁵ of itself. */
export function coneCrown({ foot, height, footRadius, topRadius }: ConeCrown): PlannedCrown {
  const builder = new MeshBuilder();
  const ring = (share: number) => {
    const r = footRadius + (topRadius - footRadius) * share;
    return builder.ring(COLUMNS, (j): Vec3 => {
      const angle = (2 * Math.PI * j) / COLUMNS;
      return [r * Math.cos(angle), r * Math.sin(angle), height * share];
    });
  };
  const rings = Array.from({ length: RINGS + 1 }, (_, i) => ring(i / RINGS));
  builder.bands(rings);
  builder.capAbove(rings[RINGS], [0, 0, height]);
  const walls = builder.triangleCount;
  builder.capBelow(rings[0], [0, 0, 0]);
  const mesh = withSmoothNormals(builder.build(), walls);
  const frame = {
    origin: [0, 0, foot] as const,
    ex: [1, 0, 0] as const,
    ey: [0, 1, 0] as const,
    ez: [0, 0, 1] as const,
  };
  const edge: Vec3[] = [
    [-topRadius, 0, height],
    [topRadius, 0, height],
  ];
  return crownOf(mesh, frame, edge, { mesial: 0, distal: 0 });
}
