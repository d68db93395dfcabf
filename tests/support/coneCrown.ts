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
export const coneCrown = ({ foot, height, footRadius, topRadius }: ConeCrown): PlannedCrown =>
  lathedCrown(foot, [
    [0, footRadius],
    [height, topRadius],
  ]);

/** A body of revolution, straight between heights over its foot: `[height, radius]` upward from 0. */
export function lathedCrown(
  foot: number,
  profile: readonly (readonly [height: number, radius: number])[],
): PlannedCrown {
  const [height, topRadius] = profile[profile.length - 1];
  const radius = (z: number): number => {
    const i = Math.max(
      1,
      profile.findIndex(([h]) => h >= z),
    );
    const [[z0, r0], [z1, r1]] = [profile[i - 1], profile[i]];
    return r0 + ((r1 - r0) * (z - z0)) / (z1 - z0);
  };
  const builder = new MeshBuilder();
  const ring = (z: number) =>
    builder.ring(COLUMNS, (j): Vec3 => {
      const angle = (2 * Math.PI * j) / COLUMNS;
      return [radius(z) * Math.cos(angle), radius(z) * Math.sin(angle), z];
    });
  const rings = Array.from({ length: RINGS + 1 }, (_, i) => ring((height * i) / RINGS));
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
