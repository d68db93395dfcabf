import type { Vec3 } from '../geometry/vec.ts';

/** The arch as a circular arc through the crest line (rule F3), in the site frame: `q` along it (+ mesial), `e` across it (+ facial), mm. */
export interface Arch {
  /** Radius, mm; Infinity: straight. */
  readonly radius: number;
}

export function archOf(numbers: { readonly width: number; readonly depth: number }): Arch {
  const { width, depth } = numbers;
  return { radius: depth === 0 ? Infinity : (width * width) / (8 * depth) + depth / 2 };
}

/** Arch coordinates `[q, e]` of a point of the site frame. */
export function toArch({ radius }: Arch, p: Vec3): [q: number, e: number] {
  if (radius === Infinity) return [p[0], p[1]];
  const y = p[1] + radius;
  return [radius * Math.atan2(p[0], y), Math.sqrt(p[0] * p[0] + y * y) - radius];
}

/** Point of the site frame at arch coordinates, height `c`. */
export function fromArch({ radius }: Arch, q: number, e: number, c: number): Vec3 {
  if (radius === Infinity) return [q, e, c];
  const phi = q / radius;
  const half = Math.sin(phi / 2);
  return [(radius + e) * Math.sin(phi), e - 2 * (radius + e) * half * half, c];
}

/** Directions of the arch at `q`: tangent (+ mesial) and normal (+ facial), unit, in the site frame. */
export function archDirections({ radius }: Arch, q: number): { tangent: Vec3; normal: Vec3 } {
  const phi = radius === Infinity ? 0 : q / radius;
  return { tangent: [Math.cos(phi), -Math.sin(phi), 0], normal: [Math.sin(phi), Math.cos(phi), 0] };
}
