import type { Anatomy } from '../anatomy/anatomy.ts';
import { type Interval, intersect } from '../geometry/interval.ts';
import { fallingRoot } from '../geometry/root.ts';
import { along, dot, scale, sub, type Vec3 } from '../geometry/vec.ts';
import { Hole } from './hole.ts';
import { type AxisEnds, PassBody } from './passBody.ts';

type Stretch = NonNullable<Interval>;

/** Nodes and weights of Gauss–Legendre on −1…1, three points (Abramowitz and Stegun, table 25.4). */
const GAUSS = [
  [-Math.sqrt(0.6), 5 / 9],
  [0, 8 / 9],
  [Math.sqrt(0.6), 5 / 9],
] as const;
/** Longest stretch of the axis that is taken at once, and how many rays leave the axis at a level. */
const PANEL = 0.6;
/** The same where the bodies come out of the bone, where discs are cut. */
const CREST_PANEL = 0.15;
const RAYS = 60;
/** Heights nearer to one another than this are one, mm. */
const SAME = 0.01;
/** How far apart a ray is looked at for the bone's surface, mm. */
const LOOK = 0.5;

/** Stretches of `from` that none of `without` covers; both in rising order. */
function less(from: readonly Stretch[], without: readonly Stretch[]): Stretch[] {
  let left = [...from];
  for (const [a, b] of without) {
    left = left.flatMap(([x, y]) => {
      const parts: Interval[] = [intersect([x, y], [-Infinity, a]), intersect([x, y], [b, Infinity])];
      return parts.filter((part) => part !== null);
    });
  }
  return left;
}

/** Bone along a line (rule S14): ridge above the floor, outside socket, dehiscence and canal. */
class BoneLine {
  constructor(private readonly anatomy: Anatomy) {}

  within(p: Vec3, v: Vec3, stretch: Stretch): Stretch[] {
    const { ridge, socket, canal } = this.anatomy;
    const drop = ridge.floor - p[2];
    const over: Stretch =
      Math.abs(v[2]) < 1e-12
        ? drop <= 0
          ? [-Infinity, Infinity]
          : [0, 0]
        : v[2] > 0
          ? [drop / v[2], Infinity]
          : [-Infinity, drop / v[2]];
    const above = intersect(stretch, over);
    if (!above) return [];
    const voids: Interval[] = [...canal.voids(p, v)];
    if (socket) voids.push(socket.rootVoid(p, v), socket.dehiscence(p, v));
    return less(
      this.ridgeWithin(p, v, above),
      voids.filter((x) => x !== null),
    );
  }

  private ridgeWithin(p: Vec3, v: Vec3, [from, to]: Stretch): Stretch[] {
    const { ridge } = this.anatomy;
    const solid = (x: number) => ridge.solid(p[0] + x * v[0], p[1] + x * v[1], p[2] + x * v[2]);
    const count = Math.max(2, Math.ceil((to - from) / LOOK));
    const out: Stretch[] = [];
    let x0 = from;
    let inside = solid(x0) <= 0;
    let start = from;
    for (let i = 1; i <= count; i++) {
      const x1 = from + ((to - from) * i) / count;
      const next = solid(x1) <= 0;
      if (next !== inside) {
        const edge = next ? fallingRoot(solid, x0, x1, 1e-7) : fallingRoot(solid, x1, x0, 1e-7);
        if (next) start = edge;
        else out.push([start, edge]);
        inside = next;
      }
      x0 = x1;
    }
    if (inside) out.push([start, to]);
    return out;
  }
}

/** Shares of a pass's press at which it is looked at. */
const ends = (body: PassBody): readonly number[] => (body.sweep ? [0, 1] : [0]);

/** Enough steps of a press for a volume. */
const STEPS = 5;

/** The same passes, those that tip in fewer steps. */
const coarser = (bodies: readonly PassBody[]): PassBody[] =>
  bodies.map((body) => (body.places.length > STEPS + 1 ? new PassBody({ ...body, steps: STEPS }) : body));

/** Heights over the reference bottom of a body's circles: the lowest and the highest point of each, its tip, and its bone entry. */
function circlesOf(body: PassBody, { bottom, a }: AxisEnds): { low: number; all: number[] } {
  const rims = ends(body).flatMap((s) => {
    const axis = body.axisAt(s);
    const sin = Math.sqrt(Math.max(0, 1 - dot(axis.a, a) ** 2));
    return body.profile.x.flatMap((x, i) => {
      const h = dot(sub(along(axis.bottom, axis.a, x), bottom), a);
      return [h - sin * body.profile.r[i], h + sin * body.profile.r[i]];
    });
  });
  return { low: Math.min(...rims), all: [...rims, dot(sub(body.entry.point, bottom), a)] };
}

/** Heights over a body's bottom at which what is integrated bends or steps, from its lowest point up to where no bone can be. */
function breaks(
  body: PassBody,
  without: readonly PassBody[],
  axis: AxisEnds,
  [crest, top]: Stretch,
): number[] {
  const own = circlesOf(body, axis);
  const all = [own, ...without.map((other) => circlesOf(other, axis))].flatMap((c) => c.all);
  const inner = [crest, ...all].filter((h) => h > own.low && h < top);
  const sorted = [own.low, ...inner, top].sort((x, y) => x - y);
  return sorted.filter((h, i) => i === 0 || h - sorted[i - 1] > SAME);
}

/** Bone that one body takes and others do not: discs across its axis, rays from the axis in each. mm³. */
function takenBy(anatomy: Anatomy, body: PassBody, without: readonly PassBody[]): number {
  const { ef, em } = body.frame;
  const axis = body.axisAt(0);
  const other = new Hole(without);
  const bone = new BoneLine(anatomy);
  const disc = (h: number): number => {
    const centre = along(axis.bottom, axis.a, h);
    let sum = 0;
    for (let i = 0; i < RAYS; i++) {
      const azimuth = (2 * Math.PI * (i + 0.5)) / RAYS;
      const v = along(scale(ef, Math.cos(azimuth)), em, Math.sin(azimuth));
      for (const stretch of body.stretches(centre, v)) {
        const outward = intersect(stretch, [0, Infinity]);
        if (!outward) continue;
        const free = without.length > 0 ? less([outward], other.stretches(centre, v)) : [outward];
        for (const part of free)
          for (const [x, y] of bone.within(centre, v, part)) sum += (y * y - x * x) / 2;
      }
    }
    return (sum * 2 * Math.PI) / RAYS;
  };
  const crest = crestOf(anatomy, body, axis);
  const at = breaks(body, without, axis, crest);
  let volume = 0;
  for (let i = 0; i + 1 < at.length; i++) {
    const count = Math.ceil((at[i + 1] - at[i]) / (at[i] >= crest[0] - 1e-9 ? CREST_PANEL : PANEL));
    const half = (at[i + 1] - at[i]) / count / 2;
    for (let j = 0; j < count; j++)
      for (const [node, weight] of GAUSS) volume += half * weight * disc(at[i] + half * (2 * j + 1 + node));
  }
  return volume;
}

/** Heights over its bottom between which a body comes out of the bone, looked for along lines beside the axis, with some to spare. */
function crestOf({ ridge }: Anatomy, body: PassBody, { bottom, a }: AxisEnds): Stretch {
  let low = Infinity;
  let top = 0;
  const look = (s: number, radius: number, azimuth: number): void => {
    let x = body.depth + 8;
    const at = () => body.surface(s, x, radius, azimuth);
    while (x > 0 && ridge.solid(...at()) > 0) x -= 0.1;
    const h = dot(sub(at(), bottom), a);
    low = Math.min(low, h - 0.15);
    top = Math.max(top, h + 0.15);
  };
  for (const s of ends(body))
    for (let j = 0; j < 12; j++)
      for (const share of [1, 0.5, 0]) look(s, share * body.radius, (Math.PI * j) / 6);
  return [low, top];
}

/**
 * Bone taken out by some passes and not already by others, mm³ (rule D4): each pass about its own axis less those before it, every ray's stretches in
 * closed form but for the bone's surface. Error at most 0.3 %, or 0.03 mm³. Cost: some 15 ms for each pass.
 */
export function boneRemoved(
  anatomy: Anatomy,
  taking: readonly PassBody[],
  without: readonly PassBody[] = [],
): number {
  const bodies = coarser(taking);
  const others = coarser(without);
  return bodies.reduce((sum, body, i) => sum + takenBy(anatomy, body, [...others, ...bodies.slice(0, i)]), 0);
}

/** Bone removed by a list of passes, mm³. */
export const holeVolume = (anatomy: Anatomy, passes: readonly PassBody[]): number =>
  boneRemoved(anatomy, passes);

/** Bone that the last pass took, mm³: no more than this can be collected. */
export const lastPassVolume = (anatomy: Anatomy, passes: readonly PassBody[]): number =>
  passes.length === 0 ? 0 : boneRemoved(anatomy, passes.slice(-1), passes.slice(0, -1));

/** Void of an old pass that the later ones leave, mm³. */
export const crescentVolume = (anatomy: Anatomy, old: PassBody, later: readonly PassBody[]): number =>
  boneRemoved(anatomy, [old], later);
