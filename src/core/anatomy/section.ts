import { broughtInto, type Placed, turnedInto } from '../geometry/carry.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { type Loop, loopArea, onPlane, type Plane, sliceMesh } from '../geometry/slice.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { canalMesh } from './canalMesh.ts';
import { type GumMesh, gumMesh } from './gumMesh.ts';
import { RIDGE_BEYOND, type RidgeMesh, ridgeMesh } from './ridgeMesh.ts';
import { RidgeShell, type ShellOffsets } from './ridgeShell.ts';
import type { PlacedTooth } from './teeth.ts';
import { type MeshInPlace, plannedCrownInPlace, type ToothInPlace, toothInPlace } from './toothMeshes.ts';

/** Everything a plane through the site cuts, as closed loops in the plane's coordinates, mm. */
export interface SectionOutline {
  /** Bone with its cortex: inside the ridge, above the floor, less a fresh socket. On the model's surface to 0.001 mm. */
  readonly bone: readonly Loop[];
  /** Spongy bone within the cortex (cortex thickness of each side, measured across the ridge; a thin one over the floor). */
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

/** How finely teeth are made, for the section and for a stage that draws fully. */
export const FINE_TOOTH = { columns: 80, rings: 48, rootRings: 28 } as const;

/** The cortex's inner surface needs no finer a grid: what is cut from it is laid onto the surface itself. */
const MARROW_DENSITY = 0.6;

/** The spongy bone's surface against the ridge's. */
export function marrowOffsets({ site }: Anatomy): ShellOffsets {
  const { facial, palatal } = site.ridge.cortex;
  return { facial: -facial, palatal: -palatal, crest: -(facial + palatal) / 2 };
}

/** A tooth that is drawn, in its place. */
export interface ShownTooth extends ToothInPlace {
  readonly code: number;
}

/** The solids of a site as they are cut; each is made when it is first asked for. Site frame but for the teeth, which stand in it; mm. */
class SectionSolids {
  private made: {
    bone?: RidgeMesh;
    marrow?: TriangleMesh;
    gum?: GumMesh;
    canal?: TriangleMesh;
    teeth?: readonly ShownTooth[];
    crown?: MeshInPlace;
  } = {};
  private readonly range: { readonly from: number; readonly to: number };

  constructor(private readonly anatomy: Anatomy) {
    this.range = shownRange(anatomy);
  }

  get bone(): RidgeMesh {
    this.made.bone ??= ridgeMesh(this.anatomy, this.range);
    return this.made.bone;
  }

  get marrow(): TriangleMesh {
    const offsets = marrowOffsets(this.anatomy);
    this.made.marrow ??= ridgeMesh(this.anatomy, { ...this.range, offsets, density: MARROW_DENSITY }).mesh;
    return this.made.marrow;
  }

  get gum(): GumMesh {
    this.made.gum ??= gumMesh(this.anatomy, this.range);
    return this.made.gum;
  }

  get canal(): TriangleMesh {
    this.made.canal ??= canalMesh(this.anatomy.canal);
    return this.made.canal;
  }

  get teeth(): readonly ShownTooth[] {
    this.made.teeth ??= shownTeeth(this.anatomy).map((tooth) => ({
      code: tooth.code,
      ...toothInPlace(tooth, FINE_TOOTH),
    }));
    return this.made.teeth;
  }

  /** The planned crown. */
  get crown(): MeshInPlace {
    this.made.crown ??= plannedCrownInPlace(this.anatomy, FINE_TOOTH);
    return this.made.crown;
  }
}

const kept = new WeakMap<Anatomy, SectionSolids>();

/** Solids of a site, kept as long as the anatomy is, so that what is drawn and what is cut are the same meshes. */
export function sectionSolids(anatomy: Anatomy): SectionSolids {
  const known = kept.get(anatomy) ?? new SectionSolids(anatomy);
  kept.set(anatomy, known);
  return known;
}

const cut = (mesh: TriangleMesh, plane: Plane): Loop[] =>
  sliceMesh(mesh, plane).filter((l) => Math.abs(loopArea(l)) > 0.01);

/** A plane of the site frame as a frame that stands in it has it: what stands there need not be carried to be cut. */
export const planeIn = (frame: Placed, { origin, x, y }: Plane): Plane => ({
  origin: broughtInto(frame, origin),
  x: turnedInto(frame, x),
  y: turnedInto(frame, y),
});

function outlineOf(anatomy: Anatomy, plane: Plane): SectionOutline {
  const solids = sectionSolids(anatomy);
  const shell = new RidgeShell(anatomy.ridge);
  const inner = new RidgeShell(anatomy.ridge, marrowOffsets(anatomy));
  return {
    bone: cut(solids.bone.mesh, plane).map((loop) => settled(shell, plane, loop)),
    marrow: cut(solids.marrow, plane)
      .map((loop) => aboveFloor(anatomy, plane, settled(inner, plane, loop)))
      .filter((loop) => loop.length > 2),
    gum: cut(solids.gum.mesh, plane),
    teeth: solids.teeth.map(({ code, frame, root, crown }) => {
      const there = planeIn(frame, plane);
      return { code, root: cut(root, there), crown: cut(crown, there) };
    }),
    canal: cut(solids.canal, plane),
    crown: cut(solids.crown.mesh, planeIn(solids.crown.frame, plane)),
  };
}

const sameVector = (a: Vec3, b: Vec3): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
const samePlane = (a: Plane, b: Plane): boolean =>
  sameVector(a.origin, b.origin) && sameVector(a.x, b.x) && sameVector(a.y, b.y);

/** The last few outlines of a site: the stage's cut and the panel's section ask for the same one. */
const last = new WeakMap<Anatomy, { readonly plane: Plane; readonly outline: SectionOutline }[]>();
const MOST_OUTLINES = 3;

/**
 * Cuts the site by a plane (site frame): faciopalatal through the implant's axis with `x = e_f`, `y = a`; mesiodistal with `x = e_m`; or
 * across it with `e_f`, `e_m`. Only the stretch of arch that the meshes model is there: past the neighbours the loops end in
 * straight lines. Cost after the first call on a site: under a millisecond.
 */
export function sectionOutline(anatomy: Anatomy, plane: Plane): SectionOutline {
  const known = last.get(anatomy) ?? [];
  const found = known.find((one) => samePlane(one.plane, plane));
  if (found) return found.outline;
  const outline = outlineOf(anatomy, plane);
  last.set(anatomy, [{ plane, outline }, ...known].slice(0, MOST_OUTLINES));
  return outline;
}

/** Thickness of the cortex that is drawn over the floor of the nose or sinus, mm (assumed). */
const FLOOR_CORTEX = 0.8;

/** Takes off what lies within the floor's cortex: the part of a loop above a line of the plane. */
function aboveFloor({ ridge }: Anatomy, plane: Plane, loop: Loop): Loop {
  const over = ([x, y]: readonly [number, number]) => onPlane(plane, x, y)[2] - ridge.floor - FLOOR_CORTEX;
  return loop.flatMap((p, i) => {
    const next = loop[(i + 1) % loop.length];
    const [here, there] = [over(p), over(next)];
    const own = here >= 0 ? [p] : [];
    if (here >= 0 === there >= 0) return own;
    const w = here / (here - there);
    return [...own, [p[0] + w * (next[0] - p[0]), p[1] + w * (next[1] - p[1])] as const];
  });
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
