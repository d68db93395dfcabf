import { withSmoothNormals } from '../geometry/crease.ts';
import { MeshBuilder } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { smoothstep, type Vec3 } from '../geometry/vec.ts';
import type { ToothNumbers } from './site.ts';

export interface RootOptions {
  /** Columns round the root, even; default 80, the crown's. */
  readonly columns?: number;
  /** Rings from the CEJ to the apex; default 32. */
  readonly rootRings?: number;
  /** The root's own axes in tooth coordinates, where it is tilted against the crown (rule S8); default: the tooth's. */
  readonly rootAxes?: { readonly ex: Vec3; readonly ey: Vec3; readonly a: Vec3 };
}

/** Height of the CEJ over its most apical facial point, at the cosine of the angle from mesial, mm. */
export const cejHeight = (n: ToothNumbers, cos: number): number =>
  (cos >= 0 ? n.cejCurveMesial : n.cejCurveDistal) * cos * cos;

/** Below this depth a tilted root stands on its own axes entirely, mm. */
const BLEND = 2.5;

/**
 * Root in tooth coordinates (rule S7), mm: the half-ellipsoid of rule S8 below `z = 0`, carried up by an elliptic cylinder to the
 * CEJ, where it meets the crown without a step. Closed there, outward, with smooth normals. Where `rootAxes` tilt it, the
 * uppermost 2.5 mm below the CEJ pass from the crown's axes to its own.
 */
export function rootMesh(n: ToothNumbers, options: RootOptions = {}): TriangleMesh {
  const columns = 2 * Math.max(4, Math.round((options.columns ?? 80) / 2));
  const count = Math.max(4, options.rootRings ?? 32);
  const [a, b, length] = [n.cervixWidth / 2, n.cervixDepth / 2, n.rootLength];
  const axes = options.rootAxes;
  const place = (p: Vec3): Vec3 => {
    if (!axes) return p;
    const share = smoothstep(-p[2], 0, BLEND);
    const at = (k: number): number =>
      p[k] + share * (p[0] * axes.ex[k] + p[1] * axes.ey[k] + p[2] * axes.a[k] - p[k]);
    return [at(0), at(1), at(2)];
  };
  const point = (i: number, j: number): Vec3 => {
    const angle = (2 * Math.PI * j) / columns;
    const deep = Math.sin((Math.PI / 2) * (i / count));
    const cos = Math.cos(angle);
    const z = cejHeight(n, cos) * (1 - deep) ** 3 - length * deep;
    const r = z >= 0 ? 1 : Math.sqrt(Math.max(0, 1 - (z / length) ** 2));
    return place([a * r * cos, b * r * Math.sin(angle), z]);
  };
  const builder = new MeshBuilder();
  const rings: number[][] = [];
  for (let i = count - 1; i >= 0; i--) rings.push(builder.ring(columns, (j) => point(i, j)));
  builder.bands(rings);
  builder.capBelow(rings[0], place([0, 0, -length]));
  const walls = builder.triangleCount;
  builder.capAbove(rings[count - 1], [0, 0, (n.cejCurveMesial + n.cejCurveDistal) / 4]);
  return withSmoothNormals(builder.build(), walls);
}
