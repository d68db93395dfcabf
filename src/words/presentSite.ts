import { classOf } from '../core/anatomy/landmarks.ts';
import type { Site, SiteCode } from '../core/anatomy/site.ts';
import type { Fault } from '../core/plan/fault.ts';
import { type SiteGroup, type SiteNumber, siteNumbers } from '../core/plan/siteFields.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { presentFault } from './presentFault.ts';
import { sourceText } from './presentReading.ts';
import { say } from './saySite.ts';

/** A number of the site as a user meets it. */
export interface PresentedSiteNumber {
  /** Short, below its heading. */
  readonly label: string;
  /** By itself, told apart from every other. */
  readonly name: string;
  readonly quantity: string;
  /** The mean alone, to go back to; '' where there is none. */
  readonly mean: string;
  /** Mean, spread and source in a sentence. */
  readonly about: string;
}

export const siteGroupName = (group: SiteGroup): string => say(`siteGroup.${group}`);

const fieldName = (name: string): string => say(`siteField.${name}` as 'siteField.gap');

/** The depth at which a width of a list is entered, mm. */
function depthOf(site: Site, path: string): number | null {
  const [, place, index] = /^(?:(mesial|distal)\.)?ridge\.widths\.(\d+)\./.exec(path) ?? [];
  if (index === undefined) return null;
  const list = place === 'mesial' || place === 'distal' ? site[place].ridge.widths : site.ridge.widths;
  return list[Number(index)]?.depth ?? null;
}

function aboutOf({ mean, spread, unit, source, known }: SiteNumber): string {
  if (mean === null) return say('site.noMean');
  const text = (value: number) => formatNumber({ value, unit, exact: true });
  const value = formatQuantity({ value: mean, unit, exact: true });
  const where = { source: sourceText(source), known: say(`known.${known}`) };
  const said = say(known === 'ours' ? 'site.assumed' : 'site.mean', { value });
  return spread
    ? say('site.aboutSpread', { mean: said, low: text(spread.low), high: text(spread.high), ...where })
    : say('site.about', { mean: said, ...where });
}

export function presentSiteNumber(n: SiteNumber, site: Site): PresentedSiteNumber {
  const { unit, mean } = n;
  const depth = depthOf(site, n.path);
  const label = fieldName(n.name);
  const at =
    depth === null
      ? label
      : say('siteField.atDepth', { field: label, depth: formatQuantity({ value: depth, unit: 'mm' }) });
  const said = (value: number) => formatQuantity({ value, unit, exact: true });
  return {
    label,
    name: say('siteField.inGroup', { group: siteGroupName(n.group), field: at }),
    quantity: said(n.value),
    mean: mean === null ? '' : formatNumber({ value: mean, unit, exact: true }),
    about: aboutOf(n),
  };
}

/** A fault of a site in the words of its fields. */
export function presentSiteFault(fault: Fault, site: Site): string {
  const names = new Map<string, string>(
    siteNumbers(site).map((n) => [`site.${n.path}`, presentSiteNumber(n, site).name] as const),
  );
  return presentFault(fault, (path) => names.get(path) ?? path);
}

/** Universal number of a tooth, upper front: quadrant 1 counts 9 − n, quadrant 2 counts 8 + n (standard mapping, from memory). */
export const universalOf = (tooth: SiteCode): number => (tooth < 20 ? 9 - (tooth % 10) : 8 + (tooth % 10));

/** `12, upper right lateral incisor (Universal 7)`. */
export const toothName = (tooth: SiteCode): string =>
  say('site.toothOption', {
    tooth: formatNumber({ value: tooth, unit: 'count' }),
    side: say(tooth < 20 ? 'side.right' : 'side.left'),
    name: say(`tooth.${classOf(tooth)}`),
    universal: formatNumber({ value: universalOf(tooth), unit: 'count' }),
  });
