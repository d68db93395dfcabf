import type { RidgeNumbers, Site, WidthEntry } from '../anatomy/site.ts';
import { solidsOf } from './evaluate.ts';

/** Where widths are compared, mm below the crest along the ridge's own axis. */
export const WIDTH_AT = 1;

/** A number before and after. mm. */
interface Change {
  readonly before: number;
  readonly after: number;
}

/** What taking bone off the crest gives and costs. mm. */
export interface LoweredCrest {
  readonly site: Site;
  /** How much was taken off, along the ridge's own axis. */
  readonly by: number;
  /** Both half-widths together, {@link WIDTH_AT} below the crest. */
  readonly width: Change;
  /** Crest to floor along the ridge's own axis. */
  readonly height: Change;
  /** How much higher the neighbours' bone and the planned margin stand above the new crest (along `c`). */
  readonly rise: number;
}

/** Half-widths of the ridge's surface in the middle of the gap (rule S2), `d` mm below the crest. */
function surfaceAt(site: Site, d: number): Omit<WidthEntry, 'depth'> {
  const { ridge } = solidsOf(site);
  const half = (side: 1 | -1) => ridge.half(side, 0, d) * ridge.cap(d);
  return { facial: half(1), palatal: half(-1) };
}

const widthOf = (site: Site): number => {
  const { facial, palatal } = surfaceAt(site, WIDTH_AT);
  return facial + palatal;
};

/** The undercut's place below the new crest; none where the widths contain it already (rule S3) and the field would cut a second time. */
function undercutBelow(site: Site, by: number): RidgeNumbers['undercut'] {
  const { undercut } = site.ridge;
  const depth = solidsOf(site).ridge.undercutApplies ? undercut.depth : 0;
  return { ...undercut, depth, level: Math.max(0, undercut.level - by) };
}

/**
 * The site after `by` mm have been taken off its crest, along the ridge's own axis: the widths of each entered depth are read again off the old
 * surface, that much deeper; the floor stays, the neighbours and the reference stand higher above the new crest (along `c`), the gum's thickness
 * is kept. What is left out: the crest's point stays in line with the teeth, where a ridge that leans by ι would have it `by·sin ι` further
 * palatal; between entered depths the surface is interpolated anew. Null for a socket, whose crest is not whole.
 */
export function loweredCrest(site: Site, by = 0.5): LoweredCrest | null {
  if (site.state.kind === 'socket') return null;
  const { ridge, mesial, distal, reference } = site;
  const rise = by * solidsOf(site).ridge.cos;
  const raised = <T extends { readonly boneLevel: number }>(tooth: T): T => ({
    ...tooth,
    boneLevel: tooth.boneLevel + rise,
  });
  const lowered: Site = {
    ...site,
    ridge: {
      ...ridge,
      widths: ridge.widths.map(({ depth }) => ({ depth, ...surfaceAt(site, depth + by) })),
      undercut: undercutBelow(site, by),
      height: ridge.height - by,
      crestDrop: ridge.crestDrop + rise,
    },
    mesial: raised(mesial),
    distal: raised(distal),
    reference: { ...reference, cej: reference.cej + rise, margin: reference.margin + rise },
  };
  return {
    site: lowered,
    by,
    width: { before: widthOf(site), after: widthOf(lowered) },
    height: { before: ridge.height, after: lowered.ridge.height },
    rise,
  };
}
