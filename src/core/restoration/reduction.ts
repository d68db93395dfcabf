import { broughtOut } from '../geometry/carry.ts';
import { compass } from '../geometry/compass.ts';
import type { Vec3 } from '../geometry/vec.ts';
import type { AbutmentInCrown } from './abutmentInCrown.ts';
import type { PlannedCrown } from './plannedCrown.ts';

/** What has to be ground off a one-piece abutment so that the crown's wall over it is thick enough (rule C8); site frame, mm and mm³. */
export interface Reduction {
  /** Greatest depth over the abutment's surface, as far as the least post lets it be taken off. */
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

/** Cost: 0.5 ms once a drag has filled the field about the abutment. */
export function reductionOf(crown: PlannedCrown, body: AbutmentInCrown): Reduction {
  const deepest = deepestPlace(body);
  if (deepest.value >= 0) return { depth: 0, volume: 0, from: null, to: null, lacking: 0 };
  const [x, rho] = body.surface(deepest.x);
  const [cos, sin] = [Math.cos(deepest.y), Math.sin(deepest.y)];
  const asked = body.exactlyOver(x, rho, cos, sin);
  const foot = crown.wall.foot;
  return {
    depth: Math.min(asked, body.overPost(x, rho)),
    volume: volumeTooNear(body, deepest.near),
    from: broughtOut(crown.frame, body.point(x, rho, cos, sin)),
    to: broughtOut(crown.frame, foot),
    lacking: lackingOverPost(body),
  };
}

/** Least of minus the depth over side and top, and the azimuths at which anything is ground off, or nearly. */
function deepestPlace(body: AbutmentInCrown) {
  const { height, topDiameter } = body.numbers;
  const last = height + topDiameter / 2;
  const depth = (s: number, phi: number): number => {
    if (s < 0 || s > last) return Infinity;
    const [x, rho] = body.surface(s);
    return -Math.min(body.over(x, rho, Math.cos(phi), Math.sin(phi)), body.overPost(x, rho));
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
  look(height);
  if (best.value > COARSE) return { ...best, near };
  return { ...compass(depth, best, last / LEVELS / 2, Math.PI / AZIMUTHS / 2, 1 / 32), near };
}

/** More than the depth can change between two places of the grid, mm. */
const COARSE = 0.3;

/** What between two places of one azimuth may come nearer than at either, mm. */
const NEARLY = 0.05;

/** Greatest lack of cover over the least post's own surface. */
function lackingOverPost(body: AbutmentInCrown): number {
  const { post } = body.rule;
  const top = Math.min(post.height, body.numbers.height);
  let most = 0;
  for (const x of [0, top / 3, (2 * top) / 3, top]) {
    for (let j = 0; j < AZIMUTHS; j++) {
      const phi = (2 * Math.PI * j) / AZIMUTHS;
      most = Math.max(most, body.tooNear(x, post.diameter / 2, Math.cos(phi), Math.sin(phi)));
    }
  }
  return most;
}

/** Volume of what is ground off, the least post left out. */
function volumeTooNear(body: AbutmentInCrown, near: readonly boolean[]): number {
  const { height } = body.numbers;
  const post = Math.min(body.rule.post.height, height);
  const upper = Math.max(2, Math.round((LEVELS * (height - post)) / height));
  let sum = 0;
  for (let j = 0; j < AZIMUTHS; j++) {
    if (!near[j]) continue;
    const phi = (2 * Math.PI * j) / AZIMUTHS;
    const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
    const ground = (x: number, rho: number): number => body.over(x, rho, cos, sin);
    const start = body.rule.post.diameter / 2;
    sum += momentAbove(body, ground, { from: 0, to: post, rows: LEVELS - upper, start });
    if (height > post) sum += momentAbove(body, ground, { from: post, to: height, rows: upper, start: 0 });
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
