import type { Anatomy } from '../../src/core/anatomy/anatomy.ts';
import { ridgeMesh } from '../../src/core/anatomy/ridgeMesh.ts';
import { FINE_TOOTH, shownRange, shownTeeth } from '../../src/core/anatomy/section.ts';
import type { PlacedTooth } from '../../src/core/anatomy/teeth.ts';
import { placedToothMeshes } from '../../src/core/anatomy/toothMeshes.ts';
import type { PassBody } from '../../src/core/drilling/passBody.ts';
import { boxOf } from '../../src/core/geometry/closed.ts';
import { dot, type Vec3 } from '../../src/core/geometry/vec.ts';
import { BASE, STUB } from '../../src/solids/practice.ts';
import { Columns, joined, type Stretch, without } from './columns.ts';

const UP: Vec3 = [0, 0, 1];
const STEP = 0.15;

/** The voids of a site and the passes along a column, by the closed forms of the rules. */
function voids({ socket, canal }: Anatomy, p: Vec3): Stretch[] {
  const site = socket ? [socket.rootVoid(p, UP), socket.dehiscence(p, UP)] : [];
  return [...site, ...canal.voids(p, UP)].filter((v) => v !== null);
}

/** The lowest point of a column that belongs to a tooth's root as it is modelled: a further tooth's ends in a stub. */
function rootFrom({ teeth }: Anatomy, tooth: PlacedTooth, [m, f]: Vec3): number {
  if (tooth === teeth.mesial || tooth === teeth.distal) return -Infinity;
  const { a, origin, numbers } = tooth;
  return (dot(a, origin) - numbers.cejAboveBone - STUB - a[0] * m - a[1] * f) / a[2];
}

/** Volume of a practice model by upright columns 0.15 mm apart through its parts one by one: no solid modeller in it. mm³. */
export function practiceVolume(anatomy: Anatomy, bodies: readonly PassBody[]): number {
  const ridge = ridgeMesh({ ...anatomy, socket: null }, shownRange(anatomy)).mesh;
  const teeth = shownTeeth(anatomy).map((tooth) => ({ tooth, ...placedToothMeshes(tooth, FINE_TOOTH) }));
  const boxes = [ridge, ...teeth.flatMap(({ crown, root }) => [crown, root])].map(boxOf);
  const end = (k: 0 | 1, side: 'low' | 'high') =>
    (side === 'low' ? Math.min : Math.max)(...boxes.map((box) => box[side][k]));
  const columns = new Columns([end(0, 'low'), end(1, 'low')], [end(0, 'high'), end(1, 'high')], STEP);
  const bone = columns.through(ridge);
  const crowns = teeth.map(({ crown }) => columns.through(crown));
  const roots = teeth.map(({ tooth, root }) => ({ tooth, at: columns.through(root) }));
  const base: Stretch = [-Infinity, anatomy.ridge.floor + BASE];
  return columns.volume((i) => {
    const p: Vec3 = [...columns.at(i), 0];
    const rooted = roots.flatMap(({ tooth, at }) =>
      without(at[i], [[-Infinity, rootFrom(anatomy, tooth, p)]]),
    );
    const jaw = joined([...without(bone[i], voids(anatomy, p)), ...rooted]);
    const drilled = without(
      jaw,
      bodies.flatMap((body) => [...body.stretches(p, UP)]),
    );
    return without(joined([...drilled, ...crowns.flatMap((at) => at[i])]), [base]);
  });
}
