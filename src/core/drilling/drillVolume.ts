import { type Drill, pointLength } from './kit.ts';

/** A bore about one axis, mm: a cylinder `depth` deep below the crest, with a drill's point below it. */
export interface Bore {
  readonly drill: Drill;
  readonly depth: number;
}

/** Radius of a bore at a depth below the crest, mm. */
function radiusOf({ drill, depth }: Bore, d: number): number {
  const r = drill.diameter / 2;
  if (d <= depth) return r;
  return Math.max(0, r * (1 - (d - depth) / pointLength(drill)));
}

const endsOf = ({ drill, depth }: Bore): number[] => [depth, depth + pointLength(drill)];

/**
 * Bone a pass takes at most, mm³: its bore less the one before it about the same axis (`π(R² − r²)L` and what the points differ by). At most, because the crest
 * falls away round the axis and a socket is void.
 */
export function passVolume(pass: Bore, before: Bore | null): number {
  const other = (d: number): number => (before ? radiusOf(before, d) : 0);
  const area = (d: number): number => Math.PI * Math.max(0, radiusOf(pass, d) ** 2 - other(d) ** 2);
  const bends = [...endsOf(pass), ...(before ? endsOf(before) : [])].filter((d) => d > 0);
  const at = [0, ...bends].sort((x, y) => x - y);
  const gap = (d: number): number => radiusOf(pass, d) - other(d);
  let volume = 0;
  for (let i = 0; i + 1 < at.length; i++) {
    const [d0, d1] = [at[i], at[i + 1]];
    // A flat end is a step: the ends of a piece are carried on from within it. Where the outlines cross, the piece is cut.
    const [q1, q3] = [gap(0.75 * d0 + 0.25 * d1), gap(0.25 * d0 + 0.75 * d1)];
    const [g0, g1] = [1.5 * q1 - 0.5 * q3, 1.5 * q3 - 0.5 * q1];
    const cut = g0 * g1 < 0 ? d0 + (g0 / (g0 - g1)) * (d1 - d0) : d0;
    volume += integral(area, d0, cut) + integral(area, cut, d1);
  }
  return volume;
}

/** Gauss–Legendre with two points: exact up to the third power. */
function integral(f: (x: number) => number, from: number, to: number): number {
  const half = (to - from) / 2;
  const off = half / Math.sqrt(3);
  return half * (f(from + half - off) + f(from + half + off));
}

/** Bone a neck cutter takes at most, mm³: its frustum from the neck's base to the mouth at the crest, less the bore in it. */
export function neckVolume(neck: number, mouth: number, below: number, bore: number): number {
  const [r1, r2, r] = [neck / 2, mouth / 2, Math.min(bore, neck) / 2];
  return Math.max(0, below) * Math.PI * ((r1 * r1 + r1 * r2 + r2 * r2) / 3 - r * r);
}
