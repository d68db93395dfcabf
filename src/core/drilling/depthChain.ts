import { DEFAULT_LIMITS } from '../measure/defaultLimits.ts';
import { type Bands, type Judgement, judge } from '../measure/limit.ts';
import { type DepthMark, depthMark, type ReadAt } from './depthMark.ts';
import type { DrillSite } from './drillSite.ts';
import { type Drill, pointLength } from './kit.ts';

/** What is chosen beside the pose: the drill, the spare depth `ρ ≥ 0` (mm), whether the gum is laid back, and the floor's limit. */
export interface ChainChoice {
  readonly drill: Drill;
  readonly spare: number;
  readonly flap: boolean;
  readonly floor?: Bands;
}

/** Lengths of the chain in the order of model 5, all along the axis, mm. */
export const CHAIN_IDS = [
  'last-thread',
  'apex',
  'full-depth',
  'tip',
  'mark',
  'mark-lower-edge',
  'mark-higher-edge',
  'shoulder-over-gum',
  'neck-shoulder-notch',
  'neck-base-notch',
  'mouth',
  'thumb',
  'thumb-spare',
] as const;
export type ChainId = (typeof CHAIN_IDS)[number];

export interface ChainRecord {
  readonly id: ChainId;
  readonly value: number;
  /** Which way + runs: below the crest, above it or the gum, a diameter, or a number on the drill. */
  readonly sign: 'below' | 'above' | 'diameter' | 'mark';
  /** Where a mark is read; null for what is no mark. */
  readonly read: ReadAt | null;
}

export interface ChainCheck {
  readonly id: 'tip-to-floor' | 'seat';
  /** mm, + room; for the seat how much deeper the full diameter goes than the apex. */
  readonly value: number;
  readonly status: Judgement;
  readonly limit: Bands;
}

/** The trade's rule of thumb, implanted length + 2 mm for thin gum (common practice, no source). */
export interface Thumb {
  readonly depth: number;
  /** Room it leaves below the apex, mm: `2 − (H_t − S)`. */
  readonly spare: number;
}

/** The whole chain of depths for one drill at one pose (model 5). mm, below `B` unless said. */
export interface DepthChain {
  readonly lastThread: number;
  readonly apex: number;
  readonly fullDepth: number;
  /** Length of the drill's point. */
  readonly point: number;
  readonly tip: number;
  readonly mark: DepthMark;
  /** Shoulder above the present gum, + it shows. */
  readonly overGum: number;
  /** Notches of a neck cutter: its shoulder above the crest, its neck's base below; null for a neck that ends at the crest's own level. */
  readonly neck: { readonly shoulder: number; readonly base: number } | null;
  /** Diameter of the mouth at the crest. */
  readonly mouth: number;
  readonly thumb: Thumb | null;
  readonly records: readonly ChainRecord[];
  readonly checks: readonly ChainCheck[];
}

const THUMB = 2;

/** Diameter of the hole's mouth at the crest, mm: the neck's straight flare cut `below` above its base. `height` 0: a step at the shoulder. */
export function mouthDiameter(neck: number, shoulder: number, height: number, below: number): number {
  // At `height` 0 `below` is minus the shoulder's height: the shoulder lies in or at the bone.
  if (height === 0) return below >= 0 ? shoulder : neck;
  return neck + (shoulder - neck) * Math.min(1, Math.max(0, below / height));
}

/** Least distance of a drill at `depth` below `B` to the floor's plane, mm along `c`, negative past it: of its tip, or on a steep axis of its full diameter's edge. */
export function drillToFloor({ at, entry }: DrillSite, drill: Drill, depth: number): number {
  const [, , c] = at.a;
  const tip = at.axisPoint(entry + depth + pointLength(drill))[2];
  const edge = at.axisPoint(entry + depth)[2] - (drill.diameter / 2) * Math.sqrt(Math.max(0, 1 - c * c));
  return Math.min(tip, edge) - at.anatomy.ridge.floor;
}

export function depthChain(site: DrillSite, choice: ChainChoice): DepthChain {
  const { shape } = site.at;
  const { drill, spare, flap } = choice;
  const lastThread = shape.transmucosalLength - site.shoulder;
  const apex = shape.implantedLength + lastThread;
  const fullDepth = apex + spare;
  const point = pointLength(drill);
  const flared = shape.transmucosalLength > 0;
  const chain = {
    lastThread,
    apex,
    fullDepth,
    point,
    tip: fullDepth + point,
    mark: depthMark(site, drill, fullDepth, flap),
    overGum: site.shoulder - site.gum,
    neck: flared ? { shoulder: site.shoulder, base: lastThread } : null,
    mouth: mouthDiameter(
      shape.implantedDiameter,
      shape.platformDiameter,
      shape.transmucosalLength,
      lastThread,
    ),
    thumb: flared ? { depth: shape.implantedLength + THUMB, spare: THUMB - lastThread } : null,
  };
  return { ...chain, records: recordsOf(chain), checks: checksOf(site, choice, chain) };
}

type Lengths = Omit<DepthChain, 'records' | 'checks'>;

function recordsOf(c: Lengths): ChainRecord[] {
  const below = (id: ChainId, value: number): ChainRecord => ({ id, value, sign: 'below', read: null });
  const above = (id: ChainId, value: number): ChainRecord => ({ id, value, sign: 'above', read: null });
  const mark = (id: ChainId, value: number, read: ReadAt): ChainRecord => ({ id, value, sign: 'mark', read });
  const { edges } = c.mark;
  return [
    below('last-thread', c.lastThread),
    below('apex', c.apex),
    below('full-depth', c.fullDepth),
    below('tip', c.tip),
    mark('mark', c.mark.value, c.mark.read),
    ...(edges ? [mark('mark-lower-edge', edges.lower, 'lower-edge')] : []),
    ...(edges ? [mark('mark-higher-edge', edges.higher, 'higher-edge')] : []),
    above('shoulder-over-gum', c.overGum),
    ...(c.neck ? [above('neck-shoulder-notch', c.neck.shoulder), below('neck-base-notch', c.neck.base)] : []),
    { id: 'mouth', value: c.mouth, sign: 'diameter', read: null },
    ...(c.thumb ? [below('thumb', c.thumb.depth), below('thumb-spare', c.thumb.spare)] : []),
  ];
}

function checksOf(site: DrillSite, { drill, floor }: ChainChoice, c: Lengths): ChainCheck[] {
  const limit = floor ?? DEFAULT_LIMITS.floor.bands;
  const toFloor = drillToFloor(site, drill, c.fullDepth);
  return [
    { id: 'tip-to-floor', value: toFloor, status: judge(toFloor, limit), limit },
    seatCheck(c.fullDepth, c.apex),
  ];
}

const SEATED: Bands = { low: { near: 0, beyond: 0 } };

/** Whether a full diameter that stands `depth` below `B` lets the apex down to its own depth. */
export function seatCheck(depth: number, apex: number): ChainCheck {
  const value = depth - apex;
  return { id: 'seat', value, status: judge(value, SEATED), limit: SEATED };
}

/** Depth below `B`, mm along the axis, that a tip may reach on this axis before it is within `margin` of the floor (along `c`). */
export const floorDepth = ({ at, entry }: DrillSite, margin: number): number =>
  -(at.anatomy.ridge.floor + margin) / at.a[2] - entry;
