import { type DrillSite, edgeRise } from './drillSite.ts';
import { type Drill, pointLength } from './kit.ts';

/**
 * Where a mark is read: where the axis enters the bone, at the lower (more apical) or the higher edge of the hole on a sloping crest, at the level of the crest over
 * an open socket, or at the gum.
 */
export type ReadAt = 'bone' | 'lower-edge' | 'higher-edge' | 'crest-level' | 'gum';

/** The mark to stop at for one depth of one drill, mm from where its marks count. */
export interface DepthMark {
  readonly value: number;
  readonly read: ReadAt;
  /** The same depth read at the hole's two edges in the bone, where they can be seen. */
  readonly edges: { readonly lower: number; readonly higher: number } | null;
  /** The drill's own last mark before it, and how far past that one to go; null: before its first mark. */
  readonly after: { readonly mark: number; readonly past: number } | null;
  /** How far past the drill's deepest mark it lies, 0 where it does not. */
  readonly beyond: number;
}

/** Edges that stand further apart are told apart by eye, and the lower one is named, mm (ours). */
const EVEN = 0.5;

/** What a drill's marks show more than the depth of its full diameter, mm. */
export const countedPoint = (drill: Drill): number => (drill.marksCountPoint ? pointLength(drill) : 0);

/** What the mark shows more than the full diameter's depth below `B`, where it is read, mm. */
function reading(site: DrillSite, drill: Drill, flap: boolean): { read: ReadAt; more: number } {
  const counted = countedPoint(drill);
  if (!flap) return { read: 'gum', more: site.gum + counted };
  if (site.open) return { read: 'crest-level', more: counted };
  const rise = edgeRise(site, drill.diameter / 2);
  if (rise === null || 2 * rise <= EVEN) return { read: 'bone', more: counted };
  return { read: 'lower-edge', more: counted - rise };
}

/** The mark to stop at when the full diameter shall stand `depth` below `B`. */
export function depthMark(site: DrillSite, drill: Drill, depth: number, flap: boolean): DepthMark {
  const { read, more } = reading(site, drill, flap);
  const value = depth + more;
  const rise = flap && !site.open ? edgeRise(site, drill.diameter / 2) : null;
  const level = depth + countedPoint(drill);
  const before = drill.marks.filter((mark) => mark <= value + 1e-9);
  const mark = before[before.length - 1];
  return {
    value,
    read,
    edges: rise === null ? null : { lower: level - rise, higher: level + rise },
    after: mark === undefined ? null : { mark, past: Math.max(0, value - mark) },
    beyond: Math.max(0, value - drill.marks[drill.marks.length - 1]),
  };
}

/** Depth of the full diameter below `B` when a mark stands where it is read: the inverse of {@link depthMark}. */
export const depthAtMark = (site: DrillSite, drill: Drill, mark: number, flap: boolean): number =>
  mark - reading(site, drill, flap).more;
