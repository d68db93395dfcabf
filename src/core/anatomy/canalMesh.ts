import { MeshBuilder } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { along, cross, reject, unit, type Vec3 } from '../geometry/vec.ts';
import type { Canal } from './canal.ts';

/** The nasopalatine canal (rule S13) as a closed tube of two cones with flat ends; site frame, mm. Its vertices lie on the tube. */
export function canalMesh(canal: Canal, segments = 36): TriangleMesh {
  const x: Vec3 = unit(reject([1, 0, 0], canal.run));
  const y = cross(canal.run, x);
  const builder = new MeshBuilder();
  const ring = (k: number): number[] =>
    builder.ring(segments, (j) => {
      const angle = (2 * Math.PI * j) / segments;
      const centre = along(canal.mouth, canal.run, (canal.length * k) / 2);
      const r = canal.radii[k];
      return along(along(centre, x, r * Math.cos(angle)), y, r * Math.sin(angle));
    });
  const rings = [ring(0), ring(1), ring(2)];
  builder.bands(rings);
  builder.capBelow(rings[0], canal.mouth);
  builder.capAbove(rings[2], along(canal.mouth, canal.run, canal.length));
  return builder.build();
}
