import { type Drill, pointLength } from './kit.ts';

/** A bore about one axis, mm: a cylinder `depth` deep below the crest, with a drill's point below it. */
export interface Bore {
  readonly drill: Drill;
  readonly depth: number;
}

/** Volume of a bore below a plane crest, mm³. */
export function boreVolume({ drill, depth }: Bore): number {
  const r = drill.diameter / 2;
  return Math.PI * r * r * (Math.max(0, depth) + pointLength(drill) / 3);
}

/**
 * Bone a pass takes at most, mm³, where the bore before it lies within it about the same axis: `π(R² − r²)L`, with what is deeper and both points. At most, because the
 * crest falls away round the axis and a socket is void.
 */
export function passVolume(pass: Bore, before: Bore | null): number {
  if (!before) return boreVolume(pass);
  const [narrow, wide] = [before.drill.diameter / 2, pass.drill.diameter / 2];
  if (wide < narrow) return 0;
  // A shallower pass takes only what lies round the old bore, which is carried on below it.
  if (pass.depth < before.depth) return Math.PI * (wide * wide - narrow * narrow) * Math.max(0, pass.depth);
  return boreVolume(pass) - boreVolume(before);
}

/** Bone a neck cutter takes at most, mm³: its frustum from the neck's base to the mouth at the crest, less the bore in it. */
export function neckVolume(neck: number, mouth: number, below: number, bore: number): number {
  const [r1, r2, r] = [neck / 2, mouth / 2, Math.min(bore, neck) / 2];
  return Math.max(0, below) * Math.PI * ((r1 * r1 + r1 * r2 + r2 * r2) / 3 - r * r);
}
