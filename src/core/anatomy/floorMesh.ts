import { MeshBuilder } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { fromArch, toArch } from './arch.ts';
import { RIDGE_BEYOND } from './ridgeMesh.ts';
import { RidgeShell } from './ridgeShell.ts';

/** How far the patch sticks out of the ridge on both sides, mm. */
const MARGIN = 2;

/**
 * The floor of the nose or sinus (rule S6) as an open patch in its plane, facing coronally: the ridge's own foot and 2 mm on both
 * sides of it; site frame, mm.
 */
export function floorMesh(anatomy: Anatomy, rows = 24): TriangleMesh {
  const { teeth, ridge } = anatomy;
  const shell = new RidgeShell(ridge);
  const from = teeth.distal.station - RIDGE_BEYOND;
  const to = teeth.mesial.station + RIDGE_BEYOND;
  const builder = new MeshBuilder();
  const edge = (q: number, side: 1 | -1): Vec3 => {
    shell.row(q);
    const foot = shell.point(q, side * shell.end(side));
    const [, e] = toArch(anatomy.arch, foot);
    return fromArch(anatomy.arch, q, e + side * MARGIN, ridge.floor);
  };
  const pairs = Array.from({ length: rows + 1 }, (_, i) => {
    const q = from + ((to - from) * i) / rows;
    return [builder.vertex(edge(q, -1)), builder.vertex(edge(q, 1))] as const;
  });
  for (let i = 0; i < rows; i++) builder.quad(pairs[i][0], pairs[i + 1][0], pairs[i + 1][1], pairs[i][1]);
  return builder.build();
}
