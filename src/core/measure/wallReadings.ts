import type { ReadingBook } from './book.ts';
import { CREST_BAND } from './defaultLimits.ts';
import { type Judgement, judge, type Limit, shortfall } from './limit.ts';
import type { Placement } from './placement.ts';
import type { ReadingId, Side } from './reading.ts';
import { trueWall } from './trueWall.ts';
import { type RaySample, SideRays } from './wallProfile.ts';

const FIXED = [1, 3, 5] as const;
const RANK: Readonly<Record<Judgement, number>> = { within: 0, near: 1, beyond: 2 };

/** Levels that the centring needs again. */
export interface WallResult {
  readonly profile: readonly RaySample[];
  readonly crest: RaySample;
  readonly apex: RaySample;
}

/** All readings of one side's wall (rules M1–M3, M14). */
export function wallReadings(at: Placement, side: Side, book: ReadingBook): WallResult {
  const rays = new SideRays(at, side);
  const profile = rays.profile();
  const samples = FIXED.map((t) => rays.at1(t, t === 1 ? at.crestMargin / 2 : at.crestMargin));
  FIXED.forEach((t, i) => {
    fixedLevel(`${side}-wall-${t}mm` as ReadingId, samples[i], at, rays.rim, book);
  });
  const apex = rays.at1(at.tA, at.crestMargin);
  fixedLevel(`${side}-wall-apex` as ReadingId, apex, at, rays.rim, book);
  thinnest(side, rays, profile, book);
  const found = trueWall(at, side, profile);
  const id = `${side}-wall-true` as ReadingId;
  if (found.clearance) {
    const { value, from, to } = found.clearance;
    const level = levelOf(at, from);
    book.add(id, 'mm', value, { level, from, to, reason: found.reason });
  } else book.skip(id, 'mm', found.reason);
  return { profile, crest: samples[0], apex };
}

function fixedLevel(id: ReadingId, s: RaySample, at: Placement, rim: number, book: ReadingBook): void {
  if (s.level < rim - 1e-9) book.skip(id, 'mm', 'shoulder-deeper');
  else if (s.level > at.tA + 1e-9) book.skip(id, 'mm', 'past-apex');
  else if (s.wall === null) book.skip(id, 'mm', 'through-crest');
  else {
    const extras = { level: s.level, from: s.from, to: s.to, counts: s.counts };
    book.add(id, 'mm', s.wall, s.gap > 1e-9 ? { ...extras, aside: s.gap } : extras);
  }
}

/** The least counting value; its status is the worst over all counting levels, each by its own band. */
function thinnest(side: Side, rays: SideRays, profile: readonly RaySample[], book: ReadingBook): void {
  const id = `${side}-wall-thinnest` as ReadingId;
  const least = rays.thinnest(profile);
  if (!least || least.wall === null) {
    book.skip(id, 'mm', 'nothing-counts');
    return;
  }
  let status: Judgement = 'within';
  let limit: Limit | null = book.limit(id, least.level);
  let short = 0;
  let judgedAt: { level: number; value: number } | null = null;
  const crest = book.limit(id, CREST_BAND);
  const deep = book.limit(id, CREST_BAND + 1);
  for (const s of [least, ...profile]) {
    if (!s.counts || s.wall === null) continue;
    const own = s.level <= CREST_BAND + 1e-9 ? crest : deep;
    if (!own) continue;
    const verdict = judge(s.wall, own.bands);
    if (verdict === 'within' || RANK[verdict] < RANK[status]) continue;
    const missing = shortfall(s.wall, own.bands);
    if (verdict === status && missing <= short) continue;
    status = verdict;
    limit = own;
    short = missing;
    judgedAt = { level: s.level, value: s.wall };
  }
  book.add(id, 'mm', least.wall, {
    level: least.level,
    from: least.from,
    to: least.to,
    judged: { status, limit },
    judgedAt: judgedAt && Math.abs(judgedAt.level - least.level) > 1e-9 ? judgedAt : null,
  });
}

/** Level of a site-frame point along the axis. */
export function levelOf(at: Placement, p: readonly [number, number, number]): number {
  const { entry: e, a } = at;
  return -((p[0] - e[0]) * a[0] + (p[1] - e[1]) * a[1] + (p[2] - e[2]) * a[2]);
}
