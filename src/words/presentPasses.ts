import type { Kit } from '../core/drilling/kit.ts';
import type { PassFault, PassFaultCode } from '../core/drilling/passFaults.ts';
import type { Pass } from '../core/drilling/rehearsal.ts';
import {
  type FaultWeight,
  type PassRow,
  type RehearsalSummary,
  type Sideways,
  type Verdict,
  weightOf,
} from '../core/drilling/rehearsalSummary.ts';
import { kitOf, rehearsalOf } from '../core/plan/inHand.ts';
import type { Plan } from '../core/plan/plan.ts';
import { formatNumber, formatQuantity, type Quantity } from './format.ts';
import { type DrillRow, heatSlots } from './presentDrilling.ts';
import { presentToolRef } from './presentKit.ts';
import { say } from './sayDrill.ts';

type Floor = 'nose' | 'sinus';

/** What faults are told with: the kit, the passes, and which floor lies over the site. */
export interface FaultSetting {
  readonly kit: Kit;
  readonly passes: readonly Pass[];
  readonly floor: Floor;
}

/** Code for the glyph. */
export type FaultMark = 'within' | 'near' | 'beyond' | 'none';

/** What faults of a plan’s passes are told with. */
export const settingOf = (plan: Plan): FaultSetting => ({
  kit: kitOf(plan),
  passes: rehearsalOf(plan).passes,
  floor: plan.site.ridge.floor,
});

export interface PresentedFault {
  readonly key: PassFaultCode;
  readonly mark: FaultMark;
  readonly text: string;
  /** What has mended it; '' where nothing has. */
  readonly mended: string;
  /** Whose threshold, or what the published one is; '' where there is none. */
  readonly note: string;
}

const mm = (value: number, rest: Partial<Quantity> = {}): string =>
  formatQuantity({ value, unit: 'mm', ...rest });

/** Faults judged by a threshold of this project. */
const OURS: ReadonlySet<PassFaultCode> = new Set<PassFaultCode>([
  'drilled-deep',
  'neck-short',
  'neck-deep',
  'followed-ridge',
  'drifted-facially',
  'wandered-palatally',
  'oval',
]);

const isHeat = (code: PassFaultCode): code is 'too-fast' | 'dry' => code === 'too-fast' || code === 'dry';

const FAULT_MARK: Readonly<Record<FaultWeight, FaultMark>> = {
  stop: 'beyond',
  mend: 'near',
  mind: 'near',
  mended: 'within',
};

const VERDICT_MARK: Readonly<Record<Verdict, FaultMark>> = {
  'not-begun': 'none',
  'as-planned': 'within',
  mind: 'near',
  mend: 'near',
  open: 'beyond',
  stop: 'beyond',
};

/** A fault of a pass in one sentence, and what stands behind it. */
export function presentPassFault(fault: PassFault, setting: FaultSetting): PresentedFault {
  return {
    key: fault.code,
    mark: FAULT_MARK[weightOf(fault)],
    text: faultText(fault, setting.floor),
    mended: mendedText(fault, setting),
    note: noteText(fault),
  };
}

function faultText({ code, value, limit, unit }: PassFault, floor: Floor): string {
  const number = (v: number, other: number): string =>
    formatQuantity({ value: v, unit: unit === 'none' ? 'count' : unit, limits: [other] });
  const slots = { value: number(value, limit), limit: number(limit, value) };
  switch (code) {
    case 'dry':
      return say('drillFault.dry');
    case 'past-floor':
      return say('drillFault.past-floor', { value: slots.value, floor: say(`floor.${floor}`) });
    case 'near-floor':
      return say('drillFault.near-floor', { ...slots, floor: say(`floor.${floor}`) });
    case 'skipped-drill':
    case 'too-fast':
      return say(`drillFault.${code}`, slots);
    default:
      return say(`drillFault.${code}`, { value: slots.value });
  }
}

const mendedText = ({ mendedBy }: PassFault, { kit, passes }: FaultSetting): string =>
  mendedBy === null ? '' : say('drillFault.mended', { tool: presentToolRef(kit, passes[mendedBy].tool) });

function noteText({ code, limit, unit }: PassFault): string {
  if (isHeat(code)) return say('drillFault.heat', heatSlots());
  return OURS.has(code) && unit !== 'none'
    ? say('drillFault.ours', { limit: formatQuantity({ value: limit, unit }) })
    : '';
}

/** "0.4 mm facially, 0.2 mm distally"; what would show as 0.0 is left out. */
export function presentSideways({ faciopalatal, mesiodistal }: Sideways): string {
  const shown = (value: number): boolean => Number(formatNumber({ value: Math.abs(value), unit: 'mm' })) > 0;
  const parts: string[] = [];
  if (shown(faciopalatal))
    parts.push(
      say(faciopalatal > 0 ? 'pass.facially' : 'pass.palatally', { amount: mm(Math.abs(faciopalatal)) }),
    );
  if (shown(mesiodistal))
    parts.push(
      say(mesiodistal > 0 ? 'pass.mesially' : 'pass.distally', { amount: mm(Math.abs(mesiodistal)) }),
    );
  const [first, second] = parts;
  if (first === undefined) return say('pass.offNone');
  return second === undefined ? first : say('pass.offBoth', { first, second });
}

export interface PresentedPass {
  readonly key: string;
  readonly title: string;
  readonly tool: string;
  /** Whether it has been taken up, and by what; '' for the last tools, after which nothing comes. */
  readonly state: string;
  readonly rows: readonly DrillRow[];
  readonly faults: readonly PresentedFault[];
}

/** A note that stands under one fault already is not said again under the next. */
const saidOnce = (faults: readonly PresentedFault[]): PresentedFault[] =>
  faults.map((fault, i) =>
    faults.slice(0, i).some(({ note }) => note === fault.note) ? { ...fault, note: '' } : fault,
  );

function stateText({ takenUpBy, final }: PassRow, { kit, passes }: FaultSetting): string {
  if (takenUpBy !== null) return say('pass.takenUp', { tool: presentToolRef(kit, passes[takenUpBy].tool) });
  return final ? '' : say('pass.standing');
}

/** Everything a pass is told to have gone wrong with; a note is said once. */
export const presentPassFaults = ({ faults }: PassRow, setting: FaultSetting): PresentedFault[] =>
  saidOnce(faults.map((fault) => presentPassFault(fault, setting)));

/** One pass beside the plan. */
export function presentPass(row: PassRow, setting: FaultSetting): PresentedPass {
  const { kit } = setting;
  const line = (key: string, label: string, value: string): DrillRow => ({ key, label, value, note: '' });
  return {
    key: `pass-${row.index}`,
    title: say('pass.number', { number: formatNumber({ value: row.index + 1, unit: 'count' }) }),
    tool: presentToolRef(kit, row.tool),
    state: stateText(row, setting),
    rows: [
      line('depth', say('pass.depth'), mm(row.depth)),
      ...(row.depthOff === null
        ? []
        : [line('depthOff', say('pass.depthOff'), mm(row.depthOff, { signed: true }))]),
      line('crest', say('pass.crest'), presentSideways(row.crest)),
      line('apex', say(row.carriedOn ? 'pass.apexCarried' : 'pass.apex'), presentSideways(row.apex)),
      line('angle', say('pass.angle'), formatQuantity({ value: row.angle, unit: 'deg' })),
      line('volume', say('pass.volume'), formatQuantity({ value: row.volume, unit: 'mm3' })),
    ],
    faults: presentPassFaults(row, setting),
  };
}

/** Code for the glyph of a verdict. */
export const verdictMark = ({ verdict }: RehearsalSummary): FaultMark => VERDICT_MARK[verdict];

/** How a rehearsal stands, in one sentence. */
export const presentVerdict = ({ verdict, outlook }: RehearsalSummary): string =>
  verdict === 'open'
    ? say('verdict.open', { void: mm(outlook?.void ?? Number.NaN) })
    : say(`verdict.${verdict}`);
