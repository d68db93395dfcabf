import type { Manifold } from 'manifold-3d';
import type { Anatomy } from '../core/anatomy/anatomy.ts';
import { canalMesh } from '../core/anatomy/canalMesh.ts';
import { ridgeMesh } from '../core/anatomy/ridgeMesh.ts';
import { shownRange } from '../core/anatomy/section.ts';
import type { Socket } from '../core/anatomy/socket.ts';
import { dot, scale, type Vec3 } from '../core/geometry/vec.ts';
import { solidOf } from './drill.ts';
import type { Kernel, Shelf } from './shelf.ts';

/** Sides of the voids, and how far they are carried on coronally and across, mm: beyond every bone. */
const SIDES = 128;
const FAR = 40;

/** The unit body of the modeller carried so that its axes are these vectors. */
function laid(shelf: Shelf, body: Manifold, x: Vec3, y: Vec3, z: Vec3, origin: Vec3): Manifold {
  return shelf.keep(shelf.keep(body).transform([...x, 0, ...y, 0, ...z, 0, ...origin, 1]));
}

/** The void of a fresh socket and its dehiscence (rules S11, S12) as overlapping bodies, site frame, mm. */
function socketVoids({ Manifold }: Kernel, shelf: Shelf, { ridge }: Anatomy, socket: Socket): Manifold[] {
  const { centre, a, ef, em, semi, numbers } = socket;
  const [x, y] = [scale(em, semi[0]), scale(ef, semi[1])];
  const bowl = laid(shelf, Manifold.sphere(1, SIDES), x, y, scale(a, semi[2]), centre);
  const well = laid(shelf, Manifold.cylinder(1, 1, 1, SIDES), x, y, scale(a, FAR), centre);
  const { depth, width } = numbers.dehiscence;
  if (depth === 0) return [bowl, well];
  const across: Vec3 = [0, ridge.cos, -ridge.sin];
  const down: Vec3 = [0, -ridge.sin * depth, -ridge.cos * depth];
  const lens = Manifold.cylinder(1, 1, 1, SIDES);
  const half: Vec3 = [width / 2, 0, 0];
  const through = laid(shelf, lens, half, down, scale(across, 2 * FAR), scale(across, -FAR));
  return [bowl, well, shelf.keep(through.trimByPlane([...ef], dot(centre, ef)))];
}

/** Bone by rule S14 over the stretch of arch that is drawn: the ridge above its floor less socket, dehiscence and canal. Site frame, mm. */
export function boneSolid(kernel: Kernel, shelf: Shelf, anatomy: Anatomy): Manifold {
  const { socket, canal } = anatomy;
  const ridge = shelf.keep(
    solidOf(kernel, ridgeMesh({ ...anatomy, socket: null }, shownRange(anatomy)).mesh),
  );
  const voids = [shelf.keep(solidOf(kernel, canalMesh(canal, SIDES)))];
  if (socket) voids.push(...socketVoids(kernel, shelf, anatomy, socket));
  return shelf.keep(kernel.Manifold.difference([ridge, ...voids]));
}
