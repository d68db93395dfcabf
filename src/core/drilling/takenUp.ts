import { golden } from '../geometry/golden.ts';
import type { Vec3 } from '../geometry/vec.ts';
import { radiusAt } from './convexBody.ts';
import type { PassBody } from './passBody.ts';

/** Anything that can say how far outside it a point lies, mm, negative inside. */
export interface Cover {
  readonly signed: (p: Vec3) => number;
}

/** The place of an old pass that stands furthest out of a new one, site frame, mm; + outside. */
export interface Overshoot {
  readonly gap: number;
  readonly at: Vec3;
}

/** Whether a pass is taken up by another (rule D5). */
export interface TakenUp {
  readonly takenUp: boolean;
  /** The new one ends coronal of the old one's floor. */
  readonly shallower: boolean;
  readonly overshoot: Overshoot;
}

const TOLERANCE = 1e-9;
const AROUND = 24;

/** The more outlying of two places. */
export const further = (p: Overshoot, q: Overshoot): Overshoot => (q.gap > p.gap ? q : p);

/** The point of a circle of the old pass that stands furthest out. */
function worstOnCircle(old: PassBody, s: number, station: number, cover: Cover): Overshoot {
  const radius = radiusAt(old.profile, station);
  const look = (azimuth: number): Overshoot => {
    const at = old.surface(s, station, radius, azimuth);
    return { gap: cover.signed(at), at };
  };
  if (radius === 0) return look(0);
  const step = (2 * Math.PI) / AROUND;
  const seen = Array.from({ length: AROUND }, (_, i) => look(i * step));
  let worst = seen.reduce(further);
  seen.forEach(({ gap }, i) => {
    if (gap < seen[(i + 1) % AROUND].gap || gap < seen[(i + AROUND - 1) % AROUND].gap) return;
    if (gap < worst.gap - old.radius * step) return;
    golden(
      (azimuth) => {
        const found = look(azimuth);
        worst = further(worst, found);
        return -found.gap;
      },
      (i - 1) * step,
      (i + 1) * step,
      30,
    );
  });
  return worst;
}

/** Stations of the circles whose hull a pass is, between its tip and the bone entry. */
export const endStations = ({ profile, depth }: PassBody): number[] => [
  ...profile.x.filter((x) => x < depth),
  depth,
];

/** The end circle or tip of an old pass that stands furthest out of a convex cover: exact, since the old pass is their hull. */
export const worstOvershoot = (old: PassBody, cover: Cover): Overshoot =>
  old.looks.flatMap((s) => endStations(old).map((x) => worstOnCircle(old, s, x, cover))).reduce(further);

/** End-circle rule (model 5, rule D5): circles at the bone entry and at the floor, and the tip, within the new pass, which is no shallower. */
export function takenUp(old: PassBody, wide: PassBody): TakenUp {
  const overshoot = worstOvershoot(old, wide);
  const floors = old.looks.map((s) => wide.station(old.axisAt(s).bottom));
  const shallower = Math.min(...floors) < -TOLERANCE;
  return { takenUp: overshoot.gap <= TOLERANCE && !shallower, shallower, overshoot };
}

/** For each pass of a hole the first later pass that takes it up by itself; null where none does. */
export const takers = (bodies: readonly PassBody[]): (number | null)[] =>
  bodies.map((old, i) => {
    const found = bodies.findIndex(
      (wide, j) => j > i && wide.radius >= old.radius && takenUp(old, wide).takenUp,
    );
    return found < 0 ? null : found;
  });

/** Deepest place of the crescent that a circle of radius `r1` leaves outside one of `r2`, their centres `e` apart; 0: taken up. mm. */
export const crescentDepth = (r1: number, r2: number, e: number): number => Math.max(0, e + r1 - r2);

/** Area common to two circles, their centres `e` apart, mm² (Weisstein, "Circle-Circle Intersection", MathWorld, eq. 14; from memory). */
export function lensArea(r1: number, r2: number, e: number): number {
  if (e >= r1 + r2) return 0;
  if (e <= Math.abs(r1 - r2)) return Math.PI * Math.min(r1, r2) ** 2;
  const part = (r: number, other: number): number =>
    r * r * Math.acos((e * e + r * r - other * other) / (2 * e * r));
  const kite = (-e + r1 + r2) * (e + r1 - r2) * (e - r1 + r2) * (e + r1 + r2);
  return part(r1, r2) + part(r2, r1) - Math.sqrt(Math.max(0, kite)) / 2;
}

/** Area of a circle of radius `r1` outside one of `r2`, mm². */
export const crescentArea = (r1: number, r2: number, e: number): number =>
  Math.PI * r1 * r1 - lensArea(r1, r2, e);
