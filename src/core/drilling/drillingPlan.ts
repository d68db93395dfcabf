import { leadOf } from '../implant/shape.ts';
import type { Bands } from '../measure/limit.ts';
import { type DepthChain, depthChain } from './depthChain.ts';
import { type DepthMark, depthAtMark, depthMark } from './depthMark.ts';
import type { DrillSite } from './drillSite.ts';
import { type Bore, neckVolume, passVolume } from './drillVolume.ts';
import { SEATING_SPEED } from './genericKit.ts';
import type { Kit, ToolRef } from './kit.ts';
import { fittingNeck, type LastDrill, lastDrill } from './lastDrill.ts';

/** Why a step stops where it does: what is looked at before going on. */
export type StopReason = 'dry-test' | 'direction' | 'full-depth' | 'centring' | 'neck' | 'seat';

export interface PlanStep {
  readonly reason: StopReason;
  /** Null for the seating, which is no tool of the kit. */
  readonly tool: ToolRef | null;
  /** Diameter of the tool, mm; of a neck cutter its shoulder's. */
  readonly diameter: number;
  /** Of the full diameter below `B`; of a neck cutter its neck's notch; of the implant its apex. mm. */
  readonly depth: number;
  readonly mark: DepthMark | null;
  readonly speed: { readonly low: number; readonly high: number } | null;
  readonly irrigation: 'plenty' | 'none';
  /** Bone it takes at most, mm³. */
  readonly volume: number;
}

/** Why a kit cannot make this hole. */
export type KitFaultCode =
  | 'no-drill-narrow'
  | 'drill-too-short'
  | 'marks-too-short'
  | 'no-cutter-fits'
  | 'nothing-to-drill';

export interface KitFault {
  readonly code: KitFaultCode;
  readonly tool: ToolRef | null;
  /** What there is and what would be needed, mm. */
  readonly value: number;
  readonly needed: number;
}

export interface DrillingPlan {
  readonly steps: readonly PlanStep[];
  readonly last: LastDrill | null;
  /** Of the last drill; null where there is none. */
  readonly chain: DepthChain | null;
  readonly faults: readonly KitFault[];
  /** Turning the implant in, s: from the fastest to the slowest usual speed, `60 · depth / (lead · rpm)`. */
  readonly seating: { readonly least: number; readonly most: number };
}

/** What a plan is made from beside the place: the kit, the spare depth `ρ` (mm), whether the gum is laid back, the floor's limit. */
export interface PlanChoice {
  readonly kit: Kit;
  readonly spare: number;
  readonly flap: boolean;
  readonly floor?: Bands;
}

/** The direction is looked at after the first 6 to 8 mm: common practice, no source. */
export const DIRECTION_STOP = { low: 6, high: 8 } as const;

/** Time to turn an implant `depth` mm in, s. */
export const seatingTime = (depth: number, lead: number, rpm: number): number => (60 * depth) / (lead * rpm);

/** Whether the neck reaches below the crest and is wider there than the last drill leaves it. */
const needsNeck = (site: DrillSite): boolean => {
  const { transmucosalLength } = site.at.shape;
  return transmucosalLength > 0 && transmucosalLength > site.shoulder;
};

/** The order of drilling for one implant at one pose: from the dry test to the seat. */
export function drillingPlan(site: DrillSite, choice: PlanChoice): DrillingPlan {
  const { at } = site;
  const { shape } = at;
  const last = lastDrill(choice.kit, shape, at.anatomy.site.ridge.boneClass);
  const lead = leadOf(shape);
  const seating = {
    least: seatingTime(shape.implantedLength, lead, SEATING_SPEED.high),
    most: seatingTime(shape.implantedLength, lead, SEATING_SPEED.low),
  };
  const { kit, ...rest } = choice;
  if (!last) {
    const value = kit.drills[0].diameter;
    const needed = shape.implantedDiameter - shape.thread.depth;
    const fault: KitFault = {
      code: 'no-drill-narrow',
      tool: { kind: 'drill', index: 0 },
      value,
      needed,
    };
    return { steps: [], last, chain: null, faults: [fault], seating };
  }
  const chain = depthChain(site, { ...rest, drill: kit.drills[last.index] });
  const faults = kitFaults(site, choice, last, chain);
  if (faults.some((f) => f.code === 'nothing-to-drill')) return { steps: [], last, chain, faults, seating };
  return { steps: stepsOf(site, choice, last, chain), last, chain, faults, seating };
}

function kitFaults(site: DrillSite, { kit, flap }: PlanChoice, last: LastDrill, chain: DepthChain) {
  const out: KitFault[] = [];
  if (chain.fullDepth <= 0)
    out.push({ code: 'nothing-to-drill', tool: null, value: chain.fullDepth, needed: 0 });
  kit.drills.slice(0, last.index + 1).forEach((drill, index) => {
    const tool: ToolRef = { kind: 'drill', index };
    const { tip, mark } = depthChainOf(site, chain, kit, index, flap);
    if (drill.length <= tip) out.push({ code: 'drill-too-short', tool, value: drill.length, needed: tip });
    else if (mark.beyond > 1e-9)
      out.push({
        code: 'marks-too-short',
        tool,
        value: mark.value - mark.beyond,
        needed: mark.value,
      });
  });
  if (needsNeck(site) && fittingNeck(kit, site.at.shape) === null)
    out.push({ code: 'no-cutter-fits', tool: null, value: kit.necks.length, needed: 1 });
  return out;
}

function depthChainOf(
  site: DrillSite,
  { fullDepth, apex }: DepthChain,
  kit: Kit,
  index: number,
  flap: boolean,
) {
  return depthChain(site, { drill: kit.drills[index], spare: fullDepth - apex, flap });
}

function stepsOf(site: DrillSite, choice: PlanChoice, last: LastDrill, chain: DepthChain): PlanStep[] {
  const { kit, flap } = choice;
  let before: Bore | null = null;
  const bored = (reason: StopReason, index: number, depth: number): PlanStep => {
    const drill = kit.drills[index];
    const bore: Bore = { drill, depth };
    const volume = passVolume(bore, before);
    before = bore;
    const mark = depthMark(site, drill, depth, flap);
    return {
      reason,
      tool: { kind: 'drill', index },
      diameter: drill.diameter,
      depth,
      mark,
      speed: drill.speed,
      irrigation: 'plenty',
      volume,
    };
  };
  const steps: PlanStep[] = [dryTest(kit)];
  const stop = directionStop(site, choice, chain.fullDepth);
  if (stop !== null) steps.push(bored('direction', 0, stop));
  steps.push(bored('full-depth', 0, chain.fullDepth));
  for (let index = 1; index <= last.index; index++) steps.push(bored('centring', index, chain.fullDepth));
  const neck = neckStep(site, kit, last, chain);
  if (neck) steps.push(neck);
  return [...steps, seat(site, chain)];
}

/** The drill at rest in its place: direction, reach and marks, before any bone is touched. */
const dryTest = (kit: Kit): PlanStep => ({
  reason: 'dry-test',
  tool: { kind: 'drill', index: 0 },
  diameter: kit.drills[0].diameter,
  depth: 0,
  mark: null,
  speed: null,
  irrigation: 'none',
  volume: 0,
});

/** Depth of the first stop, mm: at the first mark that stands 6 to 8 mm deep, else at 6; null where the whole hole is no deeper. */
function directionStop(site: DrillSite, { kit, flap }: PlanChoice, full: number): number | null {
  const { low, high } = DIRECTION_STOP;
  const depths = kit.drills[0].marks.map((mark) => depthAtMark(site, kit.drills[0], mark, flap));
  const depth = depths.find((d) => d >= low - 1e-9 && d <= high + 1e-9) ?? low;
  return depth < full ? depth : null;
}

function neckStep(site: DrillSite, kit: Kit, last: LastDrill, chain: DepthChain): PlanStep | null {
  const index = needsNeck(site) ? fittingNeck(kit, site.at.shape) : null;
  if (index === null) return null;
  const cutter = kit.necks[index];
  return {
    reason: 'neck',
    tool: { kind: 'neck', index },
    diameter: cutter.shoulderDiameter,
    depth: chain.lastThread,
    mark: null,
    speed: cutter.speed,
    irrigation: 'plenty',
    volume: neckVolume(cutter.neckDiameter, chain.mouth, chain.lastThread, kit.drills[last.index].diameter),
  };
}

const seat = ({ at }: DrillSite, chain: DepthChain): PlanStep => ({
  reason: 'seat',
  tool: null,
  diameter: at.shape.implantedDiameter,
  depth: chain.apex,
  mark: null,
  speed: SEATING_SPEED,
  irrigation: 'none',
  volume: 0,
});
