import { carried, type Placed, turnedInto } from '../geometry/carry.ts';
import { Kept } from '../geometry/kept.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { axisFrame, axisOf } from '../geometry/pose.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { Anatomy } from './anatomy.ts';
import { type CrownOptions, crownMesh, type ToothMeshes } from './crown.ts';
import { type RootOptions, rootMesh } from './root-mesh.ts';
import type { ToothNumbers } from './site.ts';
import { type PlacedTooth, placeTooth } from './teeth.ts';

/** Crown and root in tooth coordinates (rule S7), and where those stand in the site frame. */
export interface ToothInPlace extends ToothMeshes {
  readonly frame: Placed;
}

/** A mesh in coordinates of its own, and where those stand in the site frame. */
export interface MeshInPlace {
  readonly mesh: TriangleMesh;
  readonly frame: Placed;
}

const crowns = new Kept<TriangleMesh>(24);
const roots = new Kept<TriangleMesh>(24);

const textOf = (n: ToothNumbers): string =>
  [
    n.crownLength,
    n.rootLength,
    n.crownWidth,
    n.cervixWidth,
    n.crownDepth,
    n.cervixDepth,
    n.cejCurveMesial,
    n.cejCurveDistal,
  ].join(' ');

/** The crown of a tooth in tooth coordinates; the same mesh as before where its numbers are the same. */
function crownOf({ cls, numbers }: PlacedTooth, options: CrownOptions): TriangleMesh {
  const { columns, rings } = options;
  const question = [cls, columns, rings, textOf(numbers)].join(' ');
  return crowns.get(question, () => crownMesh(cls, numbers, options));
}

const toPicometre = (v: Vec3): Vec3 => [
  Math.round(v[0] * 1e9) / 1e9,
  Math.round(v[1] * 1e9) / 1e9,
  Math.round(v[2] * 1e9) / 1e9,
];

function rootOf({ numbers, root }: PlacedTooth, frame: Placed, options: RootOptions): TriangleMesh {
  const own = (v: Vec3): Vec3 => toPicometre(turnedInto(frame, v));
  const rootAxes = { ex: own(root.ex), ey: own(root.ey), a: own(root.a) };
  const { columns, rootRings } = options;
  const { ex, ey, a } = rootAxes;
  const question = [columns, rootRings, ...ex, ...ey, ...a, textOf(numbers)].join(' ');
  return roots.get(question, () => rootMesh(numbers, { ...options, rootAxes }));
}

/** A placed tooth's meshes, closed and outward. What its numbers leave as it was is not made again, only carried: it comes back as the same mesh. */
export function toothInPlace(tooth: PlacedTooth, options: CrownOptions & RootOptions = {}): ToothInPlace {
  const { origin, ex, ey, a } = tooth;
  const frame = { origin, ex, ey, ez: a };
  return { frame, crown: crownOf(tooth, options), root: rootOf(tooth, frame, options) };
}

/** Crown and root of a placed tooth in the site frame, mm: closed, outward. */
export function placedToothMeshes(tooth: PlacedTooth, options: CrownOptions & RootOptions = {}): ToothMeshes {
  const { frame, crown, root } = toothInPlace(tooth, options);
  return { crown: carried(crown, frame), root: carried(root, frame) };
}

/** The planned crown's tooth in its place in the gap: its axis through the crest point, the facial middle of its CEJ at the reference level. */
export function plannedTooth({ arch, site }: Anatomy): PlacedTooth {
  // A facial lean carries the facial side of the tooth's own CEJ plane apically.
  const { ef } = axisFrame(axisOf(site.crown.tilt));
  const above = -(site.crown.cervixDepth / 2) * ef[2];
  const numbers = {
    ...site.crown,
    rootTilt: { faciopalatal: 0, mesiodistal: 0 },
    boneLevel: 0,
    cejAboveBone: site.reference.cej + above,
    ridge: { widths: site.ridge.widths, inclination: site.ridge.inclination },
  };
  return placeTooth(arch, site.tooth, numbers, 0, 1);
}

/** The planned crown in tooth coordinates, in its place. */
export function plannedCrownInPlace(anatomy: Anatomy, options: CrownOptions = {}): MeshInPlace {
  const tooth = plannedTooth(anatomy);
  const { origin, ex, ey, a } = tooth;
  return { mesh: crownOf(tooth, options), frame: { origin, ex, ey, ez: a } };
}
