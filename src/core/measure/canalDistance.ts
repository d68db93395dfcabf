import { gridMinimum } from '../geometry/compass.ts';
import { axisFrame } from '../geometry/pose.ts';
import type { Revolved } from '../geometry/revolve.ts';
import { along, scale, sub, type Vec3 } from '../geometry/vec.ts';
import type { Placement } from './placement.ts';
import { deepest, inAxis } from './rootDistance.ts';
import type { Clearance } from './sheetDistance.ts';

/** Envelope to the canal's tube (rule M10), negative: greatest depth inside. Site frame, mm. */
export function envelopeToCanal(at: Placement): Clearance {
  const { canal } = at.anatomy;
  const { ef, em } = axisFrame(scale(canal.run, -1));
  const wall = (x: number, phi: number): Vec3 => {
    const r = canal.body.radius(x);
    return along(along(along(canal.mouth, canal.run, x), ef, r * Math.cos(phi)), em, r * Math.sin(phi));
  };
  // The tube's frame in the axis' own coordinates: station, and the two across.
  const c = inAxis(at, sub(canal.mouth, at.platform));
  const u = inAxis(at, canal.run);
  const v = inAxis(at, ef);
  const w = inAxis(at, em);
  const half = canal.length / 2;
  /** Least distance between one cone of the tube and one convex part of the envelope: a single least place to run down to. */
  const between = (from: number, body: Revolved): Clearance => {
    const value = (phi: number, x: number): number => {
      if (x < from || x > from + half) return Infinity;
      const r = canal.body.radius(x);
      const y = r * Math.cos(phi);
      const z = r * Math.sin(phi);
      const f = c[1] + x * u[1] + y * v[1] + z * w[1];
      const m = c[2] + x * u[2] + y * v[2] + z * w[2];
      return body.signed(c[0] + x * u[0] + y * v[0] + z * w[0], Math.sqrt(f * f + m * m));
    };
    const azimuth = (i: number) => (Math.PI * i) / 4;
    const station = (j: number) => from + (half * j) / 4;
    const place = gridMinimum(value, 8, 5, azimuth, station, 0.02, 1 / 2048) ?? { x: 0, y: from, value: 0 };
    const to = wall(place.y, place.x);
    return { value: value(place.x, place.y), from: at.footOf(body, to), to };
  };
  const near = at.parts
    .flatMap((part) => [between(0, part), between(half, part)])
    .reduce((a, b) => (b.value < a.value ? b : a));
  if (near.value > 0) return near;
  return (
    deepest(
      at,
      (p) => -canal.distance(p),
      (p) => canal.foot(p),
    ) ?? { ...near, value: 0 }
  );
}
