import type { KitFault } from '../core/drilling/drillingPlan.ts';
import type { Drill, Kit, NeckCutter, ToolRef } from '../core/drilling/kit.ts';
import { isDrill, toolOf } from '../core/drilling/passBody.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { say } from './say.ts';

const mm = (value: number): string => formatQuantity({ value, unit: 'mm', exact: true });
const rounded = (value: number): string => formatQuantity({ value, unit: 'mm' });
const rpm = (value: number): string => formatQuantity({ value, unit: 'rpm' });

/** The number engraved beside a mark: whole ones without decimals. */
export const markText = (value: number): string =>
  formatNumber({ value, unit: Number.isInteger(value) ? 'count' : 'mm', exact: true });

/** A user's own kit goes by the name they gave it. */
export const presentKitTitle = (kit: Kit): string =>
  kit.title === 'generic' ? say('kit.generic') : kit.title;

/** "2.0 mm drill", "Neck cutter 3.0 mm to 3.5 mm". */
export function presentTool(tool: Drill | NeckCutter): string {
  if (isDrill(tool)) return say('kit.drill', { diameter: mm(tool.diameter) });
  return say('kit.neck', { neck: mm(tool.neckDiameter), shoulder: mm(tool.shoulderDiameter) });
}

/** A tool by its place in a kit; none is the implant itself. */
export function presentToolRef(kit: Kit, ref: ToolRef | null): string {
  const tool = ref && toolOf(kit, ref);
  return tool ? presentTool(tool) : say('kit.implant');
}

export const presentSpeed = ({ speed }: Pick<Drill, 'speed'>): string =>
  say('kit.speed', { low: formatNumber({ value: speed.low, unit: 'rpm' }), high: rpm(speed.high) });

/** All of a tool's numbers in one line. */
export function presentToolNumbers(tool: Drill | NeckCutter): string {
  const [length, speed] = [mm(tool.length), presentSpeed(tool)];
  if (!isDrill(tool))
    return say('kit.neckAbout', {
      neck: mm(tool.neckDiameter),
      shoulder: mm(tool.shoulderDiameter),
      height: mm(tool.height),
      length,
      speed,
    });
  return say('kit.drillAbout', {
    diameter: mm(tool.diameter),
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
