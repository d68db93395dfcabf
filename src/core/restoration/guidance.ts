import type { Anatomy } from '../anatomy/anatomy.ts';
import { archDirections } from '../anatomy/arch.ts';
import { palatalPoints } from '../anatomy/crown.ts';
import { LOWER_INCISOR } from '../anatomy/crownForm.ts';
import { measuredCentral, type Opponent, opposingIncisors } from '../anatomy/opposing.ts';
import { broughtInto, broughtOut } from '../geometry/carry.ts';
import { add, along, clamp, dot, norm, scale, sub, type Vec3 } from '../geometry/vec.ts';
import type { PlannedCrown } from './plannedCrown.ts';

/** Radius of a lower incisor's rounded edge, mm. */
const ROUND = LOWER_INCISOR.edge / 2;

/** Steps of the way from closed to edge to edge; points along one lower edge. */
const STEPS = 16;
const POINTS = 7;

/** How far the way forward may lead aside, and a rounded edge's radius, mm. */
const ASIDE = 1.5;

/** The opposing edges on their way: places of their rounded edges' middle lines, site frame, mm. Index 0 is closed. */
export interface Guidance {
  readonly moves: readonly Vec3[];
  /** Middle lines of the edges when closed. */
  readonly edges: readonly Vec3[];
  readonly round: number;
}

/** The middle line of a lower incisor's rounded edge. */
function edgeLine({ edge, ex, a, numbers }: Opponent): Vec3[] {
  const half = numbers.crownWidth / 2 - 2 * ROUND;
  const middle = along(edge, a, -ROUND);
  return Array.from({ length: POINTS }, (_, i) => along(middle, ex, half * ((2 * i) / (POINTS - 1) - 1)));
}

/** Points of the palatal walls of the upper incisors that stand beside the gap. */
function guides({ teeth }: Anatomy): Vec3[] {
  return [teeth.mesial, teeth.distal, ...teeth.further].flatMap(({ cls, numbers, origin, ex, ey, a }) => {
    if (cls !== 'central' && cls !== 'lateral') return [];
    return palatalPoints(cls, numbers).map((p) => broughtOut({ origin, ex, ey, ez: a }, p));
  });
}

/** How far the jaw must open for a rounded level edge from `a` to `b` to clear a point, mm; 0 where the point stands beside it. */
function demanded([am, af, ac]: Vec3, [bm, bf]: Vec3, [m, f, c]: Vec3): number {
  const [lm, lf] = [bm - am, bf - af];
  const share = clamp(((m - am) * lm + (f - af) * lf) / (lm * lm + lf * lf), 0, 1);
  const off = (m - am - share * lm) ** 2 + (f - af - share * lf) ** 2;
  return off < ROUND * ROUND ? c + Math.sqrt(ROUND * ROUND - off) - ac : 0;
}

/** Whether a lower edge on its way forward, which runs within a few degrees of `f`, may pass under a point. */
function facing(line: readonly Vec3[], [m]: Vec3): boolean {
  const ends = [line[0][0], line[POINTS - 1][0]];
  return m > Math.min(...ends) - ASIDE && m < Math.max(...ends) + ASIDE;
}

/**
 * The lower jaw sliding forward from closed until the measured central incisors stand edge to edge: straight forward in the midline's direction, open by no
 * more than the palatal walls of the incisors beside the gap demand of the lower ones' rounded edges; closed, too, they keep it from entering them.
 * Cost: about a millisecond, once a site.
 */
export function guidanceOf(anatomy: Anatomy): Guidance {
  const { arch, teeth } = anatomy;
  const { normal } = archDirections(arch, teeth.midline);
  const opponents = opposingIncisors(anatomy);
  const lines = opponents.map(edgeLine);
  const walls = guides(anatomy);
  const lower = along(opponents[0].edge, opponents[0].a, -ROUND);
  const way = Math.max(0, dot(sub(measuredCentral(anatomy).marks.tip, lower), normal));
  const pairs = lines.map((line) => ({ line, before: walls.filter((p) => facing(line, p)) }));
  const open = (s: number): number => {
    let most = 0;
    for (const { line, before } of pairs) {
      const a = along(line[0], normal, s);
      const b = along(line[POINTS - 1], normal, s);
      for (const p of before) most = Math.max(most, demanded(a, b, p));
    }
    return most;
  };
  const steps = way > 0 ? STEPS : 0;
  const moves = Array.from({ length: steps + 1 }, (_, i): Vec3 => {
    const s = i === 0 ? 0 : (way * i) / steps;
    return add(scale(normal, s), [0, 0, open(s)]);
  });
  return { moves, edges: lines.flat(), round: ROUND };
}

/** A smallest distance of the opposing edges on their way to something; site frame, mm; negative: they meet by so much. */
export interface OpposingClearance {
  readonly value: number;
  /** On the opposing edge, where it has moved to. */
  readonly from: Vec3;
  readonly to: Vec3;
}

/** How far beside the crown an opposing edge is still looked at, mm. */
const BESIDE = 6;

/** Least clearance over the whole way. `distance` gives a place's distance and foot; `near` leaves out what is far anyway. */
export function leastClearance(
  { moves, edges, round }: Guidance,
  near: (p: Vec3) => boolean,
  distance: (p: Vec3) => { readonly value: number; readonly foot: Vec3 },
): OpposingClearance | null {
  let least: OpposingClearance | null = null;
  for (const edge of edges) {
    if (!near(edge)) continue;
    let seen = { at: edge, value: 0 };
    for (const move of moves) {
      const p = add(edge, move);
      // A distance changes by no more than the way gone.
      const promised = seen.value - norm(sub(p, seen.at)) - round;
      if (least !== null && promised >= least.value) continue;
      const { value, foot } = distance(p);
      seen = { at: p, value };
      if (least !== null && value - round >= least.value) continue;
      const toward = sub(foot, p);
      const share = value > 0 ? round / value : 0;
      least = { value: value - round, from: along(p, toward, Math.min(1, share)), to: foot };
    }
  }
  return least;
}

const ways = new WeakMap<Anatomy, Guidance>();

function keptGuidance(anatomy: Anatomy): Guidance {
  const known = ways.get(anatomy);
  if (known) return known;
  const made = guidanceOf(anatomy);
  ways.set(anatomy, made);
  return made;
}

interface Kept {
  readonly guidance: Guidance;
  readonly crown: OpposingClearance | null;
}
const kept = new WeakMap<PlannedCrown, Kept>();

/** The guidance of a site and the least clearance of its planned crown; it asks nothing of the pose and is kept as long as the crown. */
export function crownClearance(anatomy: Anatomy, crown: PlannedCrown): Kept {
  const known = kept.get(crown);
  if (known) return known;
  const guidance = keptGuidance(anatomy);
  const { frame, wall } = crown;
  const least = leastClearance(
    guidance,
    (p) => Math.abs(broughtInto(frame, p)[0]) < BESIDE,
    (p) => {
      const value = wall.signed(...broughtInto(frame, p));
      return { value, foot: broughtOut(frame, wall.foot) };
    },
  );
  const made = { guidance, crown: least };
  kept.set(crown, made);
  return made;
}
