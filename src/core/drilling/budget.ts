import { deg } from '../geometry/vec.ts';

/** One tool that may come after a pass, seen from it: how wide it is at a depth below the bone entry along the axis. mm. */
export interface Widening {
  /** Radius at a depth, mm. */
  readonly radius: (depth: number) => number;
  /** Depths between the mouth and the bottom at which the radius bends or steps. */
  readonly bends: readonly number[];
}

/** A pass as the budget sees it. mm. */
export interface BudgetPass {
  readonly radius: number;
  /** Of the full diameter. */
  readonly depth: number;
  /** Length of its point beyond that; 0: flat. */
  readonly point: number;
}

/** How far the next pass may be turned, degrees, toward the side on which it already stands off and away from it; `either`: the less of both. */
export interface TiltRoom {
  readonly toward: number;
  readonly away: number;
  readonly either: number;
}

/**
 * Largest `δ ≥ 0` up to which `offset + lever sin δ + r1 cos δ ≤ r2` holds, radians: with `H = hypot(lever, r1)` the left side is
 * `offset + H sin(δ + atan2(r1, lever))`. Infinity: any tilt.
 */
function firstCrossing(lever: number, offset: number, r1: number, r2: number): number {
  const room = r2 - offset;
  if (r1 > room + 1e-12) return 0;
  // The edge is carried inward.
  if (lever < 0) return Infinity;
  const long = Math.hypot(lever, r1);
  if (long <= room) return Infinity;
  return Math.max(0, Math.asin(room / long) - Math.atan2(r1, lever));
}

/** Both edges of a circle of radius `r1` at `lever` from the pivot, turned one way: the edge that the turn carries outward, and the other. */
const oneWay = (lever: number, offset: number, r1: number, r2: number): number =>
  Math.min(firstCrossing(lever, offset, r1, r2), firstCrossing(-lever, -offset, r1, r2));

/**
 * How far the next pass may be turned about the depth `pivot` of the old axis, standing off by `offset` (in the plane of the turn), so that the old
 * pass is still taken up: `|e + (d − p) sin δ| + r1 cos δ ≤ r2` for its circles at every depth at which the wider tool bends, and its tip (model 5; rule D6).
 */
export function tiltRoom(old: BudgetPass, wide: Widening, pivot = 0, offset = 0): TiltRoom {
  const inner = wide.bends.filter((d) => d > 0 && d < old.depth);
  const rings = [0, ...inner, old.depth].map((d) => ({ d, r1: old.radius, r2: wide.radius(d) }));
  const ends = [...rings, { d: old.depth + old.point, r1: 0, r2: wide.radius(old.depth) }];
  const over = (sign: 1 | -1): number =>
    deg(Math.min(...ends.map(({ d, r1, r2 }) => oneWay(d - pivot, sign * offset, r1, r2))));
  const toward = over(1);
  const away = over(-1);
  return { toward, away, either: Math.min(toward, away) };
}

/** How far the next pass may be shifted so that the old one is taken up down to `depth`, mm; negative: by so much it is too wide. Round: the same every way. */
export const shiftRoom = (old: BudgetPass, wide: Widening, depth = old.depth): number =>
  Math.min(wide.radius(0), ...wide.bends.filter((d) => d < depth).map(wide.radius), wide.radius(depth)) -
  old.radius;

/** A drill, or anything of one radius. */
export const evenly = (radius: number): Widening => ({ radius: () => radius, bends: [] });

/** A profile that runs straight between depths, and steps where two are equal (the narrower, deeper side counts there). */
export function stepped(depths: readonly number[], radii: readonly number[]): Widening {
  const radius = (depth: number): number => {
    const after = depths.findIndex((d) => d > depth);
    if (after === 0) return radii[0];
    if (after < 0) return radii[radii.length - 1];
    const [d0, d1] = [depths[after - 1], depths[after]];
    return radii[after - 1] + ((radii[after] - radii[after - 1]) * (depth - d0)) / (d1 - d0);
  };
  return { radius, bends: depths };
}

/** What each coming tool leaves room for, by its use. */
export interface Coming {
  /** The next drill to be taken in hand. */
  readonly hand: Widening;
  /** The last drill of the kit. */
  readonly kit: Widening;
  /** Last drill and neck cutter together, or null where there is none. */
  readonly neck: Widening | null;
  /** The implant's envelope, with the void that may stay beside it. */
  readonly implant: Widening;
}

export interface Room {
  readonly shift: number;
  readonly tilt: TiltRoom;
}

/** The correction budget of a pass down to one depth: what may still be shifted, and turned about its mouth. mm and degrees. */
export interface BudgetAt {
  readonly depth: number;
  readonly hand: Room;
  readonly kit: Room;
  readonly neck: Room | null;
  readonly implant: Room;
}

/** The correction budget by depth: why direction comes first (model 5). `old.depth` is replaced by each of the depths. */
export function budgetByDepth(old: BudgetPass, coming: Coming, depths: readonly number[]): BudgetAt[] {
  return depths.map((depth) => {
    const pass = { ...old, depth };
    const room = (wide: Widening): Room => ({ shift: shiftRoom(pass, wide), tilt: tiltRoom(pass, wide) });
    return {
      depth,
      hand: room(coming.hand),
      kit: room(coming.kit),
      neck: coming.neck && room(coming.neck),
      implant: room(coming.implant),
    };
  });
}
