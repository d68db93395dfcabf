import type { Ridge } from '../anatomy/ridge.ts';
import { boneEntry } from '../drilling/boneEntry.ts';
import { corrected, type DrillEdit } from '../drilling/correct.ts';
import { GENERIC_KIT } from '../drilling/genericKit.ts';
import type { Drill, Kit, NeckCutter, ToolRef } from '../drilling/kit.ts';
import { passBody, toolOf as toolOfKit } from '../drilling/passBody.ts';
import type { DrillPose, Hand, Pass, Press, Rehearsal } from '../drilling/rehearsal.ts';
import { axisFrame, axisOf, tiltOf } from '../geometry/pose.ts';
import { add, along, deg, rad, sub, type Vec3 } from '../geometry/vec.ts';
import { solidsOf } from './evaluate.ts';
import {
  drillPoseOf,
  handOf,
  isDrill,
  kitOf,
  passesShown,
  pointAt,
  rehearsalOf,
  restingDepth,
  toolOf,
  withHand,
} from './inHand.ts';
import type { Plan } from './plan.ts';

const withRehearsal = (plan: Plan, change: Partial<Rehearsal>): Plan => ({
  ...plan,
  rehearsal: { ...rehearsalOf(plan), ...change },
});

const sameTool = (a: Hand['tool'], b: Hand['tool']): boolean => a.kind === b.kind && a.index === b.index;

/** Another tool in the hand, on the same axis, lifted off the bone; it runs at its own speed. */
export function takeTool(plan: Plan, tool: Hand['tool']): Plan {
  const taken = toolOf(plan, tool);
  if (!taken) return plan;
  const hand = handOf(plan);
  return withHand(plan, { ...hand, tool, depth: restingDepth(plan, taken), speed: taken.speed.high });
}

/** The tool in the hand at another depth, without drilling. mm as of a pass. */
export const holdAt = (plan: Plan, depth: number): Plan => withHand(plan, { ...handOf(plan), depth });

/** The tool lifted until its tip rests on the gum (or, laid back, on the bone). */
export function lift(plan: Plan): Plan {
  const tool = toolOf(plan, handOf(plan).tool) as Drill | NeckCutter;
  return holdAt(plan, restingDepth(plan, tool));
}

/** The hand on the planned axis again, its depth kept. */
export const toPlannedAxis = (plan: Plan): Plan =>
  withHand(plan, { ...handOf(plan), pose: drillPoseOf(plan.pose) });

/** A crest that rises or falls less than this per mm is level: a drill does not skid on it. */
const LEVEL = 1e-3;

/** How fast the bone falls away toward `way` at a point of its surface; 0 where it is level. */
function slopeAt(ridge: Ridge, p: Vec3, way: Vec3): number {
  const step = 1e-3;
  const slope = (ridge.solid(...along(p, way, step)) - ridge.solid(...along(p, way, -step))) / (2 * step);
  return Math.abs(slope) < LEVEL ? 0 : slope;
}

/**
 * Where a drill goes instead of where it was held, by what a teacher has dialled in: its mouth skids down the slope of the crest, its bottom drifts facially with
 * depth. No force is modelled.
 */
export function wandered(plan: Plan, pose: DrillPose, depth: number): DrillPose {
  const { skid, drift } = rehearsalOf(plan).wander;
  if (skid === 0 && drift === 0) return pose;
  const { ridge } = solidsOf(plan.site);
  const entry = boneEntry(ridge, pose);
  const { ef } = axisFrame(axisOf(pose.tilt));
  const mouthBy = skid * (entry ? Math.sign(slopeAt(ridge, entry.point, ef)) : 0);
  return moved(pose, 0, mouthBy, mouthBy + (drift * Math.max(0, depth)) / 10, Math.max(depth, 1), plan);
}

/** A line whose bone entry and whose bottom have moved across it toward an azimuth, degrees from `ef` toward `em`. mm. */
export function moved(
  pose: DrillPose,
  toward: number,
  mouthBy: number,
  bottomBy: number,
  depth: number,
  plan: Plan,
): DrillPose {
  const anatomy = solidsOf(plan.site);
  const { ef, em } = axisFrame(axisOf(pose.tilt));
  const way: Vec3 = add(
    ef.map((v) => v * Math.cos(rad(toward))) as unknown as Vec3,
    em.map((v) => v * Math.sin(rad(toward))) as unknown as Vec3,
  );
  const top = along(pointAt(anatomy, pose, 0), way, mouthBy);
  const bottom = along(pointAt(anatomy, pose, depth), way, bottomBy);
  const axis = sub(top, bottom);
  const k = top[2] / axis[2];
  const [m, f] = along(top, axis, -k);
  return { mouth: { m, f }, tilt: tiltOf(axis) };
}

/**
 * Drills from where the hand stands down to `depth`. A pass of the same tool on the same axis goes on; any other is a new pass. What was drilled already costs nothing
 * and takes nothing back; an implant that stands in the hole is out of it.
 */
export function drillTo(plan: Plan, depth: number): Plan {
  const hand = handOf(plan);
  const passes = passesShown(plan);
  const last = passes.at(-1);
  const goesOn =
    last &&
    last.press === null &&
    sameTool(last.tool, hand.tool) &&
    JSON.stringify(last.pose) === JSON.stringify(hand.pose);
  const pose = goesOn ? last.pose : wandered(plan, hand.pose, depth);
  const pass: Pass = {
    tool: hand.tool,
    pose,
    depth: goesOn ? Math.max(last.depth, depth) : depth,
    press: null,
    speed: hand.speed,
    irrigated: hand.irrigated,
  };
  return withRehearsal(plan, {
    passes: [...(goesOn ? passes.slice(0, -1) : passes), pass],
    shown: null,
    seating: [],
    hand: { ...hand, pose, depth },
  });
}

/** Presses the running drill against one wall of the hole it stands in; the hand ends where the press ends. */
export function pressAgainst(plan: Plan, press: Press): Plan {
  const hand = handOf(plan);
  const { tool, depth, speed, irrigated } = hand;
  const pass: Pass = { tool, pose: hand.pose, depth, press, speed, irrigated };
  const pose = passBody(solidsOf(plan.site).ridge, kitOf(plan), pass)?.endPose() ?? hand.pose;
  return withRehearsal(plan, {
    passes: [...passesShown(plan), pass],
    shown: null,
    seating: [],
    hand: { ...hand, pose },
  });
}

/** Stands the tool in the hand in the hole of a pass, to look at it. */
export function standIn(plan: Plan, index: number): Plan {
  const pass = rehearsalOf(plan).passes[index];
  if (!pass) return plan;
  const pose = passBody(solidsOf(plan.site).ridge, kitOf(plan), pass)?.endPose() ?? pass.pose;
  return withHand(plan, { ...handOf(plan), tool: pass.tool, pose, depth: pass.depth });
}

/** How deep the hole reaches under the tool in the hand, on its own axis, as depths of that tool; null where there is none. mm. */
export function drilledUnder(plan: Plan): number | null {
  const { pose } = handOf(plan);
  const { ridge } = solidsOf(plan.site);
  const standsIn = (pass: Pass): boolean => {
    const end = pass.press ? passBody(ridge, kitOf(plan), pass)?.endPose() : pass.pose;
    return JSON.stringify(end) === JSON.stringify(pose);
  };
  const depths = passesShown(plan)
    .filter(standsIn)
    .map(({ depth }) => depth);
  return depths.length > 0 ? Math.max(...depths) : null;
}

/** Looks at the first `count` passes only, the hand where the last of them left it; what is drilled then takes the place of the later ones. */
export function showPasses(plan: Plan, count: number): Plan {
  const { passes } = rehearsalOf(plan);
  const shown = count >= passes.length ? null : Math.max(0, count);
  return standIn(withRehearsal(plan, { shown }), Math.min(count, passes.length) - 1);
}

export const setSpeed = (plan: Plan, speed: number): Plan => withHand(plan, { ...handOf(plan), speed });
export const setWater = (plan: Plan, irrigated: boolean): Plan =>
  withHand(plan, { ...handOf(plan), irrigated });
export const setWander = (plan: Plan, wander: Rehearsal['wander']): Plan => withRehearsal(plan, { wander });

/**
 * Carries out a mending of the last pass: the hand stands as the edits say, its tool and depth kept. A press is a pass of its own, made where the last one ended, with
 * its tool.
 */
export function mended(plan: Plan, edits: readonly DrillEdit[]): Plan {
  const passes = passesShown(plan);
  const last = passes.at(-1);
  if (!last) return plan;
  const stood = handOf(standIn(plan, passes.length - 1));
  const press = edits.find((edit) => edit.kind === 'press');
  if (press) return pressAgainst(withHand(plan, stood), press.press);
  const { ridge } = solidsOf(plan.site);
  const pose = edits.reduce((from, edit) => corrected(ridge, from, last.depth, edit), stood.pose);
  return withHand(plan, { ...handOf(plan), pose });
}

/** Another spare depth `ρ` below the apex, mm. */
export const setSpare = (plan: Plan, spare: number): Plan => withRehearsal(plan, { spare });

/** The gum laid back, or left: depths are then read at the gum. */
export const setFlap = (plan: Plan, flap: boolean): Plan => withRehearsal(plan, { flap });

/** Begins anew: no passes, nothing seated, the first drill over the bone; kit and what is dialled in stay. */
export const startAnew = (plan: Plan): Plan =>
  withRehearsal(plan, { passes: [], shown: null, hand: null, seating: [] });

/** A plan with another kit; or the first pass that was made with a tool which that kit does not have. */
export type KitChange =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly pass: number; readonly tool: Drill | NeckCutter };

/** Whether two tools cut the same. */
const cutsAs = (a: Drill | NeckCutter, b: Drill | NeckCutter): boolean =>
  isDrill(a)
    ? isDrill(b) && a.diameter === b.diameter && a.point === b.point
    : !isDrill(b) &&
      a.neckDiameter === b.neckDiameter &&
      a.shoulderDiameter === b.shoulderDiameter &&
      a.height === b.height;

/** The tool of a kit that cuts as this one does; null: it has none. */
function toolLike(kit: Kit, tool: Drill | NeckCutter): ToolRef | null {
  const kind = isDrill(tool) ? 'drill' : 'neck';
  const index = (kind === 'drill' ? kit.drills : kit.necks).findIndex((other) => cutsAs(tool, other));
  return index < 0 ? null : { kind, index };
}

/**
 * Another kit; null, or one with the generic kit's numbers, is the generic one. What was drilled stays as it was: every pass keeps its tool by what it cuts, and a kit that lacks
 * one is refused. A hand whose tool it lacks takes the first drill.
 */
export function setKit(plan: Plan, chosen: Kit | null): KitChange {
  const own = chosen && JSON.stringify(chosen) !== JSON.stringify(GENERIC_KIT) ? chosen : null;
  const kit = own ?? GENERIC_KIT;
  const { passes, hand } = rehearsalOf(plan);
  const kept: Pass[] = [];
  for (const [i, pass] of passes.entries()) {
    const old = toolOfKit(kitOf(plan), pass.tool);
    const tool = old && toolLike(kit, old);
    if (old && !tool) return { ok: false, pass: i, tool: old };
    if (tool) kept.push({ ...pass, tool });
  }
  const held = hand && toolOf(plan, hand.tool);
  const taken = held && toolLike(kit, held);
  const still = hand && taken ? { ...hand, tool: taken } : null;
  return { ok: true, plan: withRehearsal(plan, { kit: own, passes: kept, hand: still }) };
}

/** How far a line leans from another, as projected angles, degrees, + facial and + mesial. */
export const leanFrom = (pose: DrillPose, other: DrillPose) => ({
  faciopalatal: pose.tilt.faciopalatal - other.tilt.faciopalatal,
  mesiodistal: pose.tilt.mesiodistal - other.tilt.mesiodistal,
  total: deg(
    Math.acos(
      Math.min(
        1,
        axisOf(pose.tilt).reduce((s, v, i) => s + v * axisOf(other.tilt)[i], 0),
      ),
    ),
  ),
});
