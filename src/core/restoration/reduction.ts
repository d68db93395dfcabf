import { broughtInto, broughtOut, turnedInto } from '../geometry/carry.ts';
import { compass } from '../geometry/compass.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { AbutmentNumbers } from '../implant/shape.ts';
import type { Placement } from '../measure/placement.ts';
import type { LeastPost } from './crownChoices.ts';
import { DistanceField } from './distanceField.ts';
import type { PlannedCrown } from './plannedCrown.ts';

/** What has to be ground off a one-piece abutment so that the crown's wall over it is thick enough; site frame, mm and mm³. */
export interface Reduction {
  /** Greatest amount by which the abutment's surface comes too near to the crown's, as far as the least post lets it be taken off. */
  readonly depth: number;
  readonly volume: number;
  /** The abutment's point where it is deepest, and the crown's nearest one. Null: nothing is to be taken off. */
  readonly from: Vec3 | null;
  readonly to: Vec3 | null;
  /** Thickness that is lacking even over the least post. */
  readonly lacking: number;
}

/** Levels, azimuths and radial steps of the search and of the volume. */
const LEVELS = 24;
const AZIMUTHS = 24;
const RADII = 8;

const fields = new WeakMap<PlannedCrown['wall'], DistanceField>();
export function fieldOf({ mesh, wall }: PlannedCrown): DistanceField {
  const known = fields.get(wall);
  if (known) return known;
  const made = new DistanceField(mesh, wall);
  fields.set(wall, made);
  return made;
}

/** The abutment's axis and the two directions across it, in the crown's coordinates. */
export class AbutmentInCrown {
  private readonly origin: Vec3;
  private readonly up: Vec3;
  private readonly ef: Vec3;
  private readonly em: Vec3;

  constructor(
    at: Placement,
    crown: PlannedCrown,
    private readonly numbers: AbutmentNumbers,
  ) {
    const { frame } = crown;
    this.origin = broughtInto(frame, at.platform);
    this.up = turnedInto(frame, at.a);
    this.ef = turnedInto(frame, at.ef);
    this.em = turnedInto(frame, at.em);
  }

  radius(x: number): number {
    const { baseDiameter, topDiameter, height } = this.numbers;
    return (baseDiameter + ((topDiameter - baseDiameter) * x) / height) / 2;
  }

  /** Point at a height over the shoulder, a distance from the axis and an azimuth's cosine and sine. */
  point(x: number, rho: number, cos: number, sin: number): Vec3 {
    const { origin: o, up, ef, em } = this;
    const [f, m] = [rho * cos, rho * sin];
    return [
      o[0] + x * up[0] + f * ef[0] + m * em[0],
      o[1] + x * up[1] + f * ef[1] + m * em[1],
      o[2] + x * up[2] + f * ef[2] + m * em[2],
    ];
  }

  /** Side and top as one strip: `s` runs up the side and on along the top to the axis. */
  surface(s: number): readonly [x: number, rho: number] {
    const { height, topDiameter } = this.numbers;
    return s <= height ? [s, this.radius(s)] : [height, Math.max(0, topDiameter / 2 - (s - height))];
  }
}

/** What a reduction keeps: the least distance from abutment to the crown's surface, and the least post; mm. */
export interface ReductionRule {
  readonly cover: number;
  readonly post: LeastPost;
}

/** Distance from a place of the abutment to its least post. */
const overPost = ({ diameter, height }: LeastPost, x: number, rho: number): number =>
  Math.hypot(Math.max(0, x - height), Math.max(0, rho - diameter / 2));

/** Cost: 0.5 ms once a drag has filled the field about the abutment. */
export function reductionOf(
  at: Placement,
  crown: PlannedCrown,
  numbers: AbutmentNumbers,
  rule: ReductionRule,
): Reduction {
  const { cover, post } = rule;
  const body = new AbutmentInCrown(at, crown, numbers);
  const field = fieldOf(crown);
  const deepest = deepestPlace(body, field, numbers, rule);
  if (deepest.value >= 0) return { depth: 0, volume: 0, from: null, to: null, lacking: 0 };
  const [x, rho] = body.surface(deepest.x);
  const p = body.point(x, rho, Math.cos(deepest.y), Math.sin(deepest.y));
  const asked = cover + crown.wall.signed(...p);
  const foot = crown.wall.foot;
  const spare = overPost(post, x, rho);
  return {
    depth: Math.min(asked, spare),
    volume: volumeTooNear(body, field, numbers.height, rule, deepest.near),
    from: broughtOut(crown.frame, p),
    to: broughtOut(crown.frame, foot),
    lacking: lackingOverPost(body, field, numbers.height, rule),
  };
}

/** Least of minus the depth over side and top, and the azimuths at which anything comes too near, or nearly. */
function deepestPlace(
  body: AbutmentInCrown,
  field: DistanceField,
  numbers: AbutmentNumbers,
  rule: ReductionRule,
) {
  const { cover, post } = rule;
  const last = numbers.height + numbers.topDiameter / 2;
  const depth = (s: number, phi: number): number => {
    if (s < 0 || s > last) return Infinity;
    const [x, rho] = body.surface(s);
    const p = body.point(x, rho, Math.cos(phi), Math.sin(phi));
    return -Math.min(cover + field.at(p[0], p[1], p[2]), overPost(post, x, rho));
  };
  let best = { x: 0, y: 0, value: Infinity };
  const near: boolean[] = Array(AZIMUTHS).fill(false);
  const look = (s: number): void => {
    for (let j = 0; j < AZIMUTHS; j++) {
      const phi = (2 * Math.PI * j) / AZIMUTHS;
      const value = depth(s, phi);
      if (value < NEARLY) near[j] = true;
      if (value < best.value) best = { x: s, y: phi, value };
    }
  };
  for (let i = 0; i <= LEVELS; i++) look((last * i) / LEVELS);
  // The rim is a crest of its own.
  look(numbers.height);
  if (best.value > COARSE) return { ...best, near };
  return { ...compass(depth, best, last / LEVELS / 2, Math.PI / AZIMUTHS / 2, 1 / 32), near };
}

/** More than the depth can change between two places of the grid, mm. */
const COARSE = 0.3;

/** What between two places of one azimuth may come nearer than at either, mm. */
const NEARLY = 0.05;

/** Greatest lack of cover over the least post's own surface. */
function lackingOverPost(
  body: AbutmentInCrown,
  field: DistanceField,
  height: number,
  { cover, post }: ReductionRule,
): number {
  const top = Math.min(post.height, height);
  let most = 0;
  for (const x of [0, top / 3, (2 * top) / 3, top]) {
    for (let j = 0; j < AZIMUTHS; j++) {
      const phi = (2 * Math.PI * j) / AZIMUTHS;
      const p = body.point(x, post.diameter / 2, Math.cos(phi), Math.sin(phi));
      most = Math.max(most, cover + field.at(p[0], p[1], p[2]));
    }
  }
  return most;
}

/** Volume of the abutment that lies too near, the least post left out. */
function volumeTooNear(
  body: AbutmentInCrown,
  field: DistanceField,
  height: number,
  rule: ReductionRule,
  near: readonly boolean[],
): number {
  const { cover } = rule;
  const post = Math.min(rule.post.height, height);
  const over = Math.max(2, Math.round((LEVELS * (height - post)) / height));
  let sum = 0;
  for (let j = 0; j < AZIMUTHS; j++) {
    if (!near[j]) continue;
    const phi = (2 * Math.PI * j) / AZIMUTHS;
    const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
    const short = (x: number, rho: number): number => {
      const p = body.point(x, rho, cos, sin);
      return cover + field.at(p[0], p[1], p[2]);
    };
    sum += momentAbove(body, short, {
      from: 0,
      to: post,
      rows: LEVELS - over,
      start: rule.post.diameter / 2,
    });
    if (height > post) sum += momentAbove(body, short, { from: post, to: height, rows: over, start: 0 });
  }
  return (2 * Math.PI * sum) / AZIMUTHS;
}

/** A part of the abutment's half-plane: between two heights, from a distance from the axis outward to the abutment's own radius. */
interface Strip {
  readonly from: number;
  readonly to: number;
  readonly rows: number;
  readonly start: number;
}

/** `∫∫ ρ dρ dx` over where `f(x, ρ) > 0` in a strip: a grid of triangles, `f` straight in each. */
function momentAbove(
  body: AbutmentInCrown,
  f: (x: number, rho: number) => number,
  { from, to, rows, start }: Strip,
): number {
  let sum = 0;
  let below: readonly Corner[] = [];
  for (let i = 0; i <= rows; i++) {
    const x = from + ((to - from) * i) / rows;
    const end = Math.max(start, body.radius(x));
    const row = Array.from({ length: RADII + 1 }, (_, k): Corner => {
      const rho = start + ((end - start) * k) / RADII;
      return { x, rho, value: f(x, rho) };
    });
    for (let k = 0; i > 0 && k < RADII; k++) {
      sum += triangleMoment(below[k], below[k + 1], row[k + 1]);
      sum += triangleMoment(below[k], row[k + 1], row[k]);
    }
    below = row;
  }
  return sum;
}

interface Corner {
  readonly x: number;
  readonly rho: number;
  readonly value: number;
}

/** A triangle's share where the value is above 0, times its area, times its middle's distance from the axis. */
function triangleMoment(a: Corner, b: Corner, c: Corner): number {
  const share = shareAbove(a.value, b.value, c.value);
  if (share === 0) return 0;
  const area = Math.abs((b.x - a.x) * (c.rho - a.rho) - (c.x - a.x) * (b.rho - a.rho)) / 2;
  return (share * area * (a.rho + b.rho + c.rho)) / 3;
}

/** Share of a triangle's area on which a value that runs straight between its corners is above 0. */
function shareAbove(a: number, b: number, c: number): number {
  const [up, over, above] = [a > 0, b > 0, c > 0];
  if (up === over && over === above) return up ? 1 : 0;
  // The corner that stands alone on its side.
  const [p, q, r] = over === above ? [a, b, c] : up === above ? [b, c, a] : [c, a, b];
  const corner = (p * p) / ((p - q) * (p - r));
  return p > 0 ? corner : 1 - corner;
}
