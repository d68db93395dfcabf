import { compass, type Place } from '../geometry/compass.ts';
import { axisFrame, axisOf } from '../geometry/pose.ts';
import type { Revolved } from '../geometry/revolve.ts';
import { angleBetween, dot, rad, sub, type Vec3 } from '../geometry/vec.ts';
import { radiusAt } from './convexBody.ts';
import { PassBody } from './passBody.ts';
import { type Cover, endStations, further, type Overshoot, takenUp } from './takenUp.ts';

/** Void beside the implant that is still counted as covered, mm (ours). */
export const VOID_ALLOWED = 0.2;
/** Below this a gap counts as none, mm (ours). */
export const ROUND_TOLERANCE = 1e-3;

/** What is still to be made, in the pose of the plan: last drill and neck cutter, and the implant that will stand there. */
export interface PlannedHole {
  readonly drill: PassBody;
  readonly neck: PassBody | null;
  readonly implant: Cover | null;
}

export type Answer = 'round' | 'covered' | 'open';

/** How a hole ends if it is gone on with in the pose of the plan (model 5, rule D7). Site frame, mm. */
export interface Outlook {
  readonly answer: Answer;
  /** Largest gap left beyond the last tools, and where; 0 where it ends round. */
  readonly gap: number;
  readonly at: Vec3 | null;
  /** Of it, what the implant does not fill; equal to `gap` where no implant is known. */
  readonly void: number;
}

/** An implant's envelope in its place as a cover: stations from `platform`, apical. */
export const envelopeCover = (body: Revolved, platform: Vec3, a: Vec3): Cover => ({
  signed: (p) => {
    const q = sub(p, platform);
    const x = -dot(q, a);
    const rho = Math.sqrt(Math.max(0, dot(q, q) - x * x));
    // Coronal of its platform it is carried on at the platform's radius (rule S15).
    return x < 0 ? rho - body.radius(0) : body.signed(x, rho);
  },
});

const ROWS = 12;
const COLUMNS = 20;

/** The place of an old pass, tip to bone entry, that stands furthest outside all of the covers together. */
export function furthestOutside(old: PassBody, covers: readonly Cover[]): Overshoot {
  const out = (p: Vec3): number =>
    covers.reduce((least, cover) => Math.min(least, cover.signed(p)), Infinity);
  const { lowest, depth } = old;
  return old.looks
    .map((s) => {
      const place = (x: number, azimuth: number) => old.surface(s, x, radiusAt(old.profile, x), azimuth);
      const f = (x: number, azimuth: number) =>
        x < lowest || x > depth ? Infinity : -out(place(x, azimuth));
      const rows = [
        ...endStations(old),
        ...Array.from({ length: ROWS }, (_, j) => lowest + ((depth - lowest) * j) / ROWS),
      ];
      const seeds: Place[] = rows.flatMap((x) =>
        Array.from({ length: COLUMNS }, (_, i) => {
          const y = (2 * Math.PI * i) / COLUMNS;
          return { x, y, value: f(x, y) };
        }),
      );
      seeds.sort((p, q) => p.value - q.value);
      const found = [seeds[0], ...seeds.filter((p) => Math.abs(p.x - seeds[0].x) > 1).slice(0, 1)]
        .map((seed) => compass(f, seed, (depth - lowest) / ROWS, Math.PI / COLUMNS, 1e-5, true))
        .reduce((p, q) => (q.value < p.value ? q : p));
      return { gap: -found.value, at: place(found.x, found.y) };
    })
    .reduce(further);
}

/** How the passes made so far end if the hole is gone on with as planned. */
export function outlookOf(made: readonly PassBody[], planned: PlannedHole, allowed = VOID_ALLOWED): Outlook {
  const tools = [planned.drill, ...(planned.neck ? [planned.neck] : [])];
  const left = made.filter((old) => !takenUp(old, planned.drill).takenUp);
  const beyond = left.map((old) => furthestOutside(old, tools));
  const worst = beyond.length > 0 ? beyond.reduce(further) : null;
  if (!worst || worst.gap <= ROUND_TOLERANCE) return { answer: 'round', gap: 0, at: null, void: 0 };
  const { gap, at } = worst;
  if (!planned.implant) return { answer: 'open', gap, at, void: gap };
  const filled = [...tools, planned.implant];
  const open = left.map((old) => furthestOutside(old, filled)).reduce(further);
  const left0 = Math.max(0, open.gap);
  return left0 <= allowed + 1e-9
    ? { answer: 'covered', gap, at, void: left0 }
    : { answer: 'open', gap, at: open.at, void: left0 };
}

/** A pass in the same direction drilled to another depth. */
export const deepened = (old: PassBody, depth: number): PassBody =>
  new PassBody({ profile: old.profile, pose: old.pose, entry: old.entry, depth, press: null });

/** Down to which depth a direction may be followed and the hole still end so, the plan's direction being taken up then. mm below the bone entry; null: not even at the mouth. */
export interface MendableUntil {
  readonly round: number | null;
  readonly covered: number | null;
}

const HALVINGS = 12;

/** Rule D8: the depths, up to that of the planned hole, by halving; a deeper pass in one direction never leaves less. */
export function mendableUntil(old: PassBody, planned: PlannedHole, allowed = VOID_ALLOWED): MendableUntil {
  const full = planned.drill.depth;
  const ends = (depth: number, ok: (answer: Answer) => boolean): boolean =>
    ok(outlookOf([deepened(old, depth)], planned, allowed).answer);
  const until = (ok: (answer: Answer) => boolean): number | null => {
    if (ends(full, ok)) return full;
    let good = 0;
    if (!ends(good, ok)) return null;
    let bad = full;
    for (let i = 0; i < HALVINGS; i++) {
      const mid = (good + bad) / 2;
      if (ends(mid, ok)) good = mid;
      else bad = mid;
    }
    return good;
  };
  return { round: until((a) => a === 'round'), covered: until((a) => a !== 'open') };
}

/** A circle within a circle, seen along the planned axis: the dot must stay within the ring. mm. */
export interface RingAndDot {
  /** Radius of the ring: how far off the old pass may stand and still be taken up, `r2 − r1`. */
  readonly ring: number;
  /** Where the old axis crosses that level, against the planned axis: + facial, + mesial. */
  readonly facial: number;
  readonly mesial: number;
}

export interface Circles {
  readonly crest: RingAndDot;
  /** The old axis carried on to the planned full depth. */
  readonly apex: RingAndDot;
  /** True angle between the axes, degrees. */
  readonly angle: number;
}

/** "Circles within circles": the pass just made against the last one of the plan, at the plan's bone entry and at its bottom. */
export function circlesOf(old: PassBody, planned: PassBody): Circles {
  const { a, ef, em } = axisFrame(axisOf(planned.pose.tilt));
  const { a: run, bottom } = old.axisAt(1);
  const at = (point: Vec3): RingAndDot => {
    const reach = dot(sub(point, bottom), a) / dot(run, a);
    const q = sub(
      [bottom[0] + reach * run[0], bottom[1] + reach * run[1], bottom[2] + reach * run[2]],
      point,
    );
    return { ring: planned.radius - old.radius, facial: dot(q, ef), mesial: dot(q, em) };
  };
  const { bottom: apex } = planned.axisAt(0);
  return { crest: at(planned.entry.point), apex: at(apex), angle: angleBetween(run, a) };
}

/** How much further the planned hole may be shifted toward an azimuth (degrees, from facial toward mesial) and the old pass still be taken up, mm; null: it is not, as planned. */
export function shiftReserve(old: PassBody, planned: PassBody, azimuth: number): number | null {
  if (!takenUp(old, planned).takenUp) return null;
  const { ef, em } = planned.frame;
  const [c, s] = [Math.cos(rad(azimuth)), Math.sin(rad(azimuth))];
  const moved = (e: number): PassBody => {
    const [x, y, z] = planned.entry.point;
    const point: Vec3 = [
      x + e * (c * ef[0] + s * em[0]),
      y + e * (c * ef[1] + s * em[1]),
      z + e * (c * ef[2] + s * em[2]),
    ];
    const { profile, pose, depth } = planned;
    return new PassBody({ profile, pose, entry: { level: planned.entry.level, point }, depth, press: null });
  };
  let good = 0;
  let bad = 2 * planned.radius;
  for (let i = 0; i < 40; i++) {
    const mid = (good + bad) / 2;
    if (takenUp(old, moved(mid)).takenUp) good = mid;
    else bad = mid;
  }
  return good;
}
