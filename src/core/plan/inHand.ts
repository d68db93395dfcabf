import type { Anatomy } from '../anatomy/anatomy.ts';
import { boneEntry } from '../drilling/boneEntry.ts';
import { GENERIC_KIT } from '../drilling/genericKit.ts';
import { type Drill, type Kit, type NeckCutter, pointLength } from '../drilling/kit.ts';
import { isDrill, type PassBody, passBody, toolOf as toolOfKit } from '../drilling/passBody.ts';
import {
  type DrillPose,
  EMPTY_REHEARSAL,
  type Hand,
  type Pass,
  type Rehearsal,
} from '../drilling/rehearsal.ts';
import { axisOf, entryOf, type Pose } from '../geometry/pose.ts';
import { along, type Vec3 } from '../geometry/vec.ts';
import { type ImplantShape, totalLength } from '../implant/shape.ts';
import { solidsOf } from './evaluate.ts';
import type { Plan } from './plan.ts';

export { isDrill };
export const rehearsalOf = (plan: Plan): Rehearsal => plan.rehearsal ?? EMPTY_REHEARSAL;
export const kitOf = (plan: Plan): Kit => rehearsalOf(plan).kit ?? GENERIC_KIT;

const cut = new WeakMap<readonly Pass[], Map<number, readonly Pass[]>>();

/** The passes that are looked at: all of them, or the first few while one steps back. The same array for the same passes. */
export function passesShown(plan: Plan): readonly Pass[] {
  const { passes, shown } = rehearsalOf(plan);
  if (shown === null || shown >= passes.length) return passes;
  const known = cut.get(passes) ?? new Map<number, readonly Pass[]>();
  cut.set(passes, known);
  const found = known.get(shown) ?? passes.slice(0, shown);
  known.set(shown, found);
  return found;
}

/** The tool of a reference, or null where the plan's kit has none there. */
export const toolOf = (plan: Plan, tool: Hand['tool']): Drill | NeckCutter | null =>
  toolOfKit(kitOf(plan), tool) ?? null;

/** The line of a pose as a drill has it. */
export function drillPoseOf(pose: Pose): DrillPose {
  const [m, f] = entryOf(pose);
  return { mouth: { m, f }, tilt: pose.tilt };
}

/** Level of the bone entry of a line below the plane `c = 0`, along it, mm; where it meets no bone, that plane stands for it. */
export const entryLevel = (anatomy: Anatomy, pose: DrillPose): number =>
  boneEntry(anatomy.ridge, pose)?.level ?? 0;

/** The point of a line at a depth below its bone entry, site frame. */
export function pointAt(anatomy: Anatomy, pose: DrillPose, depth: number): Vec3 {
  const mouth: Vec3 = [pose.mouth.m, pose.mouth.f, 0];
  return along(mouth, axisOf(pose.tilt), -(entryLevel(anatomy, pose) + depth));
}

/** How far the tip of a tool lies beyond what its depth counts, mm. */
export const beyondDepth = (tool: Drill | NeckCutter): number => (isDrill(tool) ? pointLength(tool) : 0);

/** Depth at which a tool's tip rests on the gum, mm. */
export const restingDepth = (plan: Plan, tool: Drill | NeckCutter): number =>
  -(rehearsalOf(plan).flap ? 0 : plan.site.gum.crest) - beyondDepth(tool);

/** The tool in the hand; before any was taken, the first drill, held on the planned axis over the bone. */
export function handOf(plan: Plan): Hand {
  const { hand } = rehearsalOf(plan);
  if (hand && toolOf(plan, hand.tool)) return hand;
  const tool = { kind: 'drill', index: 0 } as const;
  const [drill] = kitOf(plan).drills;
  return {
    tool,
    pose: drillPoseOf(plan.pose),
    depth: restingDepth(plan, drill),
    speed: drill.speed.high,
    irrigated: true,
  };
}

/** How long a tool is drawn and held, from the bottom of its full diameter, mm: to where the implant's shoulder comes to lie. */
const heldLength = (plan: Plan): number => Math.max(6, totalLength(plan.implant));

/** A tool as a shape that can be measured: the cylinder of a drill, the frustum of a neck cutter. */
export function toolShape(plan: Plan, tool: Drill | NeckCutter): ImplantShape {
  const body = isDrill(tool)
    ? { low: tool.diameter, high: tool.diameter, cut: heldLength(plan), neck: 0 }
    : { low: tool.neckDiameter, high: tool.shoulderDiameter, cut: 0.02, neck: tool.height };
  return {
    name: '',
    implantedLength: body.cut,
    transmucosalLength: body.neck,
    apicalDiameter: body.low,
    implantedDiameter: body.low,
    platformDiameter: body.high,
    taperLength: 0,
    thread: { depth: 0.05, pitch: 1, starts: 1 },
    flutes: { count: 0, length: 0, depth: 0 },
    scallop: 0,
    index: 0,
    abutment: null,
    maxTorque: 35,
  };
}

const shown = new WeakMap<Plan, Plan>();

/**
 * The plan with the tool in the hand in the implant's place: whatever reads, draws or moves an implant does so with the tool. Its apical rim is the bottom of a
 * drill's full diameter, or a neck cutter's notch of the neck.
 */
export function planInHand(plan: Plan): Plan {
  const known = shown.get(plan);
  if (known) return known;
  const hand = handOf(plan);
  const tool = toolOf(plan, hand.tool) as Drill | NeckCutter;
  const implant = toolShape(plan, tool);
  const bottom = pointAt(solidsOf(plan.site), hand.pose, hand.depth);
  const [m, f, c] = along(bottom, axisOf(hand.pose.tilt), totalLength(implant));
  const made: Plan = { ...plan, implant, pose: { platform: { m, f, c }, tilt: hand.pose.tilt, roll: 0 } };
  shown.set(plan, made);
  return made;
}

/** Takes back what was done to {@link planInHand}: the hand has moved, the plan itself has not. */
export function withHandMoved(plan: Plan, moved: Plan): Plan {
  const hand = handOf(plan);
  const { pose } = moved;
  const line = drillPoseOf(pose);
  const a = axisOf(pose.tilt);
  const apex = -pose.platform.c / a[2] + totalLength(moved.implant);
  const depth = apex - entryLevel(solidsOf(plan.site), line);
  return withHand(plan, { ...hand, pose: line, depth });
}

export const withHand = (plan: Plan, hand: Hand): Plan => ({
  ...plan,
  rehearsal: { ...rehearsalOf(plan), hand },
});

const bodies = new WeakMap<readonly Pass[], { site: Plan['site']; kit: Kit; made: readonly PassBody[] }>();

/** The bodies of all passes made, in their order; a pass that met no bone is not among them. Kept as long as the passes are. */
export function passBodies(plan: Plan): readonly PassBody[] {
  const passes = passesShown(plan);
  const kit = kitOf(plan);
  const known = bodies.get(passes);
  if (known?.site === plan.site && known.kit === kit) return known.made;
  const { ridge } = solidsOf(plan.site);
  const made = passes.flatMap((pass) => passBody(ridge, kit, pass) ?? []);
  bodies.set(passes, { site: plan.site, kit, made });
  return made;
}

/** The body of the tool where the hand holds it; null where its axis meets no bone. */
export function handBody(plan: Plan): PassBody | null {
  const { tool, pose, depth, speed, irrigated } = handOf(plan);
  const { ridge } = solidsOf(plan.site);
  return passBody(ridge, kitOf(plan), { tool, pose, depth, press: null, speed, irrigated });
}
