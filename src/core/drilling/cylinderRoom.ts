import type { TriangleMesh } from '../geometry/mesh.ts';
import { add, distance, dot, scale, sub, type Vec3 } from '../geometry/vec.ts';

/** A round body about an axis that comes down it from far coronal: everything of its radius above its lower face. mm. */
export interface ComingDown {
  /** A point of the axis, and its unit direction, coronal. */
  readonly foot: Vec3;
  readonly a: Vec3;
  readonly radius: number;
  /** Of the lower face at its lowest, above `foot` along the axis. */
  readonly face: number;
}

/** How near a surface comes to a body that comes down. */
export interface Room {
  /** Least distance, mm; negative inside: the greatest over the surface of the least way out, down or sideways. */
  readonly clearance: number;
  /** The point of the surface it was found at; null: nothing nearer than what was known. */
  readonly at: Vec3 | null;
  /** How much higher the face would have to stop so that the surface is not met, mm; 0: nothing is in the way. */
  readonly lift: number;
}

/** The nearest place is sought to so much, mm. */
const FINE = 0.03;

/** Signed distance of a point to the body, mm: exact, so it never changes faster than the point moves. */
export function signedTo({ foot, a, radius, face }: ComingDown, p: Vec3): number {
  const r = sub(p, foot);
  const up = dot(r, a);
  const out = Math.sqrt(Math.max(0, dot(r, r) - up * up)) - radius;
  const below = face - up;
  return out > 0 && below > 0 ? Math.hypot(out, below) : Math.max(out, below);
}

/**
 * The least room between a mesh and the body, in one frame, to 0.03 mm. `known`: a clearance already found elsewhere; only what is nearer is sought.
 */
export function roomOf(mesh: TriangleMesh, body: ComingDown, known = Infinity): Room {
  const { positions: p, triangles: t } = mesh;
  const point = (i: number): Vec3 => [p[3 * i], p[3 * i + 1], p[3 * i + 2]];
  const best = { clearance: known, at: null as Vec3 | null, lift: 0 };
  const look = (q: Vec3): number => {
    const d = signedTo(body, q);
    if (d < best.clearance) [best.clearance, best.at] = [d, q];
    if (d < 0) best.lift = Math.max(best.lift, dot(sub(q, body.foot), body.a) - body.face);
    return d;
  };
  for (let i = 0; 3 * i < p.length; i++) look(point(i));
  // A piece is looked at closer only while some point of it could come nearer than the nearest so far.
  const within = (a: Vec3, b: Vec3, c: Vec3): void => {
    const middle = scale(add(a, add(b, c)), 1 / 3);
    const reach = Math.max(distance(a, middle), distance(b, middle), distance(c, middle));
    if (look(middle) - reach >= best.clearance - FINE) return;
    const [ab, bc, ca] = [half(a, b), half(b, c), half(c, a)];
    within(a, ab, ca);
    within(ab, b, bc);
    within(ca, bc, c);
    within(ab, bc, ca);
  };
  for (let i = 0; i < t.length; i += 3) within(point(t[i]), point(t[i + 1]), point(t[i + 2]));
  return best;
}

const half = (a: Vec3, b: Vec3): Vec3 => scale(add(a, b), 0.5);
