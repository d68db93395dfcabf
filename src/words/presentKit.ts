import type { KitFault } from '../core/drilling/drillingPlan.ts';
import type { Drill, Kit, NeckCutter, ToolRef } from '../core/drilling/kit.ts';
import { isDrill, toolOf } from '../core/drilling/passBody.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { say } from './sayDrill.ts';
import { sayTool } from './sayTool.ts';

const mm = (value: number): string => formatQuantity({ value, unit: 'mm', exact: true });
const rounded = (value: number): string => formatQuantity({ value, unit: 'mm' });
const rpm = (value: number): string => formatQuantity({ value, unit: 'rpm' });

/** The number engraved beside a mark: whole ones without decimals. */
export const markText = (value: number): string =>
  formatNumber({ value, unit: Number.isInteger(value) ? 'count' : 'mm', exact: true });

/** A user's own kit goes by the name they gave it. */
export const presentKitTitle = (kit: Kit): string =>
  kit.title === 'generic' ? say('kit.generic') : kit.title;

/** A tool by its place in a kit; none is the implant itself. */
export function presentToolRef(kit: Kit, ref: ToolRef | null): string {
  const tool = ref && toolOf(kit, ref);
  return tool ? sayTool(tool) : say('kit.implant');
}

export const presentSpeed = ({ speed }: Pick<Drill, 'speed'>): string =>
  say('kit.speed', { low: formatNumber({ value: speed.low, unit: 'rpm' }), high: rpm(speed.high) });

/** All of a tool's numbers in one line. */
export function presentToolNumbers(tool: Drill | NeckCutter): string {
  const [length, speed] = [mm(tool.length), presentSpeed(tool)];
  if (!isDrill(tool))
    return say('kit.neckAbout', {
      tool: sayTool(tool),
      height: mm(tool.height),
      length,
      speed,
    });
  return say('kit.drillAbout', {
    tool: sayTool(tool),
    point: formatQuantity({ value: tool.point, unit: 'deg' }),
    marks: tool.marks.map(markText).join(', '),
    from: say(tool.marksCountPoint ? 'kit.fromTip' : 'kit.fromShoulder'),
    length,
    speed,
  });
}

/** Why a kit cannot make the hole, in one sentence. */
export function presentKitFault({ code, tool, value, needed }: KitFault, kit: Kit): string {
  const numbers = { value: mm(value), needed: rounded(needed) };
  switch (code) {
    case 'no-drill-narrow':
      return say('kit.fault.no-drill-narrow', numbers);
    case 'drill-too-short':
    case 'marks-too-short':
      return say(`kit.fault.${code}`, { ...numbers, tool: presentToolRef(kit, tool) });
    case 'no-cutter-fits':
    case 'nothing-to-drill':
      return say(`kit.fault.${code}`);
  }
}
