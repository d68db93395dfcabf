import type { Site, SiteCode } from '../anatomy/site.ts';
import type { Known } from '../measure/limit.ts';
import { valueAt, withValue } from './atPath.ts';
import { siteFaults } from './check.ts';
import { defaultSite } from './defaults.ts';
import { type Fault, fault } from './fault.ts';
import type { Plan } from './plan.ts';
import { rangeOf } from './read.ts';

/** Which small drawing shows what a field measures, and under which heading it stands. */
export type SiteGroup =
  | 'gap'
  | 'ridge'
  | 'depth'
  | 'gum'
  | 'reference'
  | 'mesial'
  | 'distal'
  | 'socket'
  | 'arch';

/** One number a clinician reads off a scan or a cast. */
export interface SiteField {
  /** Dotted path within `site`. */
  readonly path: string;
  readonly group: SiteGroup;
  readonly unit: 'mm' | 'deg';
  /** Catalogue code of its name; entries of a list share one. */
  readonly name: string;
  /** Published spread about the mean, one standard deviation or the range's ends, where a source gives one. */
  readonly spread: { readonly low: number; readonly high: number } | null;
  readonly source: string;
  readonly known: Known;
}

/** A field as it stands in a site. */
export interface SiteNumber extends SiteField {
  readonly value: number;
  /** The mean of that tooth, or the assumed value. */
  readonly mean: number | null;
  readonly low: number;
  readonly high: number;
}

type Draft = Omit<SiteField, 'spread' | 'source' | 'known'> & Partial<SiteField>;

const field = (draft: Draft): SiteField => ({ spread: null, source: 'assumed', known: 'ours', ...draft });

const TOOTH_PARTS = [
  ['crownWidth', 'mm'],
  ['crownLength', 'mm'],
  ['rootLength', 'mm'],
  ['tilt.faciopalatal', 'deg'],
  ['tilt.mesiodistal', 'deg'],
  ['rootTilt.mesiodistal', 'deg'],
  ['boneLevel', 'mm'],
  ['cejAboveBone', 'mm'],
  ['ridge.inclination', 'deg'],
] as const;

const table = { source: 'nelson-ash-table-1-1', known: 'read' as const };

function toothFields(side: 'mesial' | 'distal'): SiteField[] {
  return TOOTH_PARTS.map(([part, unit]) => {
    const origin = part.startsWith('crown') || part === 'rootLength' ? table : {};
    const cej = part === 'cejAboveBone';
    const januario = { source: 'januario-2011', known: 'memory' as const, spread: { low: 1.6, high: 3 } };
    return field({
      path: `${side}.${part}`,
      group: side,
      unit,
      name: `tooth.${part}`,
      ...origin,
      ...(cej ? januario : {}),
    });
  });
}

const widthFields = (place: 'ridge' | 'mesial.ridge' | 'distal.ridge', count: number): SiteField[] =>
  Array.from({ length: count }, (_, i) =>
    (['depth', 'facial', 'palatal'] as const).map((part) =>
      field({
        path: `${place}.widths.${i}.${part}`,
        group: place === 'ridge' ? 'ridge' : place === 'mesial.ridge' ? 'mesial' : 'distal',
        unit: 'mm',
        name: `widths.${part}`,
        ...(place === 'ridge' ? {} : { source: 'zhang-2015', known: 'derived' as const }),
      }),
    ),
  ).flat();

/** Fields that every site has; the widths and the socket come on top. */
const PLAIN: readonly SiteField[] = [
  field({ path: 'gap', group: 'gap', unit: 'mm', name: 'gap', ...table }),
  field({ path: 'ridge.crestRounding', group: 'ridge', unit: 'mm', name: 'crestRounding' }),
  field({
    path: 'ridge.undercut.depth',
    group: 'ridge',
    unit: 'mm',
    name: 'undercut.depth',
    source: 'zhang-2015',
    known: 'read',
    spread: { low: 0.4, high: 1.7 },
  }),
  field({
    path: 'ridge.undercut.level',
    group: 'ridge',
    unit: 'mm',
    name: 'undercut.level',
    source: 'zhang-2015',
    known: 'read',
  }),
  field({
    path: 'ridge.inclination',
    group: 'depth',
    unit: 'deg',
    name: 'inclination',
    source: 'tooth-to-ridge-2021',
    known: 'read',
  }),
  field({
    path: 'ridge.height',
    group: 'depth',
    unit: 'mm',
    name: 'height',
    source: 'zhang-2015',
    known: 'read',
  }),
  field({ path: 'ridge.scallop', group: 'depth', unit: 'mm', name: 'scallop' }),
  field({ path: 'ridge.crestDrop', group: 'depth', unit: 'mm', name: 'crestDrop' }),
  field({ path: 'ridge.cortex.facial', group: 'depth', unit: 'mm', name: 'cortex.facial' }),
  field({ path: 'ridge.cortex.palatal', group: 'depth', unit: 'mm', name: 'cortex.palatal' }),
  field({
    path: 'gum.crest',
    group: 'gum',
    unit: 'mm',
    name: 'gum.crest',
    source: 'munakata-2021',
    known: 'second-hand',
    spread: { low: 1.7, high: 4.3 },
  }),
  field({
    path: 'gum.facial',
    group: 'gum',
    unit: 'mm',
    name: 'gum.facial',
    source: 'kan-2010',
    known: 'read',
    spread: { low: 0.8, high: 1.3 },
  }),
  field({ path: 'gum.palatal', group: 'gum', unit: 'mm', name: 'gum.palatal' }),
  field({
    path: 'gum.papillaMesial',
    group: 'gum',
    unit: 'mm',
    name: 'gum.papillaMesial',
    source: 'yang-2020',
    known: 'read',
  }),
  field({
    path: 'gum.papillaDistal',
    group: 'gum',
    unit: 'mm',
    name: 'gum.papillaDistal',
    source: 'yang-2020',
    known: 'read',
  }),
  field({ path: 'reference.cej', group: 'reference', unit: 'mm', name: 'reference.cej' }),
  field({ path: 'reference.margin', group: 'reference', unit: 'mm', name: 'reference.margin' }),
  field({
    path: 'crown.tilt.faciopalatal',
    group: 'reference',
    unit: 'deg',
    name: 'crown.tilt.faciopalatal',
  }),
  field({ path: 'crown.tilt.mesiodistal', group: 'reference', unit: 'deg', name: 'crown.tilt.mesiodistal' }),
  field({
    path: 'opposing.overjet',
    group: 'reference',
    unit: 'mm',
    name: 'opposing.overjet',
    source: 'brunelle-1996',
    known: 'memory',
    spread: { low: 1, high: 3 },
  }),
  field({
    path: 'opposing.overbite',
    group: 'reference',
    unit: 'mm',
    name: 'opposing.overbite',
    source: 'brunelle-1996',
    known: 'read',
  }),
  field({ path: 'arch.width', group: 'arch', unit: 'mm', name: 'arch.width' }),
  field({ path: 'arch.depth', group: 'arch', unit: 'mm', name: 'arch.depth' }),
];

const SOCKET: readonly SiteField[] = (
  [
    ['axis.faciopalatal', 'deg'],
    ['axis.mesiodistal', 'deg'],
    ['width', 'mm'],
    ['breadth', 'mm'],
    ['depth', 'mm'],
    ['wall.thickness', 'mm'],
    ['dehiscence.depth', 'mm'],
    ['dehiscence.width', 'mm'],
  ] as const
).map(([part, unit]) =>
  field({
    path: `state.${part}`,
    group: 'socket',
    unit,
    name: `socket.${part}`,
    ...(part === 'wall.thickness'
      ? { source: 'heimes-2021', known: 'read' as const, spread: { low: 0.27, high: 1.25 } }
      : {}),
  }),
);

/** The mean site of a tooth is made once. */
const means = new Map<SiteCode, Site>();
function meanSite(tooth: SiteCode): Site {
  const known = means.get(tooth) ?? defaultSite(tooth);
  means.set(tooth, known);
  return known;
}

/** Every editable number of a site, with the mean of that tooth and the allowed range beside it. */
export function siteNumbers(site: Site): SiteNumber[] {
  const fields = [
    ...PLAIN.filter((f) => f.group === 'gap'),
    ...widthFields('ridge', site.ridge.widths.length),
    ...PLAIN.filter((f) => f.group !== 'gap'),
    ...toothFields('mesial'),
    ...widthFields('mesial.ridge', site.mesial.ridge.widths.length),
    ...toothFields('distal'),
    ...widthFields('distal.ridge', site.distal.ridge.widths.length),
    ...(site.state.kind === 'socket' ? SOCKET : []),
  ];
  const mean = meanSite(site.tooth);
  return fields.flatMap((f) => {
    const value = valueAt(site, f.path);
    const usual = valueAt(mean, f.path);
    const { low, high } = rangeOf(['site', ...f.path.split('.')]);
    if (typeof value !== 'number' || low === null || high === null) return [];
    return [{ ...f, value, low, high, mean: typeof usual === 'number' ? usual : null }];
  });
}

export type SiteEdit =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly fault: Fault };

/** Numbers by their dotted path within the site. */
export type SiteChanges = ReadonlyMap<string, number>;

/** Set numbers of the site together. Out of range, or in contradiction with each other: the first fault, and the plan stays as it is. */
export function setSiteNumbers(plan: Plan, changes: SiteChanges): SiteEdit {
  let { site } = plan;
  for (const [path, value] of changes) {
    const { low, high } = rangeOf(['site', ...path.split('.')]);
    if (typeof valueAt(site, path) !== 'number' || low === null || high === null) {
      return { ok: false, fault: fault('unknown-field', `site.${path}`) };
    }
    if (!Number.isFinite(value) || value < low || value > high) {
      return { ok: false, fault: fault('out-of-range', `site.${path}`, { value, low, high }) };
    }
    site = withValue(site, path.split('.'), value);
  }
  const wrong = siteFaults(site);
  return wrong.length > 0 ? { ok: false, fault: wrong[0] } : { ok: true, plan: { ...plan, site } };
}

/** Set one number of the site. */
export const setSiteNumber = (plan: Plan, path: string, value: number): SiteEdit =>
  setSiteNumbers(plan, new Map([[path, value]]));

/** What an editor holds: the plan, and numbers that contradict it and wait until others have changed too. */
export interface WaitingEdit {
  readonly plan: Plan;
  /** Why each of them waits. */
  readonly waiting: ReadonlyMap<string, { readonly value: number; readonly fault: Fault }>;
}

/**
 * Take a number into the plan: with all that waits if they agree together, else alone, else it waits too. So a ridge can be typed row by
 * row though it contradicts itself on the way, and the plan is sound at every step.
 */
export function takeSiteNumber({ plan, waiting }: WaitingEdit, path: string, value: number): WaitingEdit {
  const left = new Map([[path, value]]);
  for (const [key, one] of waiting) if (key !== path) left.set(key, one.value);
  const together = setSiteNumbers(plan, left);
  if (together.ok) return { plan: together.plan, waiting: new Map() };
  const faults = new Map<string, { value: number; fault: Fault }>();
  let now = plan;
  for (let before = -1; before !== left.size; ) {
    before = left.size;
    for (const [key, kept] of left) {
      const alone = setSiteNumber(now, key, kept);
      if (alone.ok) {
        now = alone.plan;
        left.delete(key);
        faults.delete(key);
      } else faults.set(key, { value: kept, fault: alone.fault });
    }
  }
  return { plan: now, waiting: faults };
}

/** Back to the mean of that tooth, where there is one. */
export function resetSiteNumber(plan: Plan, path: string): SiteEdit {
  const usual = valueAt(meanSite(plan.site.tooth), path);
  return typeof usual === 'number' ? setSiteNumber(plan, path, usual) : { ok: true, plan };
}
