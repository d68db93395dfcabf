import type { TriangleMesh } from '../geometry/mesh.ts';
import { type Loop, loopArea, onPlane, type Plane, sliceMesh } from '../geometry/slice.ts';
import type { Anatomy } from './anatomy.ts';
import { canalMesh } from './canalMesh.ts';
import { type GumMesh, gumMesh } from './gumMesh.ts';
import { RIDGE_BEYOND, type RidgeMesh, ridgeMesh } from './ridgeMesh.ts';
import { RidgeShell } from './ridgeShell.ts';
import type { PlacedTooth } from './teeth.ts';
import { placedToothMeshes, plannedCrownMesh } from './toothMeshes.ts';

/** Everything a plane through the site cuts, as closed loops in the plane's coordinates, mm. */
export interface SectionOutline {
  /** Bone with its cortex: inside the ridge, above the floor, less a fresh socket. On the model's surface to 0.001 mm. */
  readonly bone: readonly Loop[];
  /** Spongy bone within the cortex (cortex thickness of each side, measured across the ridge). */
  readonly marrow: readonly Loop[];
  readonly gum: readonly Loop[];
  /** Roots and crowns of the neighbours and further teeth, where the plane meets them. */
  readonly teeth: readonly {
    readonly code: number;
    readonly root: readonly Loop[];
    readonly crown: readonly Loop[];
  }[];
  /** The nasopalatine canal. */
  readonly canal: readonly Loop[];
  /** The planned crown. */
  readonly crown: readonly Loop[];
}

/** The meshes that are cut; made once per site. Closed, outward, site frame, mm. */
export interface SectionSolids {
  readonly bone: RidgeMesh;
  readonly marrow: TriangleMesh;
  readonly gum: GumMesh;
  readonly teeth: readonly {
    readonly code: number;
    readonly root: TriangleMesh;
    readonly crown: TriangleMesh;
  }[];
  readonly canal: TriangleMesh;
  readonly crown: TriangleMesh;
}

/** Teeth that are drawn: the two beside the gap and one further on each side. */
export function shownTeeth({ teeth }: Anatomy): PlacedTooth[] {
  const { mesial, distal, further } = teeth;
  const beyond = [
    further.find((t) => t.station > mesial.station),
    further.find((t) => t.station < distal.station),
  ];
  return [mesial, distal, ...beyond.filter((t) => t !== undefined)];
}

/** The stretch of arch that is drawn: past the outermost drawn teeth, at least {@link RIDGE_BEYOND} past the neighbours. */
export function shownRange(anatomy: Anatomy): { readonly from: number; readonly to: number } {
  const ends = shownTeeth(anatomy).flatMap(({ station, numbers }) => {
    const half = numbers.crownWidth / 2 + 0.4;
    return [station - half, station + half];
  });
  const { mesial, distal } = anatomy.teeth;
  return {
    from: Math.min(distal.station - RIDGE_BEYOND, ...ends),
    to: Math.max(mesial.station + RIDGE_BEYOND, ...ends),
  };
}

const kept = new WeakMap<Anatomy, SectionSolids>();

/** Solids of a site for {@link sectionOutline}; kept as long as the anatomy is. Cost of the first call: about 60 ms. */
export function sectionSolids(anatomy: Anatomy): SectionSolids {
  const known = kept.get(anatomy);
  if (known) return known;
  const { site, canal } = anatomy;
  const { facial, palatal } = site.ridge.cortex;
  const range = shownRange(anatomy);
  const offsets = { facial: -facial, palatal: -palatal, crest: -(facial + palatal) / 2 };
  const made: SectionSolids = {
    bone: ridgeMesh(anatomy, range),
    marrow: ridgeMesh(anatomy, { ...range, offsets }).mesh,
    gum: gumMesh(anatomy, range),
    teeth: shownTeeth(anatomy).map((tooth) => ({
      code: tooth.code,
      ...placedToothMeshes(tooth, { columns: 48, rings: 32 }),
    })),
    canal: canalMesh(canal),
    crown: plannedCrownMesh(anatomy),
  };
  kept.set(anatomy, made);
  return made;
}

/**
 * Cuts the site by a plane (site frame): faciopalatal through the implant's axis with `x = e_f`, `y = a`; mesiodistal with `x = e_m`; or
 * across it with `e_f`, `e_m`. Only the stretch of arch that the meshes model is there: past the neighbours the loops end in
 * straight lines. Cost after the first call on a site: under a millisecond.
 */
export function sectionOutline(anatomy: Anatomy, plane: Plane): SectionOutline {
  const solids = sectionSolids(anatomy);
  const cut = (mesh: TriangleMesh): Loop[] =>
    sliceMesh(mesh, plane).filter((l) => Math.abs(loopArea(l)) > 0.01);
  const shell = new RidgeShell(anatomy.ridge);
  return {
    bone: cut(solids.bone.mesh).map((loop) => settled(shell, plane, loop)),
    marrow: cut(solids.marrow),
    gum: cut(solids.gum.mesh),
    teeth: solids.teeth.map(({ code, root, crown }) => ({ code, root: cut(root), crown: cut(crown) })),
    canal: cut(solids.canal),
    crown: cut(solids.crown),
  };
}

/** Moves the points that came from the sheet onto the surface itself, within the plane; the others stay. */
function settled(shell: RidgeShell, plane: Plane, loop: Loop): Loop {
  const floor = shell.ridge.floor + 1e-6;
  const k = (x: number, y: number) => shell.solid(onPlane(plane, x, y));
  const step = 1e-4;
  return loop.map(([x, y]) => {
    const here = k(x, y);
    if (Math.abs(here) > 0.03 || onPlane(plane, x, y)[2] <= floor) return [x, y];
    const gx = (k(x + step, y) - here) / step;
    const gy = (k(x, y + step) - here) / step;
    const slope = gx * gx + gy * gy;
    if (slope < 0.04) return [x, y];
    return [x - (here * gx) / slope, y - (here * gy) / slope];
  });
}
