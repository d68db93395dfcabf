import type { Site, SiteCode, SocketState } from '../anatomy/site.ts';
import { defaultNeighbour } from '../anatomy/toothDefaults.ts';
import type { Known } from '../measure/limit.ts';
import { defaultSite } from './defaults.ts';

/** A starting point by a published class, or by one of ours; the catalogue has its name. */
export interface SitePreset {
  readonly id: string;
  readonly kind: 'ridge' | 'socket' | 'gum';
  /** Share of the sites in the study, per cent; null where none was published. */
  readonly share: number | null;
  readonly source: string;
  readonly known: Known;
  readonly apply: (site: Site) => Site;
}

/** Root-shaped void of the tooth that stood there: its cervix widths, its root less the part above the bone. mm, degrees. */
export function socketOf(site: Site, wall: number, tiltOver: number): SocketState {
  const { crown, ridge } = site;
  return {
    kind: 'socket',
    axis: {
      faciopalatal: Math.max(-10, Math.min(50, ridge.inclination + tiltOver)),
      mesiodistal: crown.tilt.mesiodistal,
    },
    width: 0.92 * crown.cervixWidth,
    breadth: 0.92 * crown.cervixDepth,
    depth: Math.max(3, crown.rootLength - 2),
    parallel: 0,
    wall: { thickness: wall, level: 2 },
    dehiscence: { depth: 0, width: 4 },
  };
}

/** A fresh socket stands in a ridge that has not yet resorbed: the site gets the widths of a ridge with that tooth in it. */
const fresh = (site: Site, state: SocketState): Site => ({
  ...site,
  ridge: {
    ...site.ridge,
    widths: defaultNeighbour(site.tooth, 0).ridge.widths,
    undercut: { ...site.ridge.undercut, depth: 0 },
  },
  state,
});

const widened = (site: Site, by: number): Site => ({
  ...site,
  state: { kind: 'healed' },
  ridge: {
    ...site.ridge,
    widths: defaultSite(site.tooth as SiteCode).ridge.widths.map((w) => ({
      depth: w.depth,
      facial: w.facial + by / 2,
      palatal: w.palatal + by / 2,
    })),
  },
});

const KAN = { source: 'kan-2011', known: 'memory' as const };
const OURS = { source: 'assumed', known: 'ours' as const, share: null };

/**
 * Sagittal root positions I–IV (Kan 2011, 600 teeth; shares from memory): I root against the facial wall, II in the middle, III against the palatal
 * wall, IV so wide that it takes two thirds of the bone on both sides. The millimetres that make them here are this project's.
 */
export const SITE_PRESETS: readonly SitePreset[] = [
  { id: 'ridge-narrow', kind: 'ridge', ...OURS, apply: (s) => widened(s, -1.5) },
  { id: 'ridge-mean', kind: 'ridge', ...OURS, apply: (s) => widened(s, 0) },
  { id: 'ridge-broad', kind: 'ridge', ...OURS, apply: (s) => widened(s, 1.5) },
  {
    id: 'root-position-1',
    kind: 'socket',
    share: 81.1,
    ...KAN,
    apply: (s) => fresh(s, socketOf(s, 0.8, -12)),
  },
  { id: 'root-position-2', kind: 'socket', share: 6.5, ...KAN, apply: (s) => fresh(s, socketOf(s, 1.6, 0)) },
  { id: 'root-position-3', kind: 'socket', share: 0.7, ...KAN, apply: (s) => fresh(s, socketOf(s, 2.4, 10)) },
  { id: 'root-position-4', kind: 'socket', share: 11.7, ...KAN, apply: fourth },
  {
    id: 'gum-thin',
    kind: 'gum',
    share: 50,
    source: 'kan-2010',
    known: 'read',
    apply: (s) => gum(s, 0.7, 1.8),
  },
  {
    id: 'gum-thick',
    kind: 'gum',
    share: 50,
    source: 'kan-2010',
    known: 'read',
    apply: (s) => gum(s, 1.4, 3.2),
  },
];

function fourth(site: Site): Site {
  const state = socketOf(site, 0.6, -2);
  return fresh(site, { ...state, breadth: Math.min(11, 1.2 * state.breadth) });
}

const gum = (site: Site, facial: number, crest: number): Site => ({
  ...site,
  gum: { ...site.gum, facial, crest },
});
