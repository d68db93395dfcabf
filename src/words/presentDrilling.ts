import type { ChainCheck, ChainRecord, DepthChain } from '../core/drilling/depthChain.ts';
import type { DepthMark } from '../core/drilling/depthMark.ts';
import type { StripLevel } from '../core/drilling/depthStrip.ts';
import type { DrillingPlan, PlanStep } from '../core/drilling/drillingPlan.ts';
import type { Drill, Kit } from '../core/drilling/kit.ts';
import type { LastDrill } from '../core/drilling/lastDrill.ts';
import { HEAT } from '../core/drilling/passFaults.ts';
import type { Opening, Reach } from '../core/drilling/reach.ts';
import type { ImplantShape } from '../core/implant/shape.ts';
import { formatNumber, formatQuantity, type Quantity } from './format.ts';
import { markText, presentToolRef } from './presentKit.ts';
import { sourceText } from './presentReading.ts';
import { say } from './sayDrill.ts';
import { sayTool } from './sayTool.ts';

/** A number of the drilling with its name. */
export interface DrillRow {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  /** Where it is read, or how it is judged; '' where there is nothing to say. */
  readonly note: string;
}

type Floor = 'nose' | 'sinus';

const mm = (value: number, rest: Partial<Quantity> = {}): string =>
  formatQuantity({ value, unit: 'mm', ...rest });
const rpm = (value: number): string => formatQuantity({ value, unit: 'rpm' });

/** "0.1 mm past the mark 12": by the drill's own marks. */
export function presentMarkAt(mark: DepthMark, drill: Drill): string {
  const { after, beyond } = mark;
  if (!after) return say('depth.beforeMarks');
  const past = mm(after.past);
  if (Number.parseFloat(formatNumber({ value: after.past, unit: 'mm' })) === 0)
    return say('depth.onMark', { mark: markText(after.mark) });
  const last = drill.marks[drill.marks.length - 1];
  return beyond > 0
    ? say('depth.pastMarks', { past, mark: markText(last) })
    : say('depth.pastMark', { past, mark: markText(after.mark) });
}

const readText = ({ read }: ChainRecord): string => (read ? say(`depth.read.${read}`) : '');

/** The chain of depths row by row; `drill` is the one it was made for. */
export const presentChain = (chain: DepthChain, drill: Drill): DrillRow[] =>
  chain.records.map((record) => ({
    key: record.id,
    label: say(`depth.${record.id}`),
    value: mm(record.value),
    note:
      record.id === 'mark' ? `${readText(record)}; ${presentMarkAt(chain.mark, drill)}` : readText(record),
  }));

/** A check of the chain with its status as a code for the glyph. */
export interface PresentedCheck extends DrillRow {
  readonly mark: ChainCheck['status'];
}

export const presentChecks = ({ checks }: DepthChain, floor: Floor): PresentedCheck[] =>
  checks.map(({ id, value, status, limit }) => {
    const near = limit.low?.near ?? 0;
    return {
      key: id,
      label:
        id === 'seat'
          ? say('depth.check.seat')
          : say('depth.check.tip-to-floor', { floor: say(`floor.${floor}`) }),
      value: mm(value, { limits: [near, limit.low?.beyond ?? near] }),
      note: `${say('limit.low', { near: formatNumber({ value: near, unit: 'mm' }) })}: ${say(`status.${status}`)}`,
      mark: status,
    };
  });

/** A level of the strip along the axis, with its tag. */
export interface PresentedLevel {
  readonly key: StripLevel['id'];
  readonly label: string;
  /** mm along the axis from the bone entry, + apical: where to draw it. */
  readonly level: number;
  /** The level as a tag shows it. */
  readonly tag: string;
}

export const presentStrip = (levels: readonly StripLevel[], floor: Floor): PresentedLevel[] =>
  levels.map(({ id, level }) => ({
    key: id,
    label: id === 'floor' ? say(`strip.floor.${floor}`) : say(`strip.${id}`),
    level,
    tag: formatNumber({ value: level, unit: 'mm', signed: true }),
  }));

/** One step of the order of drilling. */
export interface PresentedStep {
  readonly key: string;
  readonly title: string;
  readonly tool: string;
  /** '' where it has none. */
  readonly depth: string;
  /** The mark to stop at, where it is read and how it lies on the drill; '' where it has none. */
  readonly mark: string;
  readonly read: string;
  readonly onDrill: string;
  readonly speed: string;
  readonly volume: string;
  /** What to look at before going on. */
  readonly look: string;
}

/** The order of drilling in words, step by step. */
export const presentSteps = (plan: DrillingPlan, kit: Kit, shape: ImplantShape): PresentedStep[] =>
  plan.steps.map((step, i) => {
    const drill = step.tool?.kind === 'drill' ? kit.drills[step.tool.index] : null;
    return {
      key: `${i}-${step.reason}`,
      title: say(`step.${step.reason}`),
      tool: presentToolRef(kit, step.tool),
      depth: step.reason === 'dry-test' ? '' : say('step.depth', { depth: mm(step.depth) }),
      mark: step.mark ? mm(step.mark.value) : '',
      read: step.mark ? say(`depth.read.${step.mark.read}`) : '',
      onDrill: step.mark && drill ? presentMarkAt(step.mark, drill) : '',
      speed: speedText(step),
      volume:
        step.volume > 0
          ? say('step.volume', { volume: formatQuantity({ value: step.volume, unit: 'mm3' }) })
          : '',
      look: lookText(step, plan, shape),
    };
  });

function speedText({ speed, irrigation }: PlanStep): string {
  if (!speed) return say('step.still');
  const slots = { low: formatNumber({ value: speed.low, unit: 'rpm' }), high: rpm(speed.high) };
  return irrigation === 'plenty' ? say('step.speed', slots) : say('step.turned', slots);
}

function lookText(
  { reason, speed }: PlanStep,
  { chain, seating }: DrillingPlan,
  shape: ImplantShape,
): string {
  if (reason === 'neck' && chain?.neck) {
    const { shoulder, base } = chain.neck;
    const height = mm(Math.abs(shoulder));
    return say('step.look.neck', {
      base: mm(base),
      shoulder: say(shoulder >= 0 ? 'step.look.neckAbove' : 'step.look.neckBelow', { height }),
    });
  }
  if (reason === 'seat') {
    return say('step.look.seat', {
      low: formatNumber({ value: speed?.low ?? 0, unit: 'rpm' }),
      high: rpm(speed?.high ?? 0),
      least: formatNumber({ value: seating.least, unit: 's' }),
      most: formatQuantity({ value: seating.most, unit: 's' }),
      torque: formatQuantity({ value: shape.maxTorque, unit: 'Ncm' }),
    });
  }
  return reason === 'neck' ? '' : say(`step.look.${reason}`);
}

/** Why the last drill is the last, whose rule that is, and what a tapered apex makes of it. */
export function presentLastDrill(last: LastDrill, kit: Kit): string[] {
  const drill = sayTool(kit.drills[last.index]);
  const rule =
    last.rule === 'soft'
      ? say('step.last.soft', { drill })
      : say(`step.last.${last.rule}`, { drill, most: mm(last.most) });
  const source = sourceText(last.source);
  const whose = say('step.last.source', {
    source: source.charAt(0).toUpperCase() + source.slice(1),
    evidence: sourceText(last.evidence),
  });
  return [rule, whose, ...(last.apicalGap > 0 ? [say('kit.apicalGap', { gap: mm(last.apicalGap) })] : [])];
}

/** Whether a tool comes down between the crowns; `named` is the one that is held, where it is not the planned one. */
export function presentReach(reach: Reach, named = ''): DrillRow {
  const tooth = formatNumber({ value: reach.tooth, unit: 'count' });
  const short = mm(reach.short);
  const value = {
    clear: () => say('reach.code.clear', { clearance: mm(reach.clearance), tooth }),
    lengthen: () => say('reach.code.lengthen', { short, tooth }),
    'too-short': () => say('reach.code.too-short', { short, tooth }),
    blocked: () => say('reach.code.blocked', { by: mm(-reach.shankClearance), tooth }),
  }[reach.code]();
  return {
    key: named === '' ? reach.tool : 'hand',
    label: named === '' ? say(`reach.${reach.tool}`) : say('reach.hand', { tool: named }),
    value,
    note: say(named === '' ? 'reach.head' : 'reach.headNow', { height: mm(reach.headAbove) }),
  };
}

const REACH_MARK = { clear: 'within', lengthen: 'near', 'too-short': 'beyond', blocked: 'beyond' } as const;

/** Code for the glyph of a reach. */
export const reachMark = ({ code }: Reach): 'within' | 'near' | 'beyond' => REACH_MARK[code];

export const presentOpening = ({ needed, stated, enough }: Opening): string =>
  say(enough ? 'reach.opening.enough' : 'reach.opening.short', {
    needed: mm(needed, { limits: [stated] }),
    stated: mm(stated),
  });

/** The published threshold of heat, for a caution. */
export const heatSlots = () => ({
  celsius: formatNumber({ value: HEAT.celsius, unit: 'count' }),
  minutes: formatNumber({ value: HEAT.minutes, unit: 'count' }),
  source: sourceText(HEAT.source),
});

/** What a rehearsal of drilling leaves out: said wherever one is shown. */
export const drillingCautions = (): string[] => [
  say('drilling.caution.force'),
  say('drilling.caution.heat', heatSlots()),
  say('drilling.caution.depth'),
  say('drilling.caution.volume'),
];
