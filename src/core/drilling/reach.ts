import type { Anatomy } from '../anatomy/anatomy.ts';
import type { PlacedTooth } from '../anatomy/teeth.ts';
import { placedToothMeshes } from '../anatomy/toothMeshes.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { along, distance, type Vec3 } from '../geometry/vec.ts';
import { type ComingDown, roomOf, signedTo } from './cylinderRoom.ts';
import type { DepthChain } from './depthChain.ts';
import type { DrillSite } from './drillSite.ts';
import { DRIVER } from './genericKit.ts';
import { type Drill, type Handpiece, type Kit, type NeckCutter, pointLength } from './kit.ts';
import { isDrill } from './passBody.ts';

/** What comes down the axis between the crowns: the head over a drill, and over the driver that turns the implant in; the wrench in its place. */
export type ReachTool = 'drill' | 'driver' | 'wrench';

/**
 * `clear`: nothing is met on the way down. `lengthen`: the head meets a crown, with the extension it does not. `too-short`: it meets one even with the extension.
 * `blocked`: what stands between the crowns is itself too wide for the gap.
 */
export type ReachCode = 'clear' | 'lengthen' | 'too-short' | 'blocked';

export interface Reach {
  readonly tool: ReachTool;
  readonly code: ReachCode;
  /** Of the head's lower face above the bone entry `B` along the axis, at its lowest, without the extension, mm. */
  readonly headAbove: number;
  /** Least distance of the head on its way to a crown, without the extension, mm; negative: it meets it, by so much. */
  readonly clearance: number;
  /** Which tooth, ISO 3950, and where on it (jaw frame, mm). */
  readonly tooth: number;
  readonly at: Vec3;
  /** How much longer it has to be, mm; 0: long enough. */
  readonly short: number;
  /** The same distance for what stands between the crowns: the drill's or the driver's shank. */
  readonly shankClearance: number;
}

/** How far the mouth opens: edge to edge along `c`, mm (assumed). The lower teeth are not looked at otherwise. */
export const MOUTH_OPENING = 40;

export interface Opening {
  /** What the head over the drill needs where the drill touches the bone, from the neighbours' highest tip to the head's highest point, mm along `c`. */
  readonly needed: number;
  readonly stated: number;
  readonly enough: boolean;
}

export interface ReachReport {
  readonly reaches: readonly Reach[];
  /** Without the extension, and with it where a drill asks for it. */
  readonly opening: Opening;
}

interface CrownBeside {
  readonly tooth: PlacedTooth;
  readonly mesh: TriangleMesh;
  /** A ball about it. */
  readonly centre: Vec3;
  readonly radius: number;
}

const COARSE = { columns: 48, rings: 30 };
const kept = new WeakMap<Anatomy, readonly CrownBeside[]>();

/** The crowns beside the gap and beyond them, coarse, in the site frame; kept as long as the anatomy is. */
function crownsOf(anatomy: Anatomy): readonly CrownBeside[] {
  const known = kept.get(anatomy);
  if (known) return known;
  const { mesial, distal, further } = anatomy.teeth;
  const made = [mesial, distal, ...further].map(crownBeside);
  kept.set(anatomy, made);
  return made;
}

function crownBeside(tooth: PlacedTooth): CrownBeside {
  const { crown: mesh } = placedToothMeshes(tooth, COARSE);
  const centre = along(tooth.origin, tooth.a, tooth.numbers.crownLength / 2);
  let radius = 0;
  for (let i = 0; i < mesh.positions.length; i += 3) {
    const [x, y, z] = mesh.positions.subarray(i, i + 3);
    radius = Math.max(radius, distance(centre, [x, y, z]));
  }
  return { tooth, mesh, centre, radius };
}

interface RoomAtTooth {
  readonly clearance: number;
  readonly at: Vec3;
  readonly lift: number;
  readonly tooth: PlacedTooth;
}

/** The crown that comes nearest; where several are met, the greatest lift of all. */
function nearestCrown(anatomy: Anatomy, body: ComingDown): RoomAtTooth {
  const { mesial } = anatomy.teeth;
  let nearest: RoomAtTooth = { clearance: Infinity, at: mesial.marks.tip, lift: 0, tooth: mesial };
  for (const { tooth, mesh, centre, radius } of crownsOf(anatomy)) {
    if (signedTo(body, centre) - radius >= Math.max(0, nearest.clearance)) continue;
    const { clearance, at, lift } = roomOf(mesh, body, nearest.clearance);
    nearest = { ...nearest, lift: Math.max(nearest.lift, lift) };
    if (at) nearest = { ...nearest, clearance, at, tooth };
  }
  return nearest;
}

interface Comer {
  readonly tool: ReachTool;
  /** Diameters of what carries it and of what stands between the crowns, mm. */
  readonly head: number;
  readonly shank: number;
  /** Of the head above `B` at its lowest. */
  readonly headAbove: number;
  /** Of the shank's end above `B`; below it lies what goes into the bone. */
  readonly shankAbove: number;
  readonly extension: number;
}

function reachOf({ at, entry }: DrillSite, comer: Comer): Reach {
  const { anatomy, a } = at;
  const foot = at.axisPoint(entry);
  const body = (diameter: number, face: number): ComingDown => ({ foot, a, radius: diameter / 2, face });
  const head = nearestCrown(anatomy, body(comer.head, comer.headAbove));
  const shank = nearestCrown(anatomy, body(comer.shank, comer.shankAbove));
  return {
    tool: comer.tool,
    code: codeOf(shank.clearance, head.lift, comer.extension),
    headAbove: comer.headAbove,
    clearance: head.clearance,
    tooth: head.tooth.code,
    at: anatomy.toJaw(head.at),
    short: head.lift,
    shankClearance: shank.clearance,
  };
}

function codeOf(shank: number, lift: number, extension: number): ReachCode {
  if (shank < 0) return 'blocked';
  if (lift === 0) return 'clear';
  return lift <= extension ? 'lengthen' : 'too-short';
}

/** The head over a tool whose full diameter (or neck's notch) stands `depth` below the bone entry of `site`, mm. */
export function reachOfTool(
  site: DrillSite,
  { headDiameter, extension }: Handpiece,
  tool: Drill | NeckCutter,
  depth: number,
): Reach {
  const [shank, tip] = isDrill(tool)
    ? [tool.diameter, depth + pointLength(tool)]
    : [tool.shoulderDiameter, depth];
  const headAbove = tool.length - tip;
  return reachOf(site, { tool: 'drill', head: headDiameter, shank, headAbove, shankAbove: 0, extension });
}

/**
 * Whether the head of the handpiece, the driver and the wrench come down between the crowns to the planned depth. The wrench is its head only: its arm swings over the
 * teeth. `last`: place of the last drill in the kit; its full depth is the chain's.
 */
export function reachReport(site: DrillSite, kit: Kit, last: number, chain: DepthChain): ReachReport {
  const drill = kit.drills[last];
  const { headDiameter, extension } = kit.handpiece;
  const held = site.shoulder + (site.at.shape.abutment?.height ?? 0);
  const driver = {
    shank: Math.max(DRIVER.diameter, site.at.shape.platformDiameter),
    shankAbove: site.shoulder,
    headAbove: held + DRIVER.length,
  };
  const reaches = [
    reachOfTool(site, kit.handpiece, drill, chain.fullDepth),
    reachOf(site, { tool: 'driver', head: headDiameter, ...driver, extension }),
    reachOf(site, { tool: 'wrench', head: DRIVER.wrench.diameter, ...driver, extension }),
  ];
  const longer = reaches[0].code === 'lengthen' ? extension : 0;
  return { reaches, opening: openingOf(site, kit.handpiece, drill.length + longer) };
}

/** The head stands highest where the drill first touches the bone. */
function openingOf(
  { at, entry }: DrillSite,
  { headDiameter, headHeight }: Handpiece,
  length: number,
): Opening {
  const { mesial, distal } = at.anatomy.teeth;
  const edge = Math.max(mesial.marks.tip[2], distal.marks.tip[2]);
  const top = along(at.axisPoint(entry), at.a, length + headHeight);
  const rim = (headDiameter / 2) * Math.sqrt(Math.max(0, 1 - at.a[2] * at.a[2]));
  const needed = top[2] + rim - edge;
  return { needed, stated: MOUTH_OPENING, enough: needed <= MOUTH_OPENING };
}
