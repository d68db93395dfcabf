import { shoulderToCrest } from '../measure/shoulder.ts';
import { type DepthChain, floorDepth } from './depthChain.ts';
import type { DrillSite } from './drillSite.ts';

/** What a strip along the axis shows, from the crown to the floor. */
export const STRIP_IDS = [
  'planned-margin',
  'cej',
  'present-gum',
  'shoulder',
  'crest-facial',
  'crest-palatal',
  'entry',
  'last-thread',
  'apex',
  'full-depth',
  'tip',
  'floor-margin',
  'floor',
] as const;
export type StripId = (typeof STRIP_IDS)[number];

export interface StripLevel {
  readonly id: StripId;
  /** Along the axis from the bone entry `B`, mm, + apical. */
  readonly level: number;
}

/**
 * Levels of one plan along the axis. Planned margin and CEJ stand over the shoulder's facial edge, as the readings take them (rule M7), carried across to
 * the axis; the facial and palatal crest are where the bone meets the envelope (rule M6), and missing where it meets it nowhere. `margin`: of the floor, mm along `c`.
 */
export function depthStrip(site: DrillSite, chain: DepthChain, margin: number): StripLevel[] {
  const { at, entry } = site;
  const { reference } = at.anatomy.site;
  const rim = at.rimPoint(0);
  const overRim = (c: number): number => at.rimLevel(0) - (c - rim[2]) * at.a[2] - entry;
  const crest = (azimuth: number): number | null => {
    const { value } = shoulderToCrest(at, azimuth);
    return value === null ? null : at.rimLevel(azimuth) + value - entry;
  };
  const levels: [StripId, number | null][] = [
    ['planned-margin', overRim(reference.margin)],
    ['cej', overRim(reference.cej)],
    ['present-gum', -site.gum],
    ['shoulder', -site.shoulder],
    ['crest-facial', crest(0)],
    ['crest-palatal', crest(Math.PI)],
    ['entry', 0],
    ['last-thread', chain.lastThread],
    ['apex', chain.apex],
    ['full-depth', chain.fullDepth],
    ['tip', chain.tip],
    ['floor-margin', floorDepth(site, margin)],
    ['floor', floorDepth(site, 0)],
  ];
  return levels.flatMap(([id, level]) => (level === null ? [] : [{ id, level }]));
}
