import { BufferAttribute, BufferGeometry, DoubleSide, Matrix4, Ray, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import type { Anatomy } from '../../src/core/anatomy/anatomy.ts';
import { canalMesh } from '../../src/core/anatomy/canalMesh.ts';
import type { SideSign } from '../../src/core/anatomy/ridge.ts';
import { ridgeMesh } from '../../src/core/anatomy/ridgeMesh.ts';
import type { PlacedTooth } from '../../src/core/anatomy/teeth.ts';
import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { along, type Vec3 } from '../../src/core/geometry/vec.ts';
import { envelopeMesh } from '../../src/core/implant/mesh.ts';
import { Placement } from '../../src/core/measure/placement.ts';
import type { Plan } from '../../src/core/plan/plan.ts';

/**
 * The readings that need a search, taken from triangle meshes as a program without formulas for the surfaces would take them: rays and closest points
 * by bounding volumes (three-mesh-bvh). Meshes and samples are as fine as about 0.005 mm asks for, no finer. What the readings have in
 * closed form either way (angles, incisal line, levels along z, the neck) is left out, in the meshes' favour.
 */
export interface MeshAnswers {
  readonly thinnest: Readonly<Record<'facial' | 'palatal', number>>;
  readonly true: Readonly<Record<'facial' | 'palatal', number>>;
  readonly root: Readonly<Record<'mesial' | 'distal', number>>;
  readonly contact: number;
}

/** Sagitta of a chord of 0.2 mm on a radius of 1.75: 0.003 mm. */
const SPACING = 0.2;
/** Levels of a profile, as in the readings. */
const PITCH = 0.1;

const geometryOf = (mesh: TriangleMesh): BufferGeometry => {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(mesh.positions), 3));
  geometry.setIndex(new BufferAttribute(Uint32Array.from(mesh.triangles), 1));
  return geometry;
};
const treeOf = (mesh: TriangleMesh): MeshBVH => new MeshBVH(geometryOf(mesh));
/** A geometry that carries its own tree, so that two trees are walked together. */
function treed(mesh: TriangleMesh): BufferGeometry {
  const geometry = geometryOf(mesh);
  return Object.assign(geometry, { boundsTree: new MeshBVH(geometry) });
}

/** Triangles of a grid of points, `columns` of them a row, open at its edges. */
function gridMesh(rows: number, columns: number, point: (i: number, j: number) => Vec3): TriangleMesh {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (let i = 0; i < rows; i++)
    for (let j = 0; j < columns; j++) {
      positions.push(...point(i, j));
      const [a, b] = [i * columns + j, (i + 1) * columns + j];
      if (i + 1 < rows && j + 1 < columns) triangles.push(a, b, b + 1, a, b + 1, a + 1);
    }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** One side's sheet from a depth down, about the site: 0.2 × 0.2 mm, within about 0.005 mm. */
function sheetMesh({ ridge }: Anatomy, side: SideSign, from: number): TriangleMesh {
  const [reach, deepest] = [11, 24];
  const columns = Math.ceil((2 * reach) / SPACING) + 1;
  const rows = Math.ceil((deepest - from) / SPACING) + 1;
  return gridMesh(rows, columns, (i, j) =>
    ridge.sheetPoint(
      side,
      -reach + (2 * reach * j) / (columns - 1),
      from + ((deepest - from) * i) / (rows - 1),
    ),
  );
}

/** The curved surface of a root (rule S8) as a mesh, site frame: 96 × 64, within 0.004 mm. */
function rootSurface({ root }: PlacedTooth): TriangleMesh {
  const [columns, rows] = [96, 64];
  return gridMesh(rows + 1, columns + 1, (i, j) => {
    const psi = ((Math.PI / 2) * i) / rows;
    const theta = (2 * Math.PI * j) / columns;
    const x = root.semi[0] * Math.sin(psi) * Math.cos(theta);
    const y = root.semi[1] * Math.sin(psi) * Math.sin(theta);
    const z = -root.semi[2] * Math.cos(psi);
    return along(along(along(root.centre, root.ex, x), root.ey, y), root.a, z);
  });
}

/** Meshes of a site with their trees: built once, as the readings keep their solids. */
export class SiteMeshes {
  /** The closed solid, its socket left out. */
  readonly ridge: MeshBVH;
  /** Both sheets from the crest down, for rays, and from the crest margin down, for distances. */
  readonly sheets: Readonly<
    Record<'facial' | 'palatal', { readonly whole: MeshBVH; readonly counting: MeshBVH }>
  >;
  readonly roots: Readonly<
    Record<'mesial' | 'distal', { readonly geometry: BufferGeometry; readonly tree: MeshBVH }>
  >;
  readonly canal: BufferGeometry;

  constructor(
    readonly anatomy: Anatomy,
    margin: number,
  ) {
    this.ridge = treeOf(ridgeMesh(anatomy, { density: 1.5 }).mesh);
    const sheet = (side: SideSign) => ({
      whole: treeOf(sheetMesh(anatomy, side, 0)),
      counting: treeOf(sheetMesh(anatomy, side, margin)),
    });
    this.sheets = { facial: sheet(1), palatal: sheet(-1) };
    const root = (tooth: PlacedTooth) => {
      const mesh = rootSurface(tooth);
      return { geometry: treed(mesh), tree: treeOf(mesh) };
    };
    this.roots = { mesial: root(anatomy.teeth.mesial), distal: root(anatomy.teeth.distal) };
    this.canal = treed(canalMesh(anatomy.canal, 96));
  }
}

/** One plan's readings from meshes. A kernel of its own: vectors and rays are made once. */
export class MeshReader {
  private readonly ray = new Ray();
  private readonly point = new Vector3();
  private readonly target = { point: new Vector3(), distance: 0, faceIndex: 0 };
  private readonly envelope: MeshBVH;
  private readonly matrix = new Matrix4();

  constructor(
    private readonly site: SiteMeshes,
    private readonly plan: Plan,
  ) {
    this.envelope = treeOf(envelopeMesh(plan.implant, { segments: 96 }));
  }

  private aim(from: Vec3, toward: Vec3): Ray {
    this.ray.origin.set(...from);
    this.ray.direction.set(...toward);
    return this.ray;
  }

  private hit(tree: MeshBVH, from: Vec3, toward: Vec3): number | null {
    return tree.raycastFirst(this.aim(from, toward), DoubleSide)?.distance ?? null;
  }

  /** Inside the solid: the nearest face ahead is seen from behind. */
  private inside(p: Vec3, toward: Vec3): boolean {
    const hit = this.site.ridge.raycastFirst(this.aim(p, toward), DoubleSide);
    return hit?.face ? hit.face.normal.dot(this.ray.direction) > 0 : false;
  }

  /** Least of `best` and the distance from a point to a tree: what lies further off is not looked at. */
  private nearer(tree: MeshBVH, p: Vec3, best: number): number {
    this.point.set(...p);
    return Math.min(best, tree.closestPointToPoint(this.point, this.target, 0, best)?.distance ?? best);
  }

  private depth(p: Vec3): number {
    return this.site.anatomy.ridge.depth(p);
  }

  read(pose: Plan['pose']): MeshAnswers {
    const { plan, site } = this;
    const at = new Placement(site.anatomy, plan.implant, pose, plan.crestMargin);
    const walls = { facial: this.side(at, 'facial'), palatal: this.side(at, 'palatal') };
    const root = { mesial: this.root(at, 'mesial'), distal: this.root(at, 'distal') };
    this.gapTo(at, site.canal);
    this.concavity(at);
    this.shoulder(at);
    return {
      thinnest: { facial: walls.facial.thinnest, palatal: walls.palatal.thinnest },
      true: { facial: walls.facial.direct, palatal: walls.palatal.direct },
      root,
      contact: this.contact(at),
    };
  }

  /** Bone on the way to the sheet: with a socket, the stretches of the ray inside the solid. */
  private bone(from: Vec3, v: Vec3, to: number): number {
    if (!this.site.anatomy.socket) return to;
    const hits = this.site.ridge
      .raycast(this.aim(from, v), DoubleSide)
      .sort((a, b) => a.distance - b.distance);
    let sum = 0;
    let last = 0;
    for (const { distance, face } of hits) {
      const end = Math.min(distance, to);
      if (face && face.normal.dot(this.ray.direction) > 0) sum += Math.max(0, end - last);
      last = end;
    }
    return sum;
  }

  /** Wall at a level, null where it does not count. */
  private wall(at: Placement, side: 'facial' | 'palatal', t: number): number | null {
    const azimuth = side === 'facial' ? 0 : Math.PI;
    const v = at.across(azimuth);
    const from = at.surface(t, azimuth);
    const tree = this.site.sheets[side].whole;
    const ahead = this.hit(tree, from, v);
    const behind = ahead === null ? this.hit(tree, from, [-v[0], -v[1], -v[2]]) : null;
    const reach = ahead ?? (behind === null ? null : -behind);
    if (reach === null) return null;
    if (Math.min(this.depth(from), this.depth(along(from, v, reach))) < at.crestMargin) return null;
    return ahead === null ? reach : this.bone(from, v, ahead);
  }

  /** A ray every 0.1 mm and the end of the counting window for the profile; closest points over the window of ±45° for the true wall. */
  private side(at: Placement, side: 'facial' | 'palatal'): { thinnest: number; direct: number } {
    let thinnest = Number.POSITIVE_INFINITY;
    let before: number | null = null;
    for (let t = at.tA; t >= at.tP; t -= PITCH) {
      const wall = this.wall(at, side, t);
      if (wall !== null) thinnest = Math.min(thinnest, wall);
      else if (before !== null) {
        let [good, bad] = [t + PITCH, t];
        for (let i = 0; i < 7; i++) {
          const mid = (good + bad) / 2;
          const found = this.wall(at, side, mid);
          if (found !== null) thinnest = Math.min(thinnest, found);
          if (found === null) bad = mid;
          else good = mid;
        }
      }
      before = wall;
    }
    let direct = Number.POSITIVE_INFINITY;
    const tree = this.site.sheets[side].counting;
    const columns = Math.ceil(((Math.PI / 2) * (at.shape.implantedDiameter / 2)) / SPACING);
    for (let j = 0; j <= columns; j++) {
      const azimuth = (side === 'facial' ? 0 : Math.PI) + (Math.PI / 2) * (j / columns - 0.5);
      const from = this.firstCounting(at, azimuth);
      const rows = Math.ceil((at.tA - from) / SPACING);
      for (let i = 0; i <= rows; i++) {
        const p = at.surface(from + ((at.tA - from) * i) / rows, azimuth);
        direct = this.nearer(tree, p, direct);
      }
    }
    return { thinnest, direct };
  }

  /** The level from which a generatrix lies deep enough to count. */
  private firstCounting(at: Placement, azimuth: number): number {
    const counts = (t: number) => this.depth(at.surface(t, azimuth)) >= at.crestMargin;
    if (counts(at.tP)) return at.tP;
    let [bad, good] = [at.tP, at.tA];
    for (let i = 0; i < 14; i++) {
      const mid = (bad + good) / 2;
      if (counts(mid)) good = mid;
      else bad = mid;
    }
    return good;
  }

  /** Places the implant's tree: its own frame has `z` along the axis, 0 at the platform. */
  private place(at: Placement): Matrix4 {
    const { em, ef, a, platform: p } = at;
    return this.matrix.set(
      em[0],
      ef[0],
      a[0],
      p[0],
      em[1],
      ef[1],
      a[1],
      p[1],
      em[2],
      ef[2],
      a[2],
      p[2],
      0,
      0,
      0,
      1,
    );
  }

  private gapTo(at: Placement, geometry: BufferGeometry): number {
    const toImplant = this.place(at).clone().invert();
    return this.envelope.closestPointToGeometry(geometry, toImplant, this.target)?.distance ?? 0;
  }

  private root(at: Placement, which: 'mesial' | 'distal'): number {
    const { geometry, tree } = this.site.roots[which];
    const whole = this.gapTo(at, geometry);
    // At the shoulder: the rim's circle.
    const n = Math.ceil((2 * Math.PI * at.radius(at.tP)) / SPACING);
    let rim = Number.POSITIVE_INFINITY;
    for (let j = 0; j < n; j++) rim = this.nearer(tree, at.surface(at.tP, (2 * Math.PI * j) / n), rim);
    return Math.min(whole, rim);
  }

  private concavity(at: Placement): number {
    const from = at.tA - at.shape.implantedLength / 3;
    const columns = Math.ceil((2 * Math.PI * (at.shape.implantedDiameter / 2)) / SPACING);
    const rows = Math.ceil((at.tA - from) / SPACING);
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= rows; i++)
      for (let j = 0; j < columns; j++) {
        const p = at.surface(from + ((at.tA - from) * i) / rows, (2 * Math.PI * j) / columns);
        least = this.nearer(this.site.sheets.facial.counting, p, least);
      }
    return least;
  }

  private shoulder(at: Placement): void {
    for (const azimuth of [0, Math.PI, Math.PI / 2, -Math.PI / 2]) {
      const rim = at.rimPoint(azimuth);
      this.hit(this.site.ridge, along(rim, at.a, 8), [-at.a[0], -at.a[1], -at.a[2]]);
    }
  }

  /** Share of the threaded envelope inside bone: containment of its samples, weighed by their area. Per cent. */
  private contact(at: Placement): number {
    const top = at.shape.transmucosalLength;
    const rows = Math.ceil((at.length - top) / SPACING);
    let whole = 0;
    let bone = 0;
    for (let i = 0; i < rows; i++) {
      const t = at.tP + top + ((at.length - top) * (i + 0.5)) / rows;
      const r = at.radius(t);
      const columns = Math.ceil((2 * Math.PI * r) / SPACING);
      for (let j = 0; j < columns; j++) {
        const azimuth = (2 * Math.PI * j) / columns;
        const area = r / columns;
        whole += area;
        if (this.inside(at.surface(t, azimuth), at.across(azimuth))) bone += area;
      }
    }
    return (100 * bone) / whole;
  }
}
