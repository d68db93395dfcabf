import { mouthDiameter } from './depthChain.ts';
import type { DrillingPlan } from './drillingPlan.ts';
import { neckVolume, passVolume } from './drillVolume.ts';
import type { NeckCutter, ToolRef } from './kit.ts';
import { type Circles, circlesOf, type Outlook, type PlannedHole, type RingAndDot } from './outlook.ts';
import { isDrill } from './passBody.ts';
import { type FaultContext, type PassFault, type PassFaultCode, passFaults } from './passFaults.ts';
import { type PassView, takersOf } from './passView.ts';
import { plannedBody } from './plannedHole.ts';
import { takenUp } from './takenUp.ts';

/** Where the axis of a pass crosses a level of the plan, across the planned axis, mm. */
export interface Sideways {
  /** + facial. */
  readonly faciopalatal: number;
  /** + mesial. */
  readonly mesiodistal: number;
  readonly lateral: number;
}

/** One pass beside the plan. mm and degrees. */
export interface PassRow {
  /** Place in the rehearsal. */
  readonly index: number;
  readonly tool: ToolRef;
  /** Of a drill; of a neck cutter its shoulder's. */
  readonly diameter: number;
  readonly depth: number;
  /** Deeper than the plan has this tool in the end, + too deep; null: the plan does not use it. */
  readonly depthOff: number | null;
  /** At the planned bone entry. */
  readonly crest: Sideways;
  /** At the planned full depth, the axis carried on where the pass ends before it. */
  readonly apex: Sideways;
  readonly carriedOn: boolean;
  /** True angle to the planned axis. */
  readonly angle: number;
  /** Bone it took at most, mm³. */
  readonly volume: number;
  /** With the plan's last drill, a wider one or a neck cutter: nothing has to take it up. */
  readonly final: boolean;
  /** The later pass that takes it up; null: none. */
  readonly takenUpBy: number | null;
  readonly faults: readonly PassFault[];
}

/**
 * `not-begun`: no pass. `stop`: floor or canal was entered. `open`: gone on with as planned the hole stays open beside the implant. `mend`: something is to be put right, and the
 * plan's last tools or the implant cover it. `mind`: cautions only. `as-planned`: none.
 */
export type Verdict = 'not-begun' | 'as-planned' | 'mind' | 'mend' | 'open' | 'stop';

export interface RehearsalSummary {
  readonly rows: readonly PassRow[];
  readonly faults: readonly PassFault[];
  /** How the hole ends if it is gone on with as planned; null: no pass, or no plan for this kit. */
  readonly outlook: Outlook | null;
  readonly verdict: Verdict;
}

const STOPS: ReadonlySet<PassFaultCode> = new Set<PassFaultCode>(['past-floor', 'in-canal']);
const MINDS: ReadonlySet<PassFaultCode> = new Set<PassFaultCode>([
  'near-floor',
  'skipped-drill',
  'too-fast',
  'dry',
]);

/** What a fault asks for: to stop, to mend, to mind; or a later pass has mended it. */
export type FaultWeight = 'stop' | 'mend' | 'mind' | 'mended';

export function weightOf({ code, mendedBy }: PassFault): FaultWeight {
  if (STOPS.has(code)) return 'stop';
  if (mendedBy !== null) return 'mended';
  return MINDS.has(code) ? 'mind' : 'mend';
}

const sideways = ({ facial, mesial }: RingAndDot): Sideways => ({
  faciopalatal: facial,
  mesiodistal: mesial,
  lateral: Math.hypot(facial, mesial),
});

/** What a summary is made of; `hole` and `outlook` are taken from where they have been worked out already. */
export interface SummaryContext extends FaultContext {
  /** What the plan ends in; null: the kit cannot make it. */
  readonly hole: PlannedHole | null;
  /** How the passes end if the plan is gone on with; null: no pass, or no plan. */
  readonly outlook: Outlook | null;
}

/** The passes of a rehearsal (`views`) beside the plan, with what went wrong. `site` and `plan` are the implant's. */
export function rehearsalSummary(context: SummaryContext): RehearsalSummary {
  const { site, plan, views, hole, outlook } = context;
  const faults = passFaults(context);
  const taken = takersOf(views);
  const rows = views.map((view, i): PassRow => {
    const { index, pass, tool, body } = view;
    const wanted = plannedDepth(plan, pass.tool);
    const circles: Circles = circlesOf(
      body,
      hole?.drill ?? plannedBody(site, tool, Math.max(body.depth, site.at.length)),
    );
    const by = taken[i];
    return {
      index,
      tool: pass.tool,
      diameter: 2 * body.radius,
      depth: pass.depth,
      depthOff: wanted === null ? null : pass.depth - wanted,
      crest: sideways(circles.crest),
      apex: sideways(circles.apex),
      carriedOn: hole !== null && pass.depth < hole.drill.depth - 1e-9,
      angle: circles.angle,
      volume: volumeOf(views, i),
      final: pass.tool.kind === 'neck' || pass.tool.index >= (plan.last?.index ?? Infinity),
      takenUpBy: by === null ? null : views[by].index,
      faults: faults.filter((fault) => fault.pass === index),
    };
  });
  return { rows, faults, outlook, verdict: verdictOf(rows, faults, outlook) };
}

/** Depth that the plan has a tool at in the end, mm; null: it does not use it. */
function plannedDepth({ steps }: DrillingPlan, tool: ToolRef): number | null {
  const own = steps.filter((s) => s.tool?.kind === tool.kind && s.tool.index === tool.index);
  return own.length === 0 ? null : own[own.length - 1].depth;
}

/** Bone a pass took at most, mm³: its bore less the largest earlier one that it takes up, and what a press swept beside it. */
function volumeOf(views: readonly PassView[], i: number): number {
  const { tool, body, pass } = views[i];
  if (!isDrill(tool)) return neckTaken(views, i, tool);
  const own = { drill: tool, depth: pass.depth };
  const within = views
    .slice(0, i)
    .flatMap((v) =>
      isDrill(v.tool) && takenUp(v.body, body).takenUp ? [{ drill: v.tool, depth: v.pass.depth }] : [],
    );
  const least = Math.min(passVolume(own, null), ...within.map((bore) => passVolume(own, bore)));
  const { press } = pass;
  const moved = press ? (Math.abs(press.mouth) + Math.abs(press.bottom)) / 2 : 0;
  return least + moved * tool.diameter * Math.max(0, pass.depth);
}

/** The same of a neck cutter: its frustum and what it is carried on by, less the widest earlier bore that stands within its neck. */
function neckTaken(views: readonly PassView[], i: number, tool: NeckCutter): number {
  const { body } = views[i];
  const { neckDiameter, shoulderDiameter, height } = tool;
  const bores = views.slice(0, i).flatMap((v) => {
    const { crest, apex } = circlesOf(v.body, body);
    const off = Math.max(Math.hypot(crest.facial, crest.mesial), Math.hypot(apex.facial, apex.mesial));
    return off + v.body.radius <= neckDiameter / 2 && v.body.depth >= body.depth ? [2 * v.body.radius] : [];
  });
  const bore = Math.max(0, ...bores);
  const mouth = mouthDiameter(neckDiameter, shoulderDiameter, height, body.depth);
  const over = Math.max(0, body.depth - height);
  const carriedOn = (Math.PI * (shoulderDiameter ** 2 - bore ** 2) * over) / 4;
  return neckVolume(neckDiameter, mouth, Math.min(body.depth, height), bore) + carriedOn;
}

function verdictOf(rows: readonly PassRow[], faults: readonly PassFault[], outlook: Outlook | null): Verdict {
  if (rows.length === 0) return 'not-begun';
  if (faults.some((fault) => weightOf(fault) === 'stop')) return 'stop';
  if (outlook?.answer === 'open') return 'open';
  const grave = faults.some((fault) => weightOf(fault) === 'mend');
  if (grave || outlook?.answer === 'covered') return 'mend';
  return faults.length > 0 ? 'mind' : 'as-planned';
}
