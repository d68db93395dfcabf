import type { Anatomy } from '../anatomy/anatomy.ts';
import { broughtOut, type Placed, placedIn } from '../geometry/carry.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import type { Loop, Plane } from '../geometry/slice.ts';
import { along, sub, unit, type Vec3 } from '../geometry/vec.ts';
import { gapContact } from '../measure/lines.ts';
import type { Placement } from '../measure/placement.ts';
import type { ExitPlace } from './access.ts';
import type { Contour, EmergenceSide } from './emergence.ts';
import { cutCrown, type PlannedCrown } from './plannedCrown.ts';
import { type GroundAbutment, type GroundOutline, groundAbutment, groundOutline } from './reducedAbutment.ts';
import type { Restoration } from './restoration.ts';

/** What an evaluation has that the crown is drawn from. */
export interface CrownScene {
  readonly anatomy: Anatomy;
  readonly placement: Placement;
  readonly restoration: Restoration;
}

/** A screw's channel; jaw frame, mm. */
export interface DrawnChannel {
  /** From the platform's centre to where it bends. */
  readonly from: Vec3;
  readonly bend: Vec3;
  /** Where the straight way on comes out. */
  readonly exit: Vec3;
  readonly place: ExitPlace;
  /** The edge's point beside that, and the distance from it, + palatal. */
  readonly edge: Vec3;
  readonly toEdge: number;
  /** After the correction: where it comes out, along which unit axis, turned by how much (degrees), and whether that is within the published range. Null: nowhere. */
  readonly corrected: {
    readonly exit: Vec3;
    readonly axis: Vec3;
    readonly angle: number;
    readonly inRange: boolean;
  } | null;
}

/** What a pose draws of the crown, but for meshes: points of the jaw frame, mm. */
export interface CrownDrawing {
  /** Null: the axis does not come out of the crown, or the abutment is one piece with the implant. */
  readonly channel: DrawnChannel | null;
  /** From the shoulder's rim to the gum's margin on the crown. Null: no wall there, or the shoulder shows. */
  readonly contours: Readonly<Record<EmergenceSide, Contour | null>>;
  /** Where the crown is to touch its neighbours. */
  readonly contacts: { readonly mesial: Vec3; readonly distal: Vec3 };
  /** The facial rim of a one-piece abutment and where its finishing line has to come to. Null: no abutment, or it hides as it is. */
  readonly finishing: { readonly from: Vec3; readonly to: Vec3 } | null;
}

function channelOf({ anatomy, placement, restoration }: CrownScene): DrawnChannel | null {
  const { access, exit } = restoration;
  if (!access || placement.shape.abutment) return null;
  const { toJaw, toJawDirection } = anatomy;
  const { bent } = access;
  return {
    from: toJaw(placement.platform),
    bend: toJaw(access.bend),
    exit: toJaw(access.exit),
    place: access.place,
    edge: toJaw(access.edge),
    toEdge: access.toEdge,
    corrected: bent && {
      exit: toJaw(bent.exit),
      axis: toJawDirection(unit(sub(bent.exit, access.bend))),
      angle: bent.angle,
      inRange: exit.code === 'straight' || exit.code === 'bent',
    },
  };
}

/** What a pose draws of the crown. A few points: asked anew for every pose. */
export function crownDrawing(scene: CrownScene): CrownDrawing {
  const { anatomy, restoration } = scene;
  const { toJaw, teeth } = anatomy;
  const { contours, finishing } = restoration;
  const contour = (side: EmergenceSide): Contour | null => {
    const found = contours[side];
    if (typeof found === 'string') return null;
    return { ...found, rim: toJaw(found.rim), margin: toJaw(found.margin) };
  };
  return {
    channel: channelOf(scene),
    contours: { mesial: contour('mesial'), distal: contour('distal'), facial: contour('facial') },
    contacts: {
      mesial: toJaw(gapContact(teeth.mesial, true)),
      distal: toJaw(gapContact(teeth.distal, false)),
    },
    finishing:
      finishing && finishing.value > 0 ? { from: toJaw(finishing.rim), to: toJaw(finishing.to) } : null,
  };
}

/** The planned crown as a solid in its place; jaw frame, mm. */
export interface CrownSolid {
  /** Closed, outward, in the crown's own coordinates. */
  readonly mesh: TriangleMesh;
  /** Where those stand in the jaw. */
  readonly frame: Placed;
  /** Closed lines round it: the CEJ, and where the planned gum margin is to lie on it. */
  readonly cej: readonly Vec3[];
  readonly margin: readonly Vec3[];
}

const solids = new WeakMap<PlannedCrown, CrownSolid>();

/** The corners of a mesh's foot in order round it; the foot is a fan about the last vertex. */
function rimOf({ positions: p, triangles }: TriangleMesh): Vec3[] {
  const apex = p.length / 3 - 1;
  const next = new Map<number, number>();
  for (let i = 0; i < triangles.length; i += 3) {
    const k = [0, 1, 2].find((c) => triangles[i + c] === apex);
    if (k !== undefined) next.set(triangles[i + ((k + 1) % 3)], triangles[i + ((k + 2) % 3)]);
  }
  const rim: Vec3[] = [];
  const [start] = next.keys();
  for (let v = start; rim.length < next.size; v = next.get(v) as number)
    rim.push([p[3 * v], p[3 * v + 1], p[3 * v + 2]]);
  return rim;
}

const siteInJaw = ({ toJaw, toJawDirection }: Anatomy): Placed => ({
  origin: toJaw([0, 0, 0]),
  ex: toJawDirection([1, 0, 0]),
  ey: toJawDirection([0, 1, 0]),
  ez: toJawDirection([0, 0, 1]),
});

/** Kept as long as the planned crown is. */
export function crownSolid({ anatomy, restoration }: CrownScene): CrownSolid {
  const { crown } = restoration;
  const known = solids.get(crown);
  if (known) return known;
  const frame = placedIn(siteInJaw(anatomy), crown.frame);
  const cej = rimOf(crown.mesh);
  const { reference } = anatomy.site;
  const over = Math.max(0, reference.margin - reference.cej) / crown.frame.ez[2];
  const margin = cej.map(([x, y, z]): Vec3 => {
    crown.wall.signed(x, y, z + over);
    return crown.wall.foot;
  });
  const inJaw = (p: Vec3): Vec3 => broughtOut(frame, p);
  const made = { mesh: crown.mesh, frame, cej: cej.map(inJaw), margin: margin.map(inJaw) };
  solids.set(crown, made);
  return made;
}

/** The planned crown's outline in a plane of the site frame: closed lines in the plane's own coordinates, mm. */
export const crownInPlane = ({ restoration }: CrownScene, plane: Plane): readonly Loop[] =>
  cutCrown(restoration.crown, plane).loops;

const ground = new WeakMap<Restoration, GroundAbutment>();

/** The abutment after grinding and the wedge that is taken off; jaw frame. Null: the implant has no abutment of its own. Kept as long as the evaluation is. */
export function groundAbutmentOf({ anatomy, placement, restoration }: CrownScene): GroundAbutment | null {
  const { body } = restoration;
  if (!body) return null;
  const known = ground.get(restoration);
  if (known) return known;
  const { platform: origin, ef: ex, em: ey, a: ez } = placement;
  const made = groundAbutment(body, placedIn(siteInJaw(anatomy), { origin, ex, ey, ez }));
  ground.set(restoration, made);
  return made;
}

/** The abutment before and after grinding in one half-plane of the axis; azimuth from `e_f` toward `e_m`, radians. Null: no abutment. */
export const groundOutlineOf = ({ restoration }: CrownScene, azimuth: number): GroundOutline | null =>
  restoration.body && groundOutline(restoration.body, azimuth);

/** Where a place of a half-plane of the axis stands in the site frame: `rho` from the axis, `x` over the shoulder. */
export function inHalfPlane(at: Placement, azimuth: number, rho: number, x: number): Vec3 {
  return along(along(at.platform, at.a, x), at.across(azimuth), rho);
}
