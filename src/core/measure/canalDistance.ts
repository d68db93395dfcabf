import { gridMinimum } from '../geometry/compass.ts';
import { axisFrame } from '../geometry/pose.ts';
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
  const value = (phi: number, x: number): number => {
    if (x < 0 || x > canal.length) return Infinity;
    const r = canal.body.radius(x);
    const y = r * Math.cos(phi);
    const z = r * Math.sin(phi);
    const f = c[1] + x * u[1] + y * v[1] + z * w[1];
    const m = c[2] + x * u[2] + y * v[2] + z * w[2];
    return at.envelope.signed(c[0] + x * u[0] + y * v[0] + z * w[0], Math.sqrt(f * f + m * m));
  };
  const rows = 9;
  const best = gridMinimum(
    value,
    10,
    rows,
    (i) => (Math.PI * i) / 5,
    (j) => (canal.length * j) / (rows - 1),
    0.35,
    1 / 1024,
  );
  const place = best ?? { x: 0, y: 0, value: 0 };
  const to = wall(place.y, place.x);
  const near: Clearance = { value: value(place.x, place.y), from: at.footOf(at.envelope, to), to };
  if (near.value > 0) return near;
  return deepest(at, (p) => -canal.distance(p)) ?? { ...near, value: 0 };
}
