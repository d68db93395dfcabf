import type { BufferGeometry } from 'three';
import type { Anatomy } from '../core/anatomy/anatomy.ts';
import { gumMesh } from '../core/anatomy/gumMesh.ts';
import { siteInJaw } from '../core/anatomy/jawFrame.ts';
import { type Opponent, opposingInPlace } from '../core/anatomy/opposing.ts';
import { type RidgeMesh, ridgeMesh } from '../core/anatomy/ridgeMesh.ts';
import { FINE_TOOTH, sectionSolids, shownRange, shownTeeth } from '../core/anatomy/section.ts';
import type { PlacedTooth } from '../core/anatomy/teeth.ts';
import { type MeshInPlace, toothInPlace } from '../core/anatomy/toothMeshes.ts';
import { tuckedRoot } from '../core/anatomy/tuckedRoot.ts';
import { carried, type Placed, placedIn } from '../core/geometry/carry.ts';
import type { TriangleMesh } from '../core/geometry/mesh.ts';
import { type CrownForm, UNCHANGED } from '../core/restoration/crownChoices.ts';
import { type PlannedCrown, plannedCrownOf } from '../core/restoration/plannedCrown.ts';
import { OwnedGeometry } from './geometry.ts';
import { layGum } from './gumLook.ts';

export interface ToothSolids {
  readonly tooth: PlacedTooth;
  /** The two beside the gap, not those further on. */
  readonly beside: boolean;
  readonly crown: BufferGeometry;
  readonly root: BufferGeometry;
  /** The root and where it stands in the jaw frame, for its outline. */
  readonly standing: MeshInPlace;
  /** The crown in the same frame, for its outline where it is seen through. */
  readonly crownStanding: TriangleMesh;
}

/** A crown of the lower incisors. */
export interface BiteSolid {
  readonly tooth: Opponent;
  readonly crown: BufferGeometry;
}

/** Everything solid of a site but the implant, in the jaw frame, mm. */
export interface SiteSolids {
  readonly anatomy: Anatomy;
  readonly bone: BufferGeometry;
  /** The same with fewer triangles, for its ink edge and for the part that is taken away. */
  readonly boneLight: BufferGeometry;
  /** The lighter bone in the site frame, for the outline of the part that is taken away. */
  readonly boneMesh: RidgeMesh;
  readonly frame: Placed;
  readonly gum: BufferGeometry;
  readonly teeth: readonly ToothSolids[];
  readonly crown: BufferGeometry;
  readonly bite: readonly BiteSolid[];
  readonly canal: BufferGeometry;
}

/** Porcelain from the neck over the body to the edge; sRGB turned linear. */
const NECK = [0.875, 0.806, 0.694] as const;
const BODY = [0.93, 0.921, 0.896] as const;
const EDGE = [0.79, 0.823, 0.839] as const;

function porcelain(height: number, out: Float32Array, at: number): void {
  const low = Math.min(1, Math.max(0, height / 0.4));
  const high = Math.min(1, Math.max(0, (height - 0.7) / 0.3));
  for (let k = 0; k < 3; k++) {
    const body = NECK[k] + (BODY[k] - NECK[k]) * low * (2 - low);
    out[at + k] = body + (EDGE[k] - body) * high * high;
  }
}

/** Lays a crown in, painted by its height in tooth coordinates. */
function layCrown(
  into: OwnedGeometry,
  mesh: TriangleMesh,
  frame: Placed,
  crownLength: number,
): BufferGeometry {
  const { geometry } = into;
  const known = into.mesh === mesh;
  into.lay(mesh, frame);
  if (known && geometry.getAttribute('color')) return geometry;
  const { positions } = mesh;
  const colours = into.colours(3);
  for (let i = 0; i < positions.length; i += 3) porcelain(positions[i + 2] / crownLength, colours, i);
  return geometry;
}

/** A painted crown that is drawn once. */
export const crownGeometry = (mesh: TriangleMesh, frame: Placed, crownLength: number): BufferGeometry =>
  layCrown(new OwnedGeometry(), mesh, frame, crownLength);

/** How finely a stage draws: its bone's and gum's density, and its teeth. */
const FULL = { bone: 1, sparse: 0.5, gum: 1, tooth: FINE_TOOTH } as const;
const LIGHT = {
  bone: 0.7,
  sparse: 0.7,
  gum: 0.8,
  tooth: { columns: 44, rings: 26, rootRings: 14 },
} as const;

const newTooth = () => ({ crown: new OwnedGeometry(), root: new OwnedGeometry() });

/**
 * The geometries of a site on a stage: owned once, written anew in place with every change of the site's numbers. A tooth whose numbers stay is only carried to
 * its new place.
 */
export class SiteGeometries {
  private readonly bone = new OwnedGeometry();
  private readonly boneLight = new OwnedGeometry();
  private readonly gum = new OwnedGeometry();
  private readonly crown = new OwnedGeometry();
  private readonly canal = new OwnedGeometry();
  /** Mesial and distal neighbour, and the teeth beyond. */
  private readonly teeth = Array.from({ length: 4 }, newTooth);
  private readonly bite = Array.from({ length: 4 }, () => new OwnedGeometry());
  private readonly fine: typeof FULL | typeof LIGHT;

  constructor(light: boolean) {
    this.fine = light ? LIGHT : FULL;
  }

  /** Writes a site. What was returned for another site before shows this one from now on. */
  lay(anatomy: Anatomy, form: CrownForm = UNCHANGED): SiteSolids {
    const { fine } = this;
    const frame = siteInJaw(anatomy);
    const range = shownRange(anatomy);
    const cut = sectionSolids(anatomy);
    const bone = fine.bone === 1 ? cut.bone : ridgeMesh(anatomy, { ...range, density: fine.bone });
    const boneMesh =
      fine.sparse === fine.bone ? bone : ridgeMesh(anatomy, { ...range, density: fine.sparse });
    const gum = fine.gum === 1 ? cut.gum : gumMesh(anatomy, { ...range, density: fine.gum });
    const layRidge = (into: OwnedGeometry, { mesh, walls }: RidgeMesh) =>
      into.lay(mesh, frame, walls).geometry;
    return {
      anatomy,
      frame,
      boneMesh,
      bone: layRidge(this.bone, bone),
      boneLight: boneMesh === bone ? this.bone.geometry : layRidge(this.boneLight, boneMesh),
      gum: layGum(this.gum, gum, frame),
      teeth: shownTeeth(anatomy).map((tooth, i) => this.layTooth(i, tooth, anatomy, frame)),
      canal: this.canal.lay(cut.canal, frame).geometry,
      crown: this.layPlanned(plannedCrownOf(anatomy, form), anatomy, frame),
      bite: opposingInPlace(anatomy, fine.tooth).map(({ tooth, mesh, frame: stands }, i) => ({
        tooth,
        crown: layCrown(this.bite[i], mesh, placedIn(frame, stands), tooth.numbers.crownLength),
      })),
    };
  }

  /** Writes the planned crown; `frame` is the site's in the jaw. */
  layPlanned({ mesh, frame: stands }: PlannedCrown, { site }: Anatomy, frame: Placed): BufferGeometry {
    return layCrown(this.crown, mesh, placedIn(frame, stands), site.crown.crownLength);
  }

  private layTooth(i: number, tooth: PlacedTooth, anatomy: Anatomy, frame: Placed): ToothSolids {
    const { mesial, distal } = anatomy.teeth;
    const into = this.teeth[i];
    const made = toothInPlace(tooth, this.fine.tooth);
    const stands = placedIn(frame, made.frame);
    const beside = tooth === mesial || tooth === distal;
    if (beside) into.root.lay(made.root, stands);
    else into.root.lay(tuckedRoot(carried(made.root, made.frame), anatomy), frame);
    return {
      tooth,
      beside,
      crown: layCrown(into.crown, made.crown, stands, tooth.numbers.crownLength),
      root: into.root.geometry,
      standing: { mesh: made.root, frame: stands },
      crownStanding: made.crown,
    };
  }

  dispose(): void {
    for (const one of [this.bone, this.boneLight, this.gum, this.crown, this.canal, ...this.bite])
      one.dispose();
    for (const { crown, root } of this.teeth) {
      crown.dispose();
      root.dispose();
    }
  }
}

/** The solids of a site that is drawn once. */
export const siteSolids = (anatomy: Anatomy, light: boolean, form: CrownForm = UNCHANGED): SiteSolids =>
  new SiteGeometries(light).lay(anatomy, form);
