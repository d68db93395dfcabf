import { type BufferGeometry, Matrix4 } from 'three';
import { siteInJaw } from '../../core/anatomy/jawFrame.ts';
import { FINE_TOOTH } from '../../core/anatomy/section.ts';
import { plannedCrownInPlace } from '../../core/anatomy/toothMeshes.ts';
import { broughtOut, placedIn } from '../../core/geometry/carry.ts';
import { convexHull, type Point2 } from '../../core/geometry/convexHull.ts';
import { MeshBuilder } from '../../core/geometry/loft.ts';
import type { TriangleMesh } from '../../core/geometry/mesh.ts';
import { axisFrame, axisOf } from '../../core/geometry/pose.ts';
import { along, type Vec3 } from '../../core/geometry/vec.ts';
import type { Evaluation } from '../../core/plan/evaluate.ts';
import { plannedTilt } from '../../core/restoration/crownChoices.ts';
import { crownFrame } from '../../core/restoration/plannedCrown.ts';
import { dashed } from '../../marks/dash.ts';
import { OwnedGeometry } from '../geometry.ts';
import { layAttached } from '../gumLook.ts';
import { implantGeometry, implantMatrix } from '../Implant.tsx';
import type { Lens } from '../lens.ts';
import { SiteGeometries, type SiteSolids } from '../siteSolids.ts';
import { type CrownFit, crownFit, fitted, fittingMatrix } from './crownFit.ts';
import { gumCuff } from './gumCuff.ts';
import { jawStands } from './showCamera.ts';

/** Everything solid of the patient's drawing, jaw frame, mm. */
export interface ShowSolids {
  readonly site: SiteSolids;
  readonly implant: BufferGeometry;
  /** What joins the crown to an implant that has no post of its own; moves with the crown. */
  readonly collar: BufferGeometry | null;
  /** The gum round the crown's neck. */
  readonly cuff: BufferGeometry;
  /** How the crown is made to fit between its neighbours, within its group. */
  readonly fits: Matrix4;
  /** Where the implant stands. */
  readonly stands: Matrix4;
  /** Ways along which the implant and the crown come in: apex → coronal, unit. */
  readonly axis: Vec3;
  readonly crownAxis: Vec3;
  /** Points of the crown that is to come, as it stands in the drawing. */
  readonly crownPoints: readonly Vec3[];
  /** Whether lower teeth that are drawn stand over against the gap. */
  readonly bites: boolean;
  readonly dispose: () => void;
}

/** Few enough points for an outline that is drawn anew with every frame. */
const COARSE = { ...FINE_TOOTH, columns: 36, rings: 18 } as const;

function crownPoints({ anatomy, plan }: Evaluation, fit: CrownFit): Vec3[] {
  const { mesh } = plannedCrownInPlace(anatomy, COARSE);
  const frame = crownFrame(anatomy, plan.crown);
  const stands = placedIn(jawStands(anatomy), siteInJaw(anatomy));
  const worn = plan.site.crown.crownLength - plan.crown.wear;
  const points: Vec3[] = [];
  for (let i = 0; i < mesh.positions.length; i += 3) {
    const [x, y, z] = mesh.positions.subarray(i, i + 3);
    points.push(broughtOut(stands, fitted(broughtOut(frame, [x, y, Math.min(z, worn)]), fit)));
  }
  return points;
}

/** Farther along the arch than this a lower tooth does not meet the new one, mm. */
const NEAR = 5;

const AROUND = 40;
/** Where in the crown the joining part ends, as a share of the crown's length, and how wide it is there, of the crown's width and depth. */
const IN_CROWN = { height: 0.42, width: 0.3 } as const;

/** A round part from the shoulder's rim into the planned crown, site frame: for the eye only, nothing is measured on it. */
function collarMesh({ anatomy, plan, placement }: Evaluation, fit: CrownFit): TriangleMesh | null {
  if (plan.implant.abutment) return null;
  const { origin, ex, ey, ez } = crownFrame(anatomy, plan.crown);
  const { crownLength, crownWidth, crownDepth } = plan.site.crown;
  const { em, ef } = axisFrame(axisOf(plan.pose.tilt));
  const circle = (centre: Vec3, x: Vec3, y: Vec3, rx: number, ry: number) => (j: number) => {
    const angle = (2 * Math.PI * j) / AROUND;
    return along(along(centre, x, rx * Math.cos(angle)), y, ry * Math.sin(angle));
  };
  const radius = 0.94 * placement.radius(placement.tP);
  const top = fitted(along(origin, ez, IN_CROWN.height * (crownLength - plan.crown.wear)), fit);
  const [rx, ry] = [crownWidth, crownDepth].map((size) => IN_CROWN.width * size);
  const builder = new MeshBuilder();
  const low = builder.ring(AROUND, circle(placement.platform, em, ef, radius, radius));
  builder.band(low, builder.ring(AROUND, circle(top, ex, ey, rx, ry)));
  return builder.build();
}

/** The solids of a plan; whoever asks disposes of them. */
export function showSolids(evaluation: Evaluation, light: boolean): ShowSolids {
  const { anatomy, plan } = evaluation;
  const geometries = new SiteGeometries(light);
  const implant = implantGeometry(plan.implant, light ? 40 : 64);
  const site = geometries.lay(anatomy, plan.crown);
  const fit = crownFit(evaluation);
  const joining = collarMesh(evaluation, fit);
  const collar = joining && new OwnedGeometry().lay(joining, siteInJaw(anatomy)).geometry;
  const around = gumCuff(evaluation, fit);
  const cuff = layAttached(new OwnedGeometry(), around.mesh, around.cover, siteInJaw(anatomy));
  return {
    site,
    bites: site.bite.some(({ tooth }) => Math.abs(tooth.edge[0]) < NEAR),
    implant,
    collar,
    cuff,
    stands: implantMatrix(evaluation, new Matrix4()),
    axis: anatomy.toJawDirection(axisOf(plan.pose.tilt)),
    crownAxis: anatomy.toJawDirection(axisOf(plannedTilt(plan.site.crown.tilt, plan.crown))),
    crownPoints: crownPoints(evaluation, fit),
    fits: fittingMatrix(fit, anatomy),
    dispose: () => {
      geometries.dispose();
      implant.dispose();
      collar?.dispose();
      cuff.dispose();
    },
  };
}

/** Line type of what is to come: ISO 128's dashes, longer than for a small drawing; px. */
const TO_COME = [9, 6] as const;

/** The outline of the crown that is to come, as path data. A crown is nearly convex from every side that is shown. */
export function outlineOf(points: readonly Vec3[], lens: Lens): string {
  const flat = points.map((p): Point2 => {
    const { x, y } = lens.at(p);
    return [x, y];
  });
  return dashed(
    convexHull(flat).map(([x, y]) => ({ x, y })),
    TO_COME,
    true,
  );
}
