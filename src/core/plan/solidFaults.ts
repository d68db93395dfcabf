import { type Anatomy, anatomyOf } from '../anatomy/anatomy.ts';
import { landmarksOf } from '../anatomy/landmarks.ts';
import type { SideSign } from '../anatomy/ridge.ts';
import { RIDGE_BEYOND } from '../anatomy/ridgeMesh.ts';
import { RidgeShell } from '../anatomy/ridgeShell.ts';
import { shownRange } from '../anatomy/section.ts';
import type { Site } from '../anatomy/site.ts';
import type { RootSolid } from '../anatomy/teeth.ts';
import { plannedTooth } from '../anatomy/toothMeshes.ts';
import { dot, smoothstep, sub, type Vec3 } from '../geometry/vec.ts';
import { valueAt, withValue } from './atPath.ts';
import { type Fault, fault } from './fault.ts';

/** Least half-width of the ridge anywhere in the model, mm: less and its section would cross itself. */
const LEAST_HALF_WIDTH = 0.5;
/** Least stretch of the arch's coordinates, `1 − |e|/R`: less and they fold. */
const LEAST_STRETCH = 0.25;
/** Least height of the crest over the floor anywhere, mm. */
const LEAST_HEIGHT = 3;
/** A side that has not come down to the floor by this depth never will, mm. */
const DEEPEST = 60;
/** Steps along the arch and down the sides, mm. */
const STEP = { q: 0.5, d: 0.25 } as const;

type Trouble =
  | { readonly code: 'ridge-too-thin' | 'ridge-too-flared'; readonly at: Place }
  | { readonly code: 'ridge-too-low' }
  | { readonly code: 'arch-too-tight'; readonly palatal: number }
  | { readonly code: 'roots-meet' };

/** A place on the ridge's sheet. */
interface Place {
  readonly q: number;
  readonly side: SideSign;
  readonly d: number;
}

/** What makes a site's solids cross themselves or each other: the first found, or null. Cost: about 1 ms. */
function troubleOf(site: Site): Trouble | null {
  const anatomy = anatomyOf(site);
  const { ridge, arch, teeth } = anatomy;
  const { from, to } = shownRange(anatomy);
  let least = Infinity;
  let thin: Place = { q: 0, side: 1, d: 0 };
  let flared: Place | null = null;
  let palatal = 0;
  const { trimmed } = new RidgeShell(ridge);
  const within = [teeth.distal.station - RIDGE_BEYOND, teeth.mesial.station + RIDGE_BEYOND];
  for (let q = from; q <= to; q += STEP.q) {
    ridge.row(q);
    if (ridge.crest(q) - ridge.floor < LEAST_HEIGHT) return { code: 'ridge-too-low' };
    for (const side of [1, -1] as const) {
      let d = 0;
      let level = Infinity;
      for (let above = true; above || d <= site.ridge.height; d += STEP.d) {
        const w = ridge.rowHalf(side, d);
        if (w < least) {
          least = w;
          thin = { q, side, d };
        }
        if (w < LEAST_HALF_WIDTH) break;
        ridge.rowPoint(side * w * ridge.cap(d), d);
        above &&= ridge.c >= ridge.floor;
        // Where a side is trimmed, it may not turn up again: its face would lie on itself.
        const turns = above && ridge.e < trimmed && ridge.c > level;
        if (d > DEEPEST || turns) {
          flared ??= { q, side, d };
          break;
        }
        level = ridge.c;
        if (above && d <= site.ridge.height && q >= within[0] && q <= within[1])
          palatal = Math.max(palatal, -ridge.e);
      }
    }
  }
  if (least < LEAST_HALF_WIDTH) return { code: 'ridge-too-thin', at: thin };
  if (flared) return { code: 'ridge-too-flared', at: flared };
  if (1 - palatal / arch.radius < LEAST_STRETCH || site.arch.depth > site.arch.width / 2)
    return { code: 'arch-too-tight', palatal };
  return rootsMeet(anatomy) ? { code: 'roots-meet' } : null;
}

/** The neighbours' roots go through each other: looked for at places of either's surface. */
function rootsMeet({ teeth }: Anatomy): boolean {
  const roots = [teeth.mesial.root, teeth.distal.root] as const;
  return reaches(roots[0], roots[1]) || reaches(roots[1], roots[0]);
}

function reaches(one: RootSolid, other: RootSolid): boolean {
  const own = (p: Vec3): Vec3 => [dot(p, other.ex), dot(p, other.ey), dot(p, other.a)];
  for (let i = 0; i <= 24; i++) {
    const z = i / 24;
    const r = Math.sqrt(1 - z * z);
    for (let j = 0; j < 24; j++) {
      const [x, y] = [r * Math.cos((j * Math.PI) / 12), r * Math.sin((j * Math.PI) / 12)];
      const at = (k: number): number =>
        one.centre[k] +
        one.semi[0] * x * one.ex[k] +
        one.semi[1] * y * one.ey[k] -
        one.semi[2] * z * one.a[k];
      const p = own(sub([at(0), at(1), at(2)], other.centre));
      const [a, b, c] = other.semi;
      if (p[2] <= 0 && (p[0] / a) ** 2 + (p[1] / b) ** 2 + (p[2] / c) ** 2 < 1) return true;
    }
  }
  return false;
}

/** Most that the CEJ may rise beside a tooth, as a share of its contact's height: more and the crown's side would fold. */
const MOST_CURVE = 0.55;

/** A crown too short for its CEJ. */
function crownFaults(anatomy: Anatomy): Fault[] {
  const { mesial, distal } = anatomy.teeth;
  const crowns = { mesial, distal, crown: plannedTooth(anatomy) };
  return Object.entries(crowns).flatMap(([part, { cls, numbers }]) => {
    const { mesialContact, distalContact } = landmarksOf(cls, numbers);
    const share = Math.max(
      numbers.cejCurveMesial / mesialContact[2],
      numbers.cejCurveDistal / distalContact[2],
    );
    if (share <= MOST_CURVE) return [];
    const value = numbers.crownLength;
    const low = Math.ceil((10 * value * share) / MOST_CURVE) / 10;
    return [fault('contradiction', `site.${part}.crownLength`, { value, low })];
  });
}

/** The nearest value of a number, in steps of 0.1 on its way to `end`, with which that trouble is gone; null where there is none. */
function mended(site: Site, path: string, end: number, code: Trouble['code']): number | null {
  const sound = (value: number): boolean => troubleOf(withValue(site, path.split('.'), value))?.code !== code;
  const start = valueAt(site, path) as number;
  if (!sound(end)) return null;
  const way = Math.sign(end - start);
  let wrong = 0;
  let right = Math.ceil(10 * Math.abs(end - start));
  const at = (steps: number): number => {
    const round = way > 0 ? Math.floor(10 * start) : Math.ceil(10 * start);
    return (round + way * steps) / 10;
  };
  while (right - wrong > 1) {
    const middle = Math.floor((wrong + right) / 2);
    if (sound(at(middle))) right = middle;
    else wrong = middle;
  }
  const value = at(right);
  return way * (end - value) < 0 ? end : value;
}

/** Path of the entered width that has most to do with a place of the sheet. */
function widthAt({ ridge, mesial, distal }: Site, { q, side, d }: Place): string {
  const beside = smoothstep(Math.abs(q), ridge.blend.from, ridge.blend.to) > 0.5;
  const place = beside ? (q > 0 ? 'mesial.ridge' : 'distal.ridge') : 'ridge';
  const { widths } = beside ? (q > 0 ? mesial : distal).ridge : ridge;
  let nearest = 0;
  widths.forEach((w, i) => {
    if (Math.abs(w.depth - d) < Math.abs(widths[nearest].depth - d)) nearest = i;
  });
  return `${place}.widths.${nearest}.${side > 0 ? 'facial' : 'palatal'}`;
}

/** Whether an undercut that is entered beside the widths takes bone at a place. */
function undercutAt({ ridge }: Site, { side, d }: Place): boolean {
  const { depth, level, halfHeight } = ridge.undercut;
  const contained = ridge.widths.some((w) => Math.abs(w.depth - level) < halfHeight / 2);
  return side > 0 && depth > 0 && !contained && Math.abs(d - level) < halfHeight;
}

function thinFault(site: Site, at: Place): Fault {
  const code = 'ridge-too-thin';
  const rest = { allowed: `${at.d}` };
  if (undercutAt(site, at)) {
    const path = 'ridge.undercut.depth';
    const high = mended(site, path, 0, code);
    if (high !== null)
      return fault(code, `site.${path}`, { ...rest, value: site.ridge.undercut.depth, low: 0, high });
  }
  const path = widthAt(site, at);
  const high = at.side > 0 ? 12 : 14;
  const low = mended(site, path, high, code);
  return fault(code, `site.${path}`, { ...rest, value: valueAt(site, path) as number, low, high });
}

function tightFault({ arch: { width, depth } }: Site, palatal: number): Fault {
  // The deepest arch whose radius still holds, R = reach / (1 − least); no more than a half-circle. Rounded down, so that what is named holds.
  const least = palatal / (1 - LEAST_STRETCH);
  const deepest = least < width / 2 ? width / 2 : least - Math.sqrt(least * least - (width * width) / 4);
  return fault('arch-too-tight', 'site.arch.depth', {
    value: depth,
    low: 0,
    high: Math.floor(10 * deepest) / 10,
  });
}

/** Why a site's solids would cross themselves or each other, with the number to change and the range in which it would do; looked for over the whole model. */
export function solidFaults(site: Site): Fault[] {
  const trouble = troubleOf(site);
  if (!trouble) return crownFaults(anatomyOf(site));
  const { code } = trouble;
  if (code === 'ridge-too-thin') return [thinFault(site, trouble.at)];
  if (code === 'arch-too-tight') return [tightFault(site, trouble.palatal)];
  const named = (path: string, low: number | null, high: number | null) => [
    fault(code, `site.${path}`, { value: valueAt(site, path) as number, low, high }),
  ];
  if (code === 'ridge-too-low') return named('ridge.height', mended(site, 'ridge.height', 35, code), 35);
  if (code === 'roots-meet') return named('gap', mended(site, 'gap', 14, code), 14);
  const path = widthAt(site, trouble.at);
  return named(path, 0.5, mended(site, path, 0.5, code));
}
